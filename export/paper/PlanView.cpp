#include "paper/PlanView.hpp"

#include "layout/LastFret.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Of dimensions, from the board; of a width's words over its upper edge, and of those that find no room there.
constexpr double first_row = 9, second_row = 17, words_row = 3.5, next_words = 8.1;
/// How far the centre line runs past the board; a stroke's reach at the end of a width; between two widths' words.
constexpr double centre_past = 4, stroke = 0.65, words_gap = 3;

double middle_of(const Layout& layout) { return (bounds(layout.outline).low.x + bounds(layout.outline).high.x) / 2; }

}  // namespace

PlanView::PlanView(PdfBook& book, const PreparedBoard& ready, DrawingScale scale, Point centre)
    : book_(book),
      ready_(ready),
      board_(ready.board()),
      layout_(ready.layout()),
      scale_(std::move(scale)),
      origin_(centre - scale_.factor * Point{middle_of(ready.layout()), 0}) {}

void PlanView::paint(const Drawing& drawing) {
  draw(drawing, "pocket", Pen::thin);
  draw(drawing, "nut-seat", Pen::thin);
  draw(drawing, "side-dots", Pen::faint);
  for (const Slot& slot : ready_.slots()) book_.line(at(slot.bass_end), at(slot.treble_end), Pen::thin);
  draw(drawing, "fret-places", Pen::thin);
  draw(drawing, "binding", Pen::thin);
  draw(drawing, "outline", Pen::outline);
  const Box box = bounds(layout_.outline);
  book_.line(at({box.low.x, 0}) - Point{centre_past, 0}, at({box.high.x, 0}) + Point{centre_past, 0}, Pen::dash);
}

void PlanView::dimension_lengths() {
  const Box box = bounds(layout_.outline);
  const FretLine& last = last_fret(layout_);
  const double low = at({0, box.low.y}).y;
  const auto along = [&](double from, double to, double row) {
    constexpr double no_length = 1e-3;  // mm; shorter ones are not dimensioned
    if (to - from > no_length)
      dimension(book_, {at({from, 0}).x, low}, {at({to, 0}).x, low}, -row, measure(board_, to - from));
  };
  along(0, last.middle.x, first_row);
  along(last.middle.x, layout_.heel_end, first_row);
  const double end = layout_.tongue ? layout_.tongue->end : layout_.heel_end;
  along(layout_.nut_end, end, second_row);
  const double high = at({0, box.high.y}).y;
  const auto above = [&](double from, double to) {
    if (to > from)
      dimension(book_, {at({from, 0}).x, high}, {at({to, 0}).x, high}, first_row, measure(board_, to - from));
  };
  above(layout_.nut_end, 0);
  above(layout_.heel_end, end);
}

void PlanView::dimension_widths() {
  const Box box = bounds(layout_.outline);
  const double left = at({box.low.x, 0}).x, right = at({box.high.x, 0}).x;
  const auto across = [&](double where, double x, double row) {
    dimension(book_, {where, at({0, -layout_.edge(0, x)}).y}, {where, at({0, layout_.edge(1, x)}).y}, row,
              measure(board_, 2 * layout_.half_width(x)));
  };
  across(left, 0, first_row);
  across(right, layout_.heel_end, -first_row);
  constexpr int octave = 12;
  const int joint = board_.neck ? board_.neck->joint_fret.value_or(0) : 0;
  if (joint < octave) width_at_fret(joint, "joint, fret ");
  width_at_fret(octave, joint == octave ? "joint, fret " : "fret ");
  if (joint > octave) width_at_fret(joint, "joint, fret ");
}

/// A line across the board with its width over the upper edge; over the words of the one before it where they meet.
void PlanView::width_at_fret(int fret, const std::string& name) {
  if (fret < 1 || fret > layout_.frets.back().fret) return;
  const double x = layout_.frets[static_cast<std::size_t>(fret)].middle.x;
  const Point low = at({x, -layout_.edge(0, x)}), high = at({x, layout_.edge(1, x)});
  const std::string words = name + std::to_string(fret) + ": " + measure(board_, 2 * layout_.half_width(x));
  const double half = book_.width_of(words) / 2, edge = at({0, bounds(layout_.outline).high.y}).y;
  const bool meets = any_named_ && high.x - half < named_to_ + words_gap;
  const Point over{high.x, edge + (meets ? next_words : words_row)};
  book_.line(low, over - Point{0, 1}, Pen::thin);
  for (const Point end : {low, high}) book_.line(end - Point{stroke, stroke}, end + Point{stroke, stroke}, Pen::line);
  book_.text(over, words, Text::body, Align::centre);
  named_to_ = high.x + half;
  any_named_ = true;
}

void PlanView::draw(const Drawing& drawing, const char* name, Pen pen) {
  if (const Layer* layer = layer_named(drawing, name))
    for (const Figure& figure : layer->figures)
      book_.path(placed(figure.pieces, scale_.factor, origin_), figure.closed, pen);
}

}  // namespace sagitta
