#pragma once

/// A PDF document that grows page by page, painted in mm from the page's lower left corner, y upward. Its pages can be
/// written as PDF, or painted as pictures of how they will print.

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "drawing/Paper.hpp"
#include "paper/ShadedPicture.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

/// The kinds of text in all papers: a strong one is as large as the body, in the head's weight.
enum class Text { body, strong, head };

/// The pens, from strong to faint.
enum class Pen { outline, line, thin, dash, faint };

enum class Align { left, centre, right };

class PdfBook {
 public:
  /// The title goes into the document's own record, which holds no hour: the same pages give the same bytes.
  explicit PdfBook(std::string title);
  ~PdfBook();
  PdfBook(PdfBook&&) noexcept;

  /// Begins a page; nothing can be painted before the first.
  void page(const Paper& paper);
  double width() const { return pages_.back().paper.width; }
  double height() const { return pages_.back().paper.height; }

  void line(Point a, Point b, Pen pen);
  /// Lines and arcs head to tail; closed when `closed`.
  void path(const Loop& segments, bool closed, Pen pen);
  void fill(const Loop& segments, double grey);
  /// Foreign text, see pdf_text. Baseline from `at`, turned counter-clockwise by `turn`.
  void text(Point at, const std::string& text, Text size = Text::body, Align align = Align::left, double turn = 0);
  double width_of(const std::string& text, Text size = Text::body);
  /// The bytes of a PNG, stretched over the box. The same bytes again take no more room in the document. Throws
  /// std::runtime_error when they are no PNG.
  void image(const std::string& png, const Box& box);
  /// Width over height of a PNG. Throws as image() does.
  double shape_of(const std::string& png);
  /// The width on paper up to which a PNG looks sharp, mm. Throws as image() does.
  double sharp_width(const std::string& png);
  /// What is painted from here on shows inside the box only, until unclip().
  void clip(const Box& box);
  void unclip();

  const std::string& title() const { return title_; }
  std::size_t pages() const { return pages_.size(); }
  /// The whole document. Throws std::runtime_error when the library fails.
  std::string bytes() const;
  /// One page, the first is 0, as it will print.
  Picture picture(std::size_t number, double pixels_per_mm) const;

 private:
  struct Canvas;
  struct Image;
  using Mark = std::function<void(Canvas&)>;
  struct Page {
    Paper paper;
    std::vector<Mark> marks;
  };
  void mark(Mark made);
  std::shared_ptr<Image> read(const std::string& png);

  std::string title_;
  std::vector<Page> pages_;
  std::map<std::string, std::shared_ptr<Image>> images_;  ///< by their bytes
  std::unique_ptr<Canvas> ruler_;                         ///< letters are measured on it
};

}  // namespace sagitta
