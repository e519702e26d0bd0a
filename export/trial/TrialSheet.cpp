#include <algorithm>

#include "drawing/Paper.hpp"
#include "paper/PdfFigures.hpp"
#include "text/Measures.hpp"
#include "trial/TrialFiles.hpp"

namespace sagitta {
namespace {

constexpr double title_height = 16, above_strip = 12, below_strip = 16, tick_box = 3.4, row_step = 7;
constexpr double gutter = 9;
/// Places of a column's words from its left edge: number, figure, box, room for what was measured. mm.
constexpr double stops[] = {0, 10, 30, 40};

/// Pencil writes into it.
void empty_box(PdfBook& book, Point at) {
  const Point b = at + Point{tick_box, 0}, c = at + Point{tick_box, tick_box}, d = at + Point{0, tick_box};
  book.path({line(at, b), line(b, c), line(c, d), line(d, at)}, true, Pen::thin);
}

/// Everything on the one page.
class TrialPage {
 public:
  TrialPage(const PreparedBoard& ready, const Trial& trial, const Paper& paper)
      : board_(ready.board()), trial_(trial), book_("Trial strip of " + shown_name(ready.board())) {
    book_.page(paper);
    width_ = (paper.width - 2 * paper_margin - 2 * gutter) / 3;
  }

  PdfBook paint() {
    title(book_, "Trial strip: " + shown_name(board_),
          "Cut it from a piece of the board's own wood, with the cutters and feeds of the board. All dimensions in " +
              unit_word(board_) + ".");
    const double strip_foot = strip(book_.height() - paper_margin - title_height - above_strip);
    const double top = strip_foot - below_strip;
    slots({paper_margin, top});
    pairs({paper_margin + width_ + gutter, top});
    length({paper_margin + 2 * (width_ + gutter), top});
    cautions();
    return std::move(book_);
  }

 private:
  std::string shown(double mm) const { return fixed_measure(board_, mm); }

  /// The strip in true size where it fits, its numbers over and under it; gives its lower edge.
  double strip(double top) {
    const Layout& layout = trial_.strip.layout();
    const Box box = bounds(layout.outline);
    const DrawingScale scale = scale_for(box.high.x - box.low.x, book_.width() - 2 * paper_margin, 1);
    const Point origin{(book_.width() - scale.factor * (box.low.x + box.high.x)) / 2, top - scale.factor * box.high.y};
    const auto at = [&](Point p) { return origin + scale.factor * p; };
    const double edge = box.high.y;
    book_.path(placed(layout.outline, scale.factor, origin), true, Pen::outline);
    for (const TrialSlot& slot : trial_.slots) {
      for (const double side : {-0.5, 0.5})
        book_.line(at({slot.x + side * slot.width, -edge}), at({slot.x + side * slot.width, edge}), Pen::thin);
      book_.text(at({slot.x, edge}) + Point{0, 1.6}, std::to_string(slot.number), Text::body, Align::centre);
    }
    for (const InlayPiece& piece : trial_.strip.pieces())
      for (const Loop& loop : piece.pocket) book_.path(placed(loop, scale.factor, origin), true, Pen::thin);
    for (const TrialPair& pair : trial_.pairs)
      book_.text(at(pair.centre) - Point{0, 1}, std::to_string(pair.number), Text::body, Align::centre);
    const double half = trial_.slots.front().width / 2, other = trial_.slots.back().width / 2;
    dimension(book_, at({trial_.slots.front().x - half, -edge}), at({trial_.slots.back().x + other, -edge}), -6,
              shown(trial_.over_flanks()));
    return at({0, -edge}).y;
  }

  void heading(Point at, const std::string& text, const std::string& figure, const std::string& measured) {
    book_.text(at, text, Text::head);
    const char* number = "No.";
    book_.text(at - Point{0, 7}, number);
    book_.text(at + Point{stops[1], -7}, figure);
    book_.text(at + Point{stops[2], -7}, "Fits");
    book_.text(at + Point{stops[3], -7}, measured);
    book_.line(at - Point{0, 8.6}, at + Point{width_, -8.6}, Pen::thin);
  }

  void row(Point at, int number, const std::string& figure, bool wanted) {
    book_.text(at, std::to_string(number));
    book_.text(at + Point{stops[1], 0}, figure + (wanted ? " *" : ""));
    empty_box(book_, at + Point{stops[2], -0.6});
    book_.line(at + Point{stops[3], -1}, at + Point{width_, -1}, Pen::faint);
  }

  void slots(Point at) {
    heading(at, "Slots", "Width", "Measured");
    Point place = at - Point{0, 14};
    for (const TrialSlot& slot : trial_.slots) {
      row(place, slot.number, gauge_measure(board_, slot.width), slot.wanted);
      place = place - Point{0, row_step};
    }
    paragraph(book_, place - Point{0, 1}, width_,
              "Press a short end of your wire into each. The one that holds without splitting the wood is the width to "
              "set: slots.width. If a slot measures wider than it is drawn, set what the cutter really cuts: "
              "cutters.measured_cut, by that much more than its diameter.");
  }

  void pairs(Point at) {
    heading(at, "Pockets and pieces", "Clearance", "Measured");
    Point place = at - Point{0, 14};
    for (const TrialPair& pair : trial_.pairs) {
      row(place, pair.number, gauge_measure(board_, pair.clearance), pair.wanted);
      place = place - Point{0, row_step};
    }
    paragraph(book_, place - Point{0, 1}, width_,
              "Cut the pieces from their own sheet of " + trial_.strip.board().inlays.front().material +
                  ". All pieces are the same size; only the pockets grow. The tightest pocket that a piece drops into, "
                  "with room for glue, is the one to set: inlays.clearance.");
  }

  void length(Point at) {
    book_.text(at, "Length", Text::head);
    const double used = paragraph(book_, at - Point{0, 7}, width_,
                                  "Over the outer flanks of slots 1 and " + std::to_string(trial_.slots.back().number) +
                                      " a caliper finds " + shown(trial_.over_flanks()) +
                                      ". Cut the strip along the axis that will cut the board's length.");
    const Point line_at = at - Point{0, 7 + used + 7};
    book_.text(line_at, "Measured");
    book_.line(line_at + Point{20, -1}, line_at + Point{width_, -1}, Pen::faint);
    paragraph(
        book_, line_at - Point{0, 8}, width_,
        "No key takes this: if it is off by more than " + shown(0.1) +
            " the machine's own steps per length are wrong, and every fret would be. Set them before the board is "
            "cut. Slots that are right on the strip and wrong on the board go into measured.slots.");
  }

  void cautions() {
    paragraph(
        book_, {paper_margin, paper_margin + 2 * line_step}, book_.width() - 2 * paper_margin,
        "* as the board file has it now. Small pieces come free at the last pass: leave tabs or tape them down, and "
        "wear eye protection. Dust of wood and inlay material harms the lungs: extraction and a mask. Local rules "
        "and your own training come first.");
  }

  const Board& board_;
  const Trial& trial_;
  PdfBook book_;
  double width_ = 0;  ///< of a column
};

}  // namespace

PdfBook trial_book(const PreparedBoard& ready, const Trial& trial, const Paper& paper) {
  return TrialPage(ready, trial, paper).paint();
}

}  // namespace sagitta
