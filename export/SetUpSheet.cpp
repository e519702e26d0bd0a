#include "export/SetUpSheet.hpp"

#include <algorithm>

#include "export/Measures.hpp"
#include "export/PdfFigures.hpp"

namespace sagitta {
namespace {

/// Room for dimensions round the blank. mm of paper.
constexpr double side_room = 14, foot_room = 24, title_height = 14;
constexpr double note_gap = 1.4, zero_ring = 1.6;

Pen pen_of(const std::string& layer) {
  if (layer == "blank" || layer == "outline") return Pen::outline;
  if (layer == "zero" || layer == "dowels") return Pen::line;
  if (layer == "centre-line" || layer == "blank-centre") return Pen::dash;
  if (layer == "radius-area" || layer == "tabs") return Pen::faint;
  return Pen::thin;
}

class Picture {
 public:
  Picture(PdfBook& book, const Drawing& drawing, double factor, Point centre)
      : book_(book), drawing_(drawing), factor_(factor),
        origin_(centre - factor * between(drawing.page.low, drawing.page.high, 0.5)) {}

  void paint() {
    if (const Layer* clamps = layer_named(drawing_, "clamps"))
      for (const Figure& clamp : clamps->figures) {
        book_.fill(placed(clamp.pieces, factor_, origin_), 0.9);
        const Box box = bounds(clamp.pieces);
        const Point middle = at(between(box.low, box.high, 0.5));
        if (factor_ * (box.high.x - box.low.x) > book_.width_of("clamp") + 1)
          book_.text(middle - Point{0, 1}, "clamp", Text::body, Align::centre);
      }
    for (const Layer& layer : drawing_.layers) {
      if (layer.name == "clamps" || layer.name == "zero" || layer.name == "slot-outline") continue;
      for (const Figure& figure : layer.figures)
        book_.path(placed(figure.pieces, factor_, origin_), figure.closed, pen_of(layer.name));
    }
    mark_zero();
  }

  /// The blank's length and width, and from its left end to the nut line, at x = `nut`.
  void dimension_blank(const Board& board, double nut) {
    const Box& blank = drawing_.page;
    const Point low = at(blank.low), high = at(blank.high);
    const double nut_on_paper = at({nut, 0}).x;
    dimension(book_, low, {nut_on_paper, low.y}, -8, measure(board, nut - blank.low.x));
    dimension(book_, {nut_on_paper, low.y}, {high.x, low.y}, -8, measure(board, blank.high.x - nut));
    dimension(book_, low, {high.x, low.y}, -16, measure(board, blank.high.x - blank.low.x));
    dimension(book_, low, {low.x, high.y}, 8, measure(board, blank.high.y - blank.low.y));
  }

 private:
  Point at(Point p) const { return origin_ + factor_ * p; }
  void mark_zero() {
    const Point zero = at({0, 0});
    book_.line(zero - Point{4, 0}, zero + Point{4, 0}, Pen::line);
    book_.line(zero - Point{0, 4}, zero + Point{0, 4}, Pen::line);
    book_.path(circle(zero, zero_ring), true, Pen::line);
  }

  PdfBook& book_;
  const Drawing& drawing_;
  double factor_;
  Point origin_;
};

}  // namespace

std::string setup_sheet_pdf(const Board& board, const Layout& layout, const SetUp& setup, const Drawing& drawing,
                            const Paper& paper) {
  const std::vector<std::string> notes = setup_notes(board, layout, setup);
  PdfBook book(drawing.title);
  book.page(paper);
  const double room = paper.width - 2 * paper_margin - 2 * side_room;
  const double tall = paper.height - 2 * paper_margin - title_height;
  const Point blank = drawing.page.high - drawing.page.low;
  const double notes_room = line_step * 2 * static_cast<double>(notes.size());
  const double height = std::max(tall - notes_room - foot_room, tall / 4);
  const DrawingScale scale = scale_for(blank.x, std::min(room, height / blank.y * blank.x), 1);
  title(book, shown_name(board) + ", set-up " + std::to_string(setup.number) + ": " + setup.name,
        "The blank from above " + scale.name + ", dimensions in " + unit_word(board) + ". The cross in the circle is the zero.");
  const double top = paper.height - paper_margin - title_height - 2;
  Picture picture(book, drawing, scale.factor, {paper.width / 2, top - scale.factor * blank.y / 2});
  picture.paint();
  picture.dimension_blank(board, setup.from_board({0, 0}).x);
  double y = top - scale.factor * blank.y - foot_room - 4;
  for (const std::string& note : notes)
    y -= paragraph(book, {paper_margin, y}, paper.width - 2 * paper_margin, note) + note_gap;
  return book.finished();
}

}  // namespace sagitta
