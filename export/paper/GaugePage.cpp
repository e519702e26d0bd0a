#include "paper/GaugePage.hpp"

#include <algorithm>
#include <functional>

#include "board/Length.hpp"
#include "drawing/GaugeDrawing.hpp"
#include "paper/PdfFigures.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// mm of paper.
constexpr double title_height = 16, gap = 9, beside = 14, rule_height = 14, tick = 2.5, list_width = 70;
/// The deepest arc that a board has is less than this much below its middle.
constexpr double deepest = 12;

class Pages {
 public:
  Pages(const PreparedBoard& ready, const Paper& paper)
      : board_(ready.board()), paper_(paper), book_(shown_name(board_) + ", gauges") {
    begin();
  }

  /// In rows from the left. What `paint` paints goes down from the middle of its top, over the height.
  void put(double height, double width, const std::function<void(PdfBook&, Point)>& paint) {
    if (width > paper_.width - 2 * paper_margin) return;
    if (x_ + width > paper_.width - paper_margin) new_row();
    if (y_ - height < paper_margin + rule_height) begin();
    paint(book_, {x_ + width / 2, y_});
    x_ += width + beside;
    row_ = std::max(row_, height);
  }

  void new_row() {
    y_ -= row_ + gap;
    x_ = paper_margin;
    row_ = 0;
  }

  PdfBook take() { return std::move(book_); }

 private:
  void begin() {
    book_.page(paper_);
    title(book_, book_.title(), "True size. Cut out along the lines; the arc of a gauge sits on the playing surface.");
    y_ = paper_.height - paper_margin - title_height;
    x_ = paper_margin;
    row_ = 0;
    rule();
  }

  /// A length to check the printer by: 100 mm, or 4 in.
  void rule() {
    const bool inches = board_.units == Units::inch;
    const double length = inches ? 4 * mm_per_inch : 100;
    const Point from{paper_margin, paper_margin + 2};
    book_.line(from, from + Point{length, 0}, Pen::line);
    for (int i = 0; i <= (inches ? 4 : 10); ++i) {
      const Point at = from + Point{length * i / (inches ? 4 : 10), 0};
      book_.line(at, at + Point{0, tick}, Pen::line);
    }
    book_.text(from + Point{length + 3, 0}, measured_length(board_.units, length) + ": check the print with it");
  }

  const Board& board_;
  Paper paper_;
  PdfBook book_;
  double x_ = 0, y_ = 0, row_ = 0;  ///< where the next one begins, and how high its row is
};

/// The strings' places in figures, for a rule.
void put_places(Pages& pages, const Board& board, const StringStrip& strip) {
  const std::string heading = "Strings at the " + strip.name + ", across from the centre line";
  Rows rows;
  for (std::size_t i = 0; i < strip.places.size(); ++i)
    rows.emplace_back("string " + std::to_string(i + 1) + (i == 0 ? ", bass" : ""),
                      fixed_measure(board, strip.places[i]));
  pages.put(line_step * static_cast<double>(rows.size() + 1) + 1, list_width, [&](PdfBook& book, Point top) {
    column(book, top - Point{list_width / 2, line_step}, list_width, heading, rows);
  });
}

}  // namespace

PdfBook gauge_book(const PreparedBoard& ready, const Paper& paper) {
  const Units units = ready.board().units;
  Pages pages(ready, paper);
  for (const RadiusGauge& gauge : radius_gauges(ready))
    pages.put(gauge_height + deepest, gauge.width, [&](PdfBook& book, Point top) {
      const Point apex = top - Point{0, gauge_height};
      book.path(gauge_outline(gauge, apex, gauge_height), true, Pen::line);
      book.line(apex, apex + Point{0, 3}, Pen::thin);
      book.text(apex + Point{0, 7}, gauge.name + ", radius " + measured_length(units, gauge.radius), Text::body,
                Align::centre);
    });
  pages.new_row();
  for (const StringStrip& strip : string_strips(ready))
    pages.put(strip_height, 2 * strip_reach(strip), [&](PdfBook& book, Point top) {
      const double reach = strip_reach(strip);
      const Point foot = top - Point{0, strip_height};
      book.path(rectangle(foot - Point{reach, 0}, foot + Point{reach, strip_height}), true, Pen::line);
      for (const double place : strip.places)
        book.line(foot + Point{place, 0}, foot + Point{place, strip_height / 2}, Pen::thin);
      const bool bass_left = strip.places.empty() || strip.places.front() <= 0;
      book.text(foot + Point{0, strip_height / 2 + 1.6},
                "strings at the " + strip.name + (bass_left ? ", bass at the left" : ", bass at the right"), Text::body,
                Align::centre);
    });
  pages.new_row();
  for (const StringStrip& strip : string_strips(ready)) put_places(pages, ready.board(), strip);
  return pages.take();
}

}  // namespace sagitta
