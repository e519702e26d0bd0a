#include "rescue/SlotRescue.hpp"

#include <algorithm>
#include <cmath>

#include "frets/SlotCheck.hpp"
#include "inlay/Placement.hpp"
#include "layout/Measure.hpp"
#include "layout/SlotLines.hpp"
#include "plane/Tolerance.hpp"
#include "rescue/Ways.hpp"

namespace sagitta {
namespace {

/// Slots nearer to their places than this need no rescue, mm: what a good machine repeats; common practice, no source.
constexpr double repeatable = 0.02;
/// A slot further off than this is filled and cut again, mm: the limit of the finding slot-misplaced.
constexpr double misplaced = 0.1;
/// Wood between a covering piece and the slot beside it, mm: the limit of the finding thin-wall-at-slot.
constexpr double wall = 1;

double worst_cents(const std::vector<SlotError>& errors) {
  double worst = 0;
  for (const SlotError& error : errors) worst = std::max(worst, std::abs(error.cents));
  return worst;
}

std::optional<double> cents_on(const Board& board) {
  const auto drawn = draw(board);
  const auto* made = std::get_if<Drawn>(&drawn);
  if (!made) return {};
  return worst_cents(slot_errors(made->board.measured.slots, made->layout));
}

/// The scale stretched, and everything that is placed from the nut line moved with it.
Edits edits_for(const Board& board, const OtherScale& other) {
  Edits edits;
  const auto stretch = [&](const char* key, const std::optional<double>& length) {
    if (length) edits.push_back({key, other.stretch * *length});
  };
  stretch("scale.length", board.scale.length);
  stretch("scale.bass", board.scale.bass);
  stretch("scale.treble", board.scale.treble);
  if (std::abs(other.shift) <= tolerance::snap) return edits;
  std::vector<double> slots = board.measured.slots;
  for (double& x : slots) x -= other.shift;
  edits.push_back({"measured.slots", slots});
  if (board.pins) {
    std::vector<Place2> pins = board.pins->at;
    for (Place2& pin : pins) pin[0] -= other.shift;
    edits.push_back({"pins.at", pins});
  }
  if (board.blank.at) edits.push_back({"blank.at", Place2{(*board.blank.at)[0] + other.shift, (*board.blank.at)[1]}});
  return edits;
}

void offer_scale(Ways& ways, const std::string& name, const OtherScale& other, double before) {
  const Layout& layout = ways.ready()->layout();
  Way way;
  way.name = name;
  way.edits = edits_for(ways.planned(), other);
  const auto after = cents_on(edited(ways.planned(), way.edits));
  if (!after || *after >= before) return;
  const double scale = other.stretch * layout.mean_scale, saddle = other.shift + scale - layout.mean_scale;
  way.message = "string the board with a scale of " + in_units(ways.planned(), scale) + ": move the saddle " +
                in_units(ways.planned(), std::abs(saddle)) + (saddle < 0 ? " toward the nut" : " away from the nut");
  if (std::abs(other.shift) > tolerance::snap)
    way.message += " and the nut " + in_units(ways.planned(), std::abs(other.shift)) +
                   (other.shift < 0 ? " away from the frets" : " toward the frets");
  way.cost = "no slot is cut again; the worst note is then " + plain(std::round(100 * *after) / 100) +
             " cents off, and was " + plain(std::round(100 * before) / 100);
  way.effort = WayEffort::numbers;
  way.figures = {{"scale", scale, "mm"},
                 {"shift", other.shift, "mm"},
                 {"saddle-move", saddle, "mm"},
                 {"cents-before", before, "cents"},
                 {"cents-after", *after, "cents"}};
  ways.offer(std::move(way));
}

std::vector<std::size_t> wrong_slots(const std::vector<SlotError>& errors) {
  std::vector<std::size_t> wrong;
  for (std::size_t i = 0; i < errors.size(); ++i)
    if (std::abs(errors[i].off) > misplaced + tolerance::same) wrong.push_back(i);
  return wrong;
}

std::vector<double> cut_again(const Board& board, const std::vector<SlotError>& errors,
                              const std::vector<std::size_t>& wrong) {
  std::vector<double> slots = board.measured.slots;
  for (const std::size_t i : wrong) slots[i] = errors[i].place;
  return slots;
}

void offer_filling(Ways& ways, const std::vector<SlotError>& errors, const std::vector<std::size_t>& wrong) {
  Way way;
  way.name = "fill-and-cut-again";
  const std::vector<double> slots = cut_again(ways.planned(), errors, wrong);
  way.edits = {{"measured.slots", slots}};
  way.message = "fill " + std::to_string(wrong.size()) + (wrong.size() == 1 ? " slot" : " slots") +
                " with strips of the board's wood and cut them again in their places";
  way.cost = std::to_string(wrong.size()) + (wrong.size() == 1 ? " strip" : " strips") + " of " +
             ways.planned().blank.material + ", glued in and levelled; the strips may show";
  way.effort = WayEffort::cut_again;
  way.figures = {{"slots", static_cast<double>(wrong.size()), ""}};
  ways.offer(std::move(way));
}

/// The space that a place lies in; 0 where it lies in none.
int space_at(const Layout& layout, double x) {
  for (const FretLine& line : layout.frets)
    if (line.fret > 0 && x < line.middle.x) return line.fret;
  return 0;
}

/// A block as wide as the slot right across the board, where it lies clear of the slots that stay.
std::optional<Inlay> covering_block(const PreparedBoard& ready, const SlotError& error) {
  const Layout& layout = ready.layout();
  const double width = ready.board().slots.width;
  const int space = space_at(layout, error.measured);
  if (space == 0) return {};
  const Inlay usual;
  const double clear = width / 2 + usual.clearance + width / 2 + wall;
  for (const Slot& slot : layout.slots)
    if (std::abs(layout.frets[static_cast<std::size_t>(slot.fret)].middle.x - error.measured) < clear) return {};
  Inlay block;
  block.shape = InlayShape::block;
  block.frets = {space};
  const auto n = static_cast<std::size_t>(space);
  block.shift_along = error.measured - (layout.frets[n].middle.x + layout.frets[n - 1].middle.x) / 2;
  const Point along = unit(layout.frets[n].treble - layout.frets[n].bass);
  block.turn_degrees =
      std::atan2(-along.x, std::abs(along.y)) * 180 / std::numbers::pi * (ready.board().hand == Hand::left ? -1 : 1);
  block.along = std::max(width, 0.3);
  const double half = std::max(layout.edge(0, error.measured), layout.edge(1, error.measured));
  block.across = 2 * half / std::abs(along.y) + 2;
  block.depth = slot_depth(ready.board());
  if (!ready.surface().flat) block.depth += ready.surface().drop(error.measured, half);
  block.material = ready.board().blank.material;
  return block;
}

void offer_cover(Ways& ways, const std::vector<SlotError>& errors, const std::vector<std::size_t>& wrong) {
  Way way;
  way.name = "cover-with-inlay";
  Board with = ways.planned();
  for (const std::size_t i : wrong) {
    const auto block = covering_block(*ways.ready(), errors[i]);
    if (!block) return;
    const Edits edits = new_inlay(with, *block);
    way.edits.insert(way.edits.end(), edits.begin(), edits.end());
    with.inlays.push_back(*block);
  }
  way.edits.push_back({"measured.slots", cut_again(ways.planned(), errors, wrong)});
  way.message = "let a block right across the board into each slot that lies wrong, and cut the slot in its place";
  way.cost =
      std::to_string(wrong.size()) + (wrong.size() == 1 ? " block" : " blocks") + " of inlay that were not drawn";
  way.effort = WayEffort::cut_again;
  ways.offer(std::move(way));
}

}  // namespace

OtherScale other_scale(const std::vector<Sample>& samples) {
  const FittedLine line = least_squares(samples);
  return {line.slope, line.start};
}

OtherScale other_scale_at_nut(const std::vector<Sample>& samples) {
  double xx = 0, xy = 0;
  for (const Sample& sample : samples) xx += sample.x * sample.x, xy += sample.x * sample.y;
  return {xy / xx, 0};
}

void slot_ways(Ways& ways) {
  if (!ways.ready() || ways.planned().measured.slots.size() < 2) return;
  const std::vector<SlotError> errors = slot_errors(ways.planned().measured.slots, ways.ready()->layout());
  std::vector<Sample> samples;
  double off = 0;
  for (const SlotError& error : errors) {
    samples.push_back({error.place, error.measured});
    off = std::max(off, std::abs(error.off));
  }
  if (off <= repeatable) return;
  const double before = worst_cents(errors);
  const OtherScale both = other_scale(samples);
  offer_scale(ways, "other-scale", both, before);
  if (std::abs(both.shift) > tolerance::snap)
    offer_scale(ways, "other-scale-at-nut", other_scale_at_nut(samples), before);
  const std::vector<std::size_t> wrong = wrong_slots(errors);
  if (wrong.empty()) return;
  offer_cover(ways, errors, wrong);
  offer_filling(ways, errors, wrong);
}

}  // namespace sagitta
