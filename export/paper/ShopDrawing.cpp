#include "paper/ShopDrawing.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "board/SlotCut.hpp"
#include "drawing/Drawing.hpp"
#include "paper/FretPlaces.hpp"
#include "paper/LengthPage.hpp"
#include "paper/LengthSection.hpp"
#include "paper/PdfFigures.hpp"
#include "paper/PlanView.hpp"
#include "paper/Section.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Between neighbouring columns, and between a section and the figures below it. mm of paper.
constexpr double gutter = 9, below_section = 13;
/// Width of the board's column; between the parts of the sheet; of a list over its rows. mm of paper.
constexpr double board_column = 46, part_gap = 7, list_head = 4;
constexpr double title_height = 14;

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
  const auto depth = [&](double mm) {
    return board.units == Units::inch ? gauge_measure(board, mm) : fixed_measure(board, mm);
  };
  Rows rows;
  rows.emplace_back("Radius", section.radius ? shown(*section.radius) : "flat");
  rows.emplace_back("Thickness in the middle", shown(section.middle));
  const bool left = board.hand == Hand::left;
  // One row for both edges where they are the same, else the bass edge's and the treble edge's.
  const auto ends = [&](const std::string& what, double SectionSide::*value, const auto& told) {
    const double bass = section.sides[left ? 1 : 0].*value, treble = section.sides[left ? 0 : 1].*value;
    if (section.sides[0] == section.sides[1]) return void(rows.emplace_back(what, told(bass)));
    rows.emplace_back(what + ", bass", told(bass));
    rows.emplace_back(what + ", treble", told(treble));
  };
  ends("Thickness at the edge", &SectionSide::height, shown);
  if (slot_cut(board) == SlotCut::none) return rows;
  rows.emplace_back("Slot depth in the middle", depth(section.depth_middle));
  ends("Slot depth at its ends", &SectionSide::depth, depth);
  rows.emplace_back("Left below, in the middle", depth(section.floor_middle));
  ends("Left below, at the ends", &SectionSide::floor, depth);
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
  if (layout.nut && !layout.nut->shelf) rows.emplace_back("Width of nut seat", measure(board, board.nut.width));
  if (layout.nut) rows.emplace_back("Depth of nut seat", measure(board, layout.nut->depth));
  if (board.binding) rows.emplace_back("Binding", measure(board, board.binding->width));
  if (board.binding)
    for (std::size_t i = 0; i < board.binding->lines.size(); ++i)
      rows.emplace_back("Line of " + board.binding->line_materials[i], measure(board, board.binding->lines[i]));
  const Box box = bounds(layout.outline);
  rows.emplace_back("Length over all", measure(board, box.high.x - box.low.x));
  rows.emplace_back("Wood", board.blank.material);
  rows.emplace_back("Hand", board.hand == Hand::left ? "left" : "right");
  return rows;
}

/// Where the parts stand: the plan on top, the frets' places, the sections with their lists at the foot. The board's
/// list stands beside the frets where the sheet is high enough, which leaves more width to the sections.
class ShopSheet {
 public:
  ShopSheet(const PreparedBoard& ready, const Paper& paper)
      : ready_(ready),
        board_(ready.board()),
        paper_(paper),
        sections_(sections_of(ready)),
        box_(bounds(ready.layout().outline)),
        book_(shown_name(board_) + ", shop drawing"),
        main_(main_rows(board_, ready.layout())) {
    book_.page(paper);
    places_.emplace(book_, ready);
    arrange(true);
    const double factor = plan_.factor, height = spare_;
    arrange(false);
    beside_ = height >= 0 && factor >= plan_.factor;
    if (beside_) arrange(true);
  }

  PdfBook print(const Drawing& drawing) {
    title(book_, shown_name(board_),
          "Shop drawing. Board from above " + plan_.name + ", sections " + section_.name + ", all dimensions in " +
              unit_word(board_) + ".");
    const double gap = part_gap + std::max(0.0, spare_ - table_more_) / 3;
    double y = paper_.height - paper_margin - title_height - (gap - part_gap);
    const double wide = plan_.factor * (box_.high.y - box_.low.y);
    PlanView plan(book_, ready_, plan_, {paper_.width / 2, y - plan_above - wide / 2 - plan_.factor * middle()});
    plan.paint(drawing);
    plan.dimension_lengths();
    plan.dimension_widths();
    y -= plan_above + wide + plan_below + gap;
    const double aside = beside_ ? board_column + gutter : 0;
    places_->paint({paper_margin + aside, y}, room() - aside, table_height_ + table_more_);
    if (beside_) column(book_, {paper_margin, y}, board_column, "Board", main_);
    draw_sections();
    return std::move(book_);
  }

 private:
  double room() const { return paper_.width - 2 * paper_margin; }
  double middle() const { return (box_.high.y + box_.low.y) / 2; }
  static double list_height(std::size_t rows) { return line_step * static_cast<double>(rows) + list_head; }

  void arrange(bool beside) {
    beside_ = beside;
    step_ = (room() + gutter - (beside ? 0 : board_column + gutter)) / static_cast<double>(sections_.size());
    double widest = 0;
    std::size_t rows = beside ? 0 : main_.size();
    for (const Section& section : sections_) {
      widest = std::max(widest, section.width());
      rows = std::max(rows, section_rows(board_, section).size());
    }
    lists_ = list_height(rows);
    section_ = scale_for(widest, step_ - gutter, 2);
    const double aside = beside ? board_column + gutter : 0;
    table_height_ = std::max(places_->least_height(room() - aside), beside ? list_height(main_.size()) : 0.0);
    const double free = paper_.height - 2 * paper_margin - title_height - lists_ - below_section -
                        section_.factor * board_.board.thickness - table_height_ - 2 * part_gap - plan_above -
                        plan_below;
    const Point size = box_.high - box_.low;
    plan_ = scale_for(size.x, std::min(room() - 2 * plan_side, free / size.y * size.x), 1);
    spare_ = free - plan_.factor * size.y;
    // Fewer and longer columns of frets where there is height for them.
    const double most = std::max(0.0, beside ? spare_ / 2 : spare_);
    table_more_ = std::max(0.0, places_->used_height(room() - aside, table_height_ + most) - table_height_);
  }

  void draw_sections() {
    const double foot = paper_margin + lists_ + below_section, top = paper_margin + lists_ - 2;
    for (std::size_t i = 0; i < sections_.size(); ++i) {
      const double left = paper_margin + static_cast<double>(i) * step_;
      draw_section(book_, board_, sections_[i], section_, {left + (step_ - gutter) / 2, foot});
      column(book_, {left, top}, step_ - gutter, sections_[i].name, section_rows(board_, sections_[i]));
    }
    if (!beside_) column(book_, {paper_.width - paper_margin - board_column, top}, board_column, "Board", main_);
  }

  const PreparedBoard& ready_;
  const Board& board_;
  const Paper& paper_;
  std::vector<Section> sections_;
  Box box_;
  PdfBook book_;
  Rows main_;
  std::optional<FretPlaces> places_;
  bool beside_ = false;
  DrawingScale plan_, section_;
  double step_ = 0, lists_ = 0, table_height_ = 0;
  double spare_ = 0;       ///< height that nothing needs; < 0: the parts do not go on the sheet
  double table_more_ = 0;  ///< of it, what the frets' places take
};

}  // namespace

PdfBook shop_book(const PreparedBoard& ready, const Drawing& drawing, const Paper& paper) {
  PdfBook book = ShopSheet(ready, paper).print(drawing);
  if (is_shaped_along(ready)) add_length_page(book, ready, paper);
  return book;
}

}  // namespace sagitta
