#include "paper/HoldDown.hpp"

#include "paper/PdfFigures.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Of the zero's ring, part of the cross's arm; from one row of dimensions to the next.
constexpr double ring = 0.4, row = 6.5;

Pen pen_of(const std::string& layer) {
  if (layer == "blank" || layer == "outline") return Pen::outline;
  if (layer == "zero" || layer == "dowels") return Pen::line;
  if (layer == "centre-line" || layer == "blank-centre") return Pen::dash;
  if (layer == "radius-area" || layer == "tabs") return Pen::faint;
  return Pen::thin;
}

class Painter {
 public:
  Painter(PdfBook& book, const HoldDown& hold_down, double factor, Point centre)
      : book_(book),
        drawing_(hold_down.drawing),
        nut_(hold_down.nut),
        units_(hold_down.units),
        factor_(factor),
        origin_(centre - factor * between(drawing_.page.low, drawing_.page.high, 0.5)) {}

  void paint() {
    if (const Layer* clamps = layer_named(drawing_, "clamps"))
      for (const Figure& clamp : clamps->figures) paint_clamp(clamp);
    for (const Layer& layer : drawing_.layers) {
      if (layer.name == "clamps" || layer.name == "zero" || layer.name == "slot-outline") continue;
      for (const Figure& figure : layer.figures)
        book_.path(placed(figure.pieces, factor_, origin_), figure.closed, pen_of(layer.name));
    }
    mark_zero(book_, at({0, 0}));
    dimension_blank();
  }

 private:
  Point at(Point p) const { return origin_ + factor_ * p; }

  void paint_clamp(const Figure& clamp) {
    book_.fill(placed(clamp.pieces, factor_, origin_), 0.9);
    const Box box = bounds(clamp.pieces);
    const Point middle = at(between(box.low, box.high, 0.5));
    if (factor_ * (box.high.x - box.low.x) > book_.width_of("clamp") + 1)
      book_.text(middle - Point{0, 1}, "clamp", Text::body, Align::centre);
  }

  /// Length and width, and from both ends to the nut line.
  void dimension_blank() {
    const Box& blank = drawing_.page;
    const Point low = at(blank.low), high = at(blank.high);
    const double nut_on_paper = at({nut_, 0}).x;
    dimension(book_, low, {nut_on_paper, low.y}, -row, measure(units_, nut_ - blank.low.x));
    dimension(book_, {nut_on_paper, low.y}, {high.x, low.y}, -row, measure(units_, blank.high.x - nut_));
    dimension(book_, low, {high.x, low.y}, -2 * row, measure(units_, blank.high.x - blank.low.x));
    dimension(book_, low, {low.x, high.y}, 8, measure(units_, blank.high.y - blank.low.y));
  }

  PdfBook& book_;
  const Drawing& drawing_;
  double nut_;
  Units units_;
  double factor_;
  Point origin_;
};

}  // namespace

void mark_zero(PdfBook& book, Point at, double arm) {
  book.line(at - Point{arm, 0}, at + Point{arm, 0}, Pen::line);
  book.line(at - Point{0, arm}, at + Point{0, arm}, Pen::line);
  book.path(circle(at, ring * arm), true, Pen::line);
}

void paint_hold_down(PdfBook& book, const HoldDown& hold_down, double factor, Point centre) {
  Painter(book, hold_down, factor, centre).paint();
}

}  // namespace sagitta
