#include "measured/Record.hpp"

#include <algorithm>

#include "layout/BlankPlace.hpp"
#include "layout/Measure.hpp"
#include "surface/Surface.hpp"

namespace sagitta {
namespace {

/// Tolerances, mm: common practice, no source.
constexpr double of_slot = 0.08, of_thickness = 0.1, of_tape = 0.02, of_slot_width = 0.02, of_pocket = 0.05,
                 of_piece = 0.05, of_width = 0.1;

/// The board as it was planned, laid out; nothing where that cannot be.
struct Plan {
  std::optional<Layout> layout;
  Surface surface;
};

Plan plan_of(Board board) {
  board.measured = {};
  Plan plan;
  auto laid = lay_out(board);
  if (auto* layout = std::get_if<Layout>(&laid)) {
    plan.surface = surface_of(board, *layout);
    plan.layout = std::move(*layout);
  }
  return plan;
}

class Record {
 public:
  Record(const Board& board, const Inlays& inlays) : board_(board), inlays_(inlays), plan_(plan_of(board)) {}

  std::vector<MeasuredValue> take() {
    const Measured& measured = board_.measured;
    if (measured.blank_thickness)
      add("blank_thickness", "thickness of the blank", "at both ends and in the middle, the least",
          blank_thickness(board_), *measured.blank_thickness, of_thickness);
    if (measured.tape)
      add("tape", "tape under the blank", "one layer pressed down, by micrometer", planned_tape(), *measured.tape,
          of_tape);
    pockets();
    pieces();
    slots();
    if (measured.slot_width)
      add("slot_width", "width of the slots", "by feeler gauge, in the middle of a slot", board_.slots.width,
          *measured.slot_width, of_slot_width);
    sizes();
    return std::move(values_);
  }

 private:
  void add(const std::string& key, const std::string& what, const std::string& where, std::optional<double> planned,
           double measured, double tolerance) {
    values_.push_back({"measured." + key, what, where, planned, measured, tolerance});
  }

  double planned_tape() const { return board_.setups.empty() ? 0 : board_.setups.front().tape; }

  const Inlay& inlay_of(const InlayPiece& piece) const { return board_.inlays[static_cast<std::size_t>(piece.inlay)]; }

  void pockets() {
    for (const auto& [name, depth] : board_.measured.pocket_depths)
      for (const InlayPiece& piece : inlays_.pieces)
        if (piece.name == name)
          add("pocket_depths." + name, "depth of the pocket of " + name, "from the finished top at the centre line",
              inlay_of(piece).depth, depth, of_pocket);
  }

  void pieces() {
    for (const auto& [material, thickness] : board_.measured.piece_thickness) {
      const auto first = std::ranges::find(inlays_.pieces, material, &InlayPiece::material);
      if (first != inlays_.pieces.end())
        add("piece_thickness." + material, "thickness of the pieces of " + material, "by micrometer, the thinnest",
            piece_thickness(inlay_of(*first)), thickness, of_piece);
    }
  }

  void slots() {
    for (std::size_t i = 0; i < board_.measured.slots.size(); ++i) {
      std::optional<double> place;
      std::string name = "slot " + std::to_string(i + 1);
      if (plan_.layout && i < plan_.layout->slots.size()) {
        const int fret = plan_.layout->slots[i].fret;
        place = plan_.layout->frets[static_cast<std::size_t>(fret)].middle.x;
        name = fret == 0 ? "slot zero" : "slot of fret " + std::to_string(fret);
      }
      add("slots[" + std::to_string(i) + "]", "place of the " + name,
          "its middle on the centre line, from the nut line", place, board_.measured.slots[i], of_slot);
    }
  }

  void sizes() {
    const Measured& measured = board_.measured;
    for (std::size_t i = 0; i < measured.thickness.size(); ++i) {
      const auto& [x, y, thickness] = measured.thickness[i];
      std::optional<double> planned;
      if (plan_.layout && plan_.surface.exists(x, y)) planned = plan_.surface.height(x, y) + board_.sanding;
      add("thickness[" + std::to_string(i) + "]", "thickness of the board",
          "at x = " + in_units(board_, x) + ", y = " + in_units(board_, y) + ", before sanding", planned, thickness,
          of_thickness);
    }
    for (std::size_t i = 0; i < measured.widths.size(); ++i) {
      const auto& [x, width] = measured.widths[i];
      std::optional<double> planned;
      if (plan_.layout) planned = plan_.layout->edge(0, x) + plan_.layout->edge(1, x);
      add("widths[" + std::to_string(i) + "]", "width of the board",
          "square to the centre line at x = " + in_units(board_, x), planned, width, of_width);
    }
  }

  const Board& board_;
  const Inlays& inlays_;
  const Plan plan_;
  std::vector<MeasuredValue> values_;
};

}  // namespace

std::vector<MeasuredValue> measured_values(const Board& planned, const Inlays& inlays) {
  return Record(planned, inlays).take();
}

}  // namespace sagitta
