#include "trial/Trial.hpp"

#include <algorithm>
#include <cmath>

#include "inlay/Inlays.hpp"
#include "rules/Work.hpp"

namespace sagitta {
namespace {

constexpr int slot_count = 7, pair_count = 5;
constexpr double inch = 25.4;
constexpr double width = 30, first_slot = 15, past_slots = 22, pair_gap = 6, past_pairs = 12;
/// A block for boards without inlays: long and wide enough for usual cutters.
constexpr double block_along = 12, block_across = 10, block_depth = 1.5;

double between_slots(const Board& board) { return board.units == Units::inch ? 4 * inch : 100; }

/// Slots from the wanted width less three steps, but not under the cutter's own cut.
std::vector<TrialSlot> slots_for(const Board& board) {
  const double step = trial_step(board), wanted = board.slots.width;
  double least = wanted - slot_count / 2 * step;
  for (const Cutter& cutter : board.cutters)
    if (std::find(cutter.use.begin(), cutter.use.end(), CutterUse::slot) != cutter.use.end())
      least = std::max(least, std::min(wanted, cut_width(cutter)));
  least = std::max(least, step);
  std::vector<TrialSlot> slots;
  for (int i = 0; i < slot_count; ++i) {
    const double x = first_slot + between_slots(board) * i / (slot_count - 1);
    const double cut = least + i * step;
    slots.push_back({i + 1, x, cut, std::abs(cut - wanted) < step / 2});
  }
  return slots;
}

/// The inlay that the pairs are made after.
Inlay sample_of(const Board& board) {
  Inlay sample;
  sample.shape = InlayShape::block;
  sample.along = block_along;
  sample.across = block_across;
  sample.depth = block_depth;
  for (const Inlay& inlay : board.inlays) {
    sample.depth = inlay.depth;
    sample.piece_thickness = inlay.piece_thickness;
    sample.clearance = inlay.clearance;
    sample.material = inlay.material;
    break;
  }
  sample.frets = {1};
  return sample;
}

/// Clearances about the wanted one, and not under none.
std::vector<double> clearances_for(const Board& board, double wanted) {
  const double step = trial_step(board), least = std::max(0.0, wanted - pair_count / 2 * step);
  std::vector<double> all;
  for (int i = 0; i < pair_count; ++i) all.push_back(least + i * step);
  return all;
}

/// The strip as a board: one long space, level, with the board's own wood, cutters and materials.
Board strip_of(const Board& board, const std::vector<double>& clearances, double length) {
  Board strip;
  strip.name = "trial strip of " + (board.name.empty() ? "the fretboard" : board.name);
  strip.units = board.units;
  strip.scale.length = 2 * (length - past_pairs);  // fret 12 of 12 where the pairs end
  strip.scale.frets = 12;
  strip.strings.count = 2;
  strip.strings.nut_spread = strip.strings.saddle_spread = width - 10;
  strip.board.thickness = board.board.thickness;
  strip.board.nut_width = strip.board.heel_width = width;
  strip.board.behind_nut = 0;
  strip.board.past_last_fret = past_pairs;
  strip.slots = board.slots;
  strip.slots.ends = SlotEnds::through;
  strip.slots.depth = slot_depth(board);
  strip.wire = board.wire;
  strip.blank.material = board.blank.material;
  strip.cutters = board.cutters;
  strip.materials = board.materials;
  Inlay pair = sample_of(board);
  for (const double clearance : clearances) {
    pair.clearance = clearance;
    strip.inlays.push_back(pair);
  }
  return strip;
}

/// Prepared, and every stage sound.
std::variant<PreparedBoard, Faults> prepared_strip(const Board& strip, const OwnPlaces& own) {
  auto drawn = draw(strip, own);
  if (auto* faults = std::get_if<Faults>(&drawn)) return std::move(*faults);
  auto prepared = prepare(std::get<Drawn>(std::move(drawn)));
  if (const auto* ready = std::get_if<PreparedBoard>(&prepared))
    if (Faults faults = ready->stage_faults(); !faults.empty()) return faults;
  return prepared;
}

}  // namespace

double trial_step(const Board& board) { return board.units == Units::inch ? inch / 1000 : 0.02; }

double Trial::over_flanks() const { return between + (slots.front().width + slots.back().width) / 2; }

std::variant<Trial, Problems> trial_of(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Inlay sample = sample_of(board);
  const std::vector<TrialSlot> slots = slots_for(board);
  const std::vector<double> clearances = clearances_for(board, sample.clearance);
  const double first = slots.back().x + past_slots, apart = *sample.along + pair_gap;
  const double length = first + (pair_count - 1) * apart + *sample.along / 2 + past_pairs;
  OwnPlaces own;
  for (const TrialSlot& slot : slots)
    own.slots.push_back({slot.number, {slot.x, -width / 2}, {slot.x, width / 2}, slot.width, false});
  std::vector<TrialPair> pairs;
  for (int i = 0; i < pair_count; ++i) {
    const double clearance = clearances[static_cast<std::size_t>(i)];
    const bool wanted = std::abs(clearance - sample.clearance) < trial_step(board) / 2;
    pairs.push_back({i + 1, {first + i * apart, 0}, clearance, wanted});
    own.markers.push_back({i, 1, pairs.back().centre});
  }
  BoardFile file;
  file.board = strip_of(board, clearances, length);
  auto strip = prepared_strip(file.board, own);
  if (const auto* faults = std::get_if<Faults>(&strip)) return locate(file, *faults);
  return Trial{std::get<PreparedBoard>(std::move(strip)), slots, pairs, between_slots(board)};
}

}  // namespace sagitta
