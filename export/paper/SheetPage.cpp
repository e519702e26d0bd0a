#include "paper/SheetPage.hpp"

#include <algorithm>

#include "drawing/SheetDrawing.hpp"
#include "paper/HoldDown.hpp"
#include "paper/PdfFigures.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// mm of paper.
constexpr double side_room = 16, foot_room = 14, title_height = 14, note_gap = 1.4, letter = 2.6;

class SheetPainter {
 public:
  SheetPainter(PdfBook& book, const Drawing& drawing, Units units, double factor, Point low)
      : book_(book), drawing_(drawing), units_(units), factor_(factor), origin_(low - factor * drawing.page.low) {}

  void paint() {
    for (const Layer& layer : drawing_.layers)
      for (const Figure& figure : layer.figures) this->figure(layer.name, figure);
    name_pieces();
    const Point low = at(drawing_.page.low), high = at(drawing_.page.high);
    dimension(book_, low, {high.x, low.y}, -7, measure(units_, drawing_.page.high.x - drawing_.page.low.x));
    dimension(book_, low, {low.x, high.y}, 8, measure(units_, drawing_.page.high.y - drawing_.page.low.y));
    mark_zero(book_, at({0, 0}));
  }

 private:
  Point at(Point p) const { return origin_ + factor_ * p; }

  void figure(const std::string& layer, const Figure& figure) {
    if (layer == "zero") return;
    const Loop placed_pieces = placed(figure.pieces, factor_, origin_);
    if (layer == "clamps") return book_.fill(placed_pieces, 0.9);
    book_.path(placed_pieces, figure.closed,
               layer == "blank"          ? Pen::outline
               : layer == "blank-centre" ? Pen::dash
               : layer == "tape"         ? Pen::dash
                                         : Pen::line);
  }

  /// A number beside a piece that has no room for it, where it meets neither another piece nor another number; else
  /// nowhere: the list below names all of them.
  void name_beside(const Box& piece, const std::string& number, std::vector<Box>& taken) {
    const double half = book_.width_of(number) / 2 + 0.4;
    const Point middle = at(between(piece.low, piece.high, 0.5)), reach = 0.5 * factor_ * (piece.high - piece.low);
    for (const Point way : {Point{1, 0}, Point{-1, 0}, Point{0, 1}, Point{0, -1}}) {
      const Point place = middle + Point{way.x * (reach.x + half + 0.4), way.y * (reach.y + letter / 2 + 0.6)};
      const Box own{place - Point{half, letter / 2}, place + Point{half, letter / 2}};
      if (std::ranges::any_of(taken, [&](const Box& each) { return each.overlaps(own); })) continue;
      book_.text(place - Point{0, 1}, number, Text::body, Align::centre);
      taken.push_back(own);
      return;
    }
  }

  /// A name stands in its piece where it has room, else beside it.
  void name_pieces() {
    std::vector<Box> taken;
    for (const Layer& layer : drawing_.layers)
      for (const Figure& figure : layer.figures)
        if (layer.name.starts_with("piece-")) {
          const Box box = bounds(figure.pieces);
          taken.push_back({at(box.low), at(box.high)});
        }
    for (const Layer& layer : drawing_.layers) {
      if (!layer.name.starts_with("piece-")) continue;
      const std::string* last = nullptr;
      for (const Figure& figure : layer.figures) {
        if (last && *last == figure.name) continue;
        last = &figure.name;
        const Box box = bounds(figure.pieces);
        const std::string number = figure.name.substr(figure.name.find_last_of('-') + 1);
        if (factor_ * (box.high.x - box.low.x) < book_.width_of(number) + 0.6 ||
            factor_ * (box.high.y - box.low.y) < letter) {
          name_beside(box, number, taken);
          continue;
        }
        book_.text(at(between(box.low, box.high, 0.5)) - Point{0, 1}, number, Text::body, Align::centre);
      }
    }
  }

  PdfBook& book_;
  const Drawing& drawing_;
  Units units_;
  double factor_;
  Point origin_;
};

}  // namespace

PdfBook sheet_book(const PreparedBoard& ready, const NestedSheet& sheet, const Drawing& drawing, const Paper& paper) {
  const Board& board = ready.board();
  std::vector<std::string> notes = sheet_notes(ready, sheet, board.units);
  std::string names = "Pieces, by the end of their names:";
  for (const NestedPiece& piece : sheet.pieces) names += " " + piece.name;
  notes.push_back(names + ".");
  PdfBook book(drawing.title);
  book.page(paper);
  const double room = paper.width - 2 * paper_margin - 2 * side_room;
  const double tall = paper.height - 2 * paper_margin - title_height - foot_room -
                      2 * line_step * static_cast<double>(notes.size() + 2);
  const Point size = drawing.page.high - drawing.page.low;
  const DrawingScale scale = scale_for(size.x, std::min(room, std::max(tall, paper.height / 4) / size.y * size.x), 2);
  title(book, drawing.title,
        "From above " + scale.name + ", dimensions in " + unit_word(board) + ". The cross in the circle is the zero.");
  const double top = paper.height - paper_margin - title_height - 2;
  const Point low{(paper.width - scale.factor * size.x) / 2, top - scale.factor * size.y};
  SheetPainter(book, drawing, board.units, scale.factor, low).paint();
  double y = low.y - foot_room;
  for (const std::string& note : notes)
    y -= paragraph(book, {paper_margin, y}, paper.width - 2 * paper_margin, note) + note_gap;
  return book;
}

}  // namespace sagitta
