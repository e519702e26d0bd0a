#include "paper/LengthPage.hpp"

#include <algorithm>
#include <cmath>

#include "paper/LengthSection.hpp"
#include "paper/PdfFigures.hpp"
#include "paper/PdfTable.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// mm of paper.
constexpr double title_height = 18, side_room = 13, number_drop = 4.2, number_gap = 1.2, below_numbers = 12;
/// Of the paper's height, what the section takes at most.
constexpr double section_share = 0.34;
/// Of a list, for easy reading.
constexpr double list_width = 150;

class LengthPage {
 public:
  LengthPage(PdfBook& book, const PreparedBoard& ready, const Paper& paper)
      : book_(book), board_(ready.board()), section_(length_section_of(ready)) {
    double high = 0;
    for (const Point& p : section_.top) high = std::max(high, p.y);
    const double room = paper.width - 2 * (paper_margin + side_room), length = section_.end() - section_.start();
    along_ = scale_for(length, room, 1);
    up_ = scale_for(high, section_share * paper.height, 20);
    origin_ = {(paper.width - along_.factor * (section_.start() + section_.end())) / 2,
               paper.height - paper_margin - title_height - up_.factor * high - 4};
  }

  void paint() {
    title(book_, shown_name(board_),
          "Shop drawing. Section along the centre line: lengths " + along_.name + ", heights " + up_.name +
              ", all dimensions in " + unit_word(board_) + ".");
    wood();
    recesses();
    slots();
    heights();
    list(origin_.y - number_drop - below_numbers);
  }

 private:
  Point at(double x, double z) const { return origin_ + Point{along_.factor * x, up_.factor * z}; }
  Point at(Point p) const { return at(p.x, p.y); }
  double top_at(double x) const {
    const auto right = std::ranges::lower_bound(section_.top, x, {}, &Point::x);
    if (right == section_.top.begin()) return section_.top.front().y;
    if (right == section_.top.end()) return section_.top.back().y;
    const Point a = *(right - 1), b = *right;
    return b.x > a.x ? a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x) : b.y;
  }

  void wood() {
    Loop outline;
    const auto to = [&](Point p) {
      if (!outline.empty()) outline.push_back(line(outline.back().b, p));
    };
    const Point low = at(section_.start(), 0), end = at(section_.end(), 0);
    outline.push_back(line(low, end));
    for (auto p = section_.top.rbegin(); p != section_.top.rend(); ++p) to(at(*p));
    to(low);
    book_.fill(outline, 0.93);
    book_.path(outline, true, Pen::outline);
    book_.line(at(0, 0) - Point{0, 2}, at(0, 0) + Point{0, 2}, Pen::line);
  }

  /// Floors of pockets and cuts with their walls up to the surface or down to the glue face.
  void recesses() {
    for (const LengthSection::Recess& each : section_.recesses) {
      const auto height = [&](double x, double z) { return std::min(z, top_at(x)); };
      const Point a = at(each.from, each.low), b = at(each.to, each.low);
      const Point c = at(each.to, height(each.to, each.high)), d = at(each.from, height(each.from, each.high));
      book_.path({line(d, a), line(a, b), line(b, c)}, false, Pen::dash);
      if (each.low == 0) book_.line(c, d, Pen::dash);
    }
  }

  void slots() {
    double free_from = -1e300;
    for (const LengthSection::Slot& slot : section_.slots) {
      const double low = slot.x - slot.width / 2, high = slot.x + slot.width / 2;
      book_.path({line(at(low, top_at(low)), at(low, slot.floor)), line(at(low, slot.floor), at(high, slot.floor)),
                  line(at(high, slot.floor), at(high, top_at(high)))},
                 false, Pen::line);
      const std::string number = std::to_string(slot.fret);
      const double half = book_.width_of(number) / 2, x = at(slot.x, 0).x;
      if (x - half < free_from) continue;
      book_.text({x, origin_.y - number_drop}, number, Text::body, Align::centre);
      free_from = x + half + number_gap;
    }
  }

  /// Inches to four decimals, as depths are.
  std::string figure(double mm) const {
    return board_.units == Units::inch ? gauge_measure(board_, mm) : fixed_measure(board_, mm);
  }

  void height_at(double x, double z, double off) { dimension(book_, at(x, 0), at(x, z), off, fine_measure(board_, z)); }

  void heights() {
    height_at(section_.start(), section_.top.front().y, 8);
    height_at(section_.end(), section_.top.back().y, -8);
    if (section_.troughs.empty()) return;
    const auto& deepest = *std::ranges::min_element(section_.troughs, {}, &LengthSection::Trough::left);
    height_at(deepest.x, deepest.left, 0);
  }

  std::string fall_words() const {
    return section_.fall > 0
               ? "From x = " + measured_length(board_.units, section_.fall_from) + " the centre line falls by " +
                     fine_length(board_.units, section_.fall) + " up to the body end. "
               : std::string();
  }

  void list(double top) {
    const double width = book_.width() - 2 * paper_margin;
    const std::string pockets =
        section_.recesses.empty() ? "" : "Dashed: pockets, cuts and the nut seat where they lie on the centre line. ";
    top -= paragraph(book_, {paper_margin, top}, width,
                     fall_words() + pockets + "The numbers below are those of the slots; x = 0 is the nut line.") +
           3;
    if (section_.troughs.empty()) return;
    PaperTable table{{"space", "trough at x", "deep", "left in the middle", "left at the edge"}, {}, ""};
    for (const LengthSection::Trough& each : section_.troughs)
      table.rows.push_back({std::to_string(each.fret), fixed_measure(board_, each.x), figure(each.depth),
                            figure(each.left), figure(std::min(each.left_at_edge[0], each.left_at_edge[1]))});
    const double wide = std::min(width, list_width);
    for (const FlowBlock& block : table_blocks(book_, wide, table)) {
      block.paint(book_, {paper_margin, top}, wide);
      top -= block.height;
    }
  }

  PdfBook& book_;
  const Board& board_;
  LengthSection section_;
  DrawingScale along_, up_;
  Point origin_;  ///< x = 0 on the glue face
};

}  // namespace

void add_length_page(PdfBook& book, const PreparedBoard& ready, const Paper& paper) {
  book.page(paper);
  LengthPage(book, ready, paper).paint();
}

}  // namespace sagitta
