#include "paper/ShopDrawing.hpp"

#include <algorithm>
#include <cmath>

#include "board/SlotCut.hpp"
#include "drawing/Drawing.hpp"
#include "layout/LastFret.hpp"
#include "paper/PdfFigures.hpp"
#include "paper/Section.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Between neighbouring columns, and between a section and the figures below it. mm of paper.
constexpr double gutter = 9, below_section = 13;
/// Width of the last column, which has no section over it. mm of paper.
constexpr double board_column = 46;
constexpr double title_height = 14, first_row = 9, second_row = 17;
/// Room that the plan's dimensions take beside it. mm of paper.
constexpr double plan_side = 13;

double middle_of(const Layout& layout) { return (bounds(layout.outline).low.x + bounds(layout.outline).high.x) / 2; }

/// The board from above, the middle of its length at `centre`.
class PlanView {
 public:
  PlanView(PdfBook& book, const PreparedBoard& ready, DrawingScale scale, Point centre)
      : book_(book),
        board_(ready.board()),
        layout_(ready.layout()),
        slots_(ready.slots()),
        scale_(scale),
        origin_(centre - scale.factor * Point{middle_of(ready.layout()), 0}) {}

  void paint(const Drawing& drawing) {
    draw(drawing, "pocket", Pen::thin);
    draw(drawing, "nut-seat", Pen::thin);
    draw(drawing, "side-dots", Pen::faint);
    for (const Slot& slot : slots_) book_.line(at(slot.bass_end), at(slot.treble_end), Pen::thin);
    draw(drawing, "fret-places", Pen::thin);
    draw(drawing, "binding", Pen::thin);
    draw(drawing, "outline", Pen::outline);
    const Box box = bounds(layout_.outline);
    book_.line(at({box.low.x, 0}) - Point{4, 0}, at({box.high.x, 0}) + Point{4, 0}, Pen::dash);
  }

  void dimension_lengths() {
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
    along(layout_.nut_end, layout_.heel_end, second_row);
    const double high = at({0, box.high.y}).y;
    if (layout_.nut_end < 0)
      dimension(book_, {at({layout_.nut_end, 0}).x, high}, {at({0, 0}).x, high}, first_row,
                measure(board_, -layout_.nut_end));
  }

  void dimension_widths() {
    const Box box = bounds(layout_.outline);
    const double left = at({box.low.x, 0}).x, right = at({box.high.x, 0}).x;
    const auto across = [&](double where, double x, double row) {
      dimension(book_, {where, at({0, -layout_.edge(0, x)}).y}, {where, at({0, layout_.edge(1, x)}).y}, row,
                measure(board_, 2 * layout_.half_width(x)));
    };
    across(left, 0, first_row);
    across(right, layout_.heel_end, -first_row);
  }

 private:
  Point at(Point p) const { return origin_ + scale_.factor * p; }
  void draw(const Drawing& drawing, const char* name, Pen pen) {
    if (const Layer* layer = layer_named(drawing, name))
      for (const Figure& figure : layer->figures)
        book_.path(placed(figure.pieces, scale_.factor, origin_), figure.closed, pen);
  }

  PdfBook& book_;
  const Board& board_;
  const Layout& layout_;
  const std::vector<Slot>& slots_;
  DrawingScale scale_;
  Point origin_;
};

/// Wood in section: y across to the right, z up, its glue face's middle at the origin.
Loop section_loop(const Section& section) {
  const auto& [low, high] = section.sides;
  const Point a{-low.edge, 0}, b{high.edge, 0}, c{high.edge, high.height}, d{-low.edge, low.height};
  const CurveSegment top =
      section.radius ? arc_between({0, section.middle - *section.radius}, *section.radius, c, d, true) : line(c, d);
  return {line(a, b), line(b, c), top, line(d, a)};
}

/// The slot's floor, parallel to the top or level.
CurveSegment floor_of(const Section& section, bool follows) {
  const auto& [low, high] = section.sides;
  const Point a{high.slot_end, high.floor}, b{-low.slot_end, low.floor};
  if (!section.radius || !follows) return line(a, b);
  return arc_between({0, section.floor_middle - *section.radius}, *section.radius, a, b, true);
}

void draw_section(PdfBook& book, const Board& board, const Section& section, const DrawingScale& scale, Point foot) {
  const Loop wood = placed(section_loop(section), scale.factor, foot);
  book.fill(wood, 0.93);
  if (slot_cut(board) != SlotCut::none)
    book.path(placed({floor_of(section, board.slots.floor == SlotFloor::arc)}, scale.factor, foot), false, Pen::dash);
  book.path(wood, true, Pen::outline);
  const auto from_foot = [&](double y) { return foot + Point{scale.factor * y, 0}; };
  dimension(book, from_foot(-section.sides[0].edge), from_foot(section.sides[1].edge), -6,
            measure(board, section.width()));
}

Rows section_rows(const Board& board, const Section& section) {
  const auto shown = [&](double mm) { return fixed_measure(board, mm); };
  Rows rows;
  rows.emplace_back("Radius", section.radius ? shown(*section.radius) : "flat");
  rows.emplace_back("Thickness in the middle", shown(section.middle));
  const bool left = board.hand == Hand::left;
  // One row for both edges where they are the same, else the bass edge's and the treble edge's.
  const auto ends = [&](const std::string& what, double SectionSide::*value) {
    const double bass = section.sides[left ? 1 : 0].*value, treble = section.sides[left ? 0 : 1].*value;
    if (section.sides[0] == section.sides[1]) return void(rows.emplace_back(what, shown(bass)));
    rows.emplace_back(what + ", bass", shown(bass));
    rows.emplace_back(what + ", treble", shown(treble));
  };
  ends("Thickness at the edge", &SectionSide::height);
  if (slot_cut(board) == SlotCut::none) return rows;
  rows.emplace_back("Slot depth in the middle", shown(section.depth_middle));
  ends("Slot depth at its ends", &SectionSide::depth);
  rows.emplace_back("Left below, in the middle", shown(section.floor_middle));
  ends("Left below, at the ends", &SectionSide::floor);
  return rows;
}

std::string scale_words(const Board& board, const Layout& layout) {
  if (layout.bass_scale == layout.treble_scale) return measure(board, layout.bass_scale);
  return measure(board, layout.bass_scale) + " / " + measure(board, layout.treble_scale);
}

Rows main_rows(const Board& board, const Layout& layout) {
  Rows rows;
  rows.emplace_back("Scale", scale_words(board, layout));
  rows.emplace_back("Frets", std::to_string(layout.frets.size() - 1));
  if (slot_cut(board) != SlotCut::none) rows.emplace_back("Width of slots", measure(board, board.slots.width));
  if (layout.nut) rows.emplace_back("Depth of nut seat", measure(board, layout.nut->depth));
  if (board.binding) rows.emplace_back("Binding", measure(board, board.binding->width));
  if (board.binding)
    for (std::size_t i = 0; i < board.binding->lines.size(); ++i)
      rows.emplace_back("Line of " + board.binding->line_materials[i], measure(board, board.binding->lines[i]));
  rows.emplace_back("Wood", board.blank.material);
  rows.emplace_back("Hand", board.hand == Hand::left ? "left" : "right");
  return rows;
}

}  // namespace

PdfBook shop_book(const PreparedBoard& ready, const Drawing& drawing, const Paper& paper) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  PdfBook book(shown_name(board) + ", shop drawing");
  book.page(paper);
  const double room = paper.width - 2 * paper_margin;
  const Box box = bounds(layout.outline);
  const std::vector<Section> sections = sections_of(ready);

  const double step = (room - board_column) / static_cast<double>(sections.size());
  double widest = 0;
  for (const Section& section : sections) widest = std::max(widest, section.width());
  const DrawingScale section_scale = scale_for(widest, step - gutter, 2);
  const double section_height = section_scale.factor * board.board.thickness;
  std::size_t most_rows = 7;
  for (const Section& section : sections) most_rows = std::max(most_rows, section_rows(board, section).size());
  most_rows = std::max(most_rows, main_rows(board, layout).size());
  const double list_height = (line_step * static_cast<double>(most_rows)) + 4;
  const double foot = paper_margin + list_height + below_section;  // of the sections

  const double free_low = foot + section_height + 8, free_high = paper.height - paper_margin - title_height;
  const double plan_room = std::min(room - 2 * plan_side, (free_high - free_low - first_row - second_row - 6) /
                                                              (box.high.y - box.low.y) * (box.high.x - box.low.x));
  const DrawingScale scale = scale_for(box.high.x - box.low.x, plan_room, 1);
  title(book, shown_name(board),
        "Shop drawing. Board from above " + scale.name + ", sections " + section_scale.name + ", all dimensions in " +
            unit_word(board) + ".");
  PlanView plan(book, ready, scale, {paper.width / 2, (free_low + second_row + free_high - first_row) / 2});
  plan.paint(drawing);
  plan.dimension_lengths();
  plan.dimension_widths();

  for (std::size_t i = 0; i < sections.size(); ++i) {
    const double left = paper_margin + static_cast<double>(i) * step;
    draw_section(book, board, sections[i], section_scale, {left + (step - gutter) / 2, foot});
    column(book, {left, paper_margin + list_height - 2}, step - gutter, sections[i].name,
           section_rows(board, sections[i]));
  }
  const double left = paper.width - paper_margin - board_column;
  column(book, {left, paper_margin + list_height - 2}, board_column, "Board", main_rows(board, layout));
  return book;
}

}  // namespace sagitta
