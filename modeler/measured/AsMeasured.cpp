#include "measured/AsMeasured.hpp"

#include <algorithm>
#include <cmath>

#include "inlay/Inlays.hpp"
#include "layout/BlankPlace.hpp"
#include "layout/Layout.hpp"
#include "layout/Measure.hpp"
#include "measured/LeastSquares.hpp"
#include "plane/Tolerance.hpp"
#include "surface/Surface.hpp"

namespace sagitta {
namespace {

bool differ(double a, double b) { return std::abs(a - b) > tolerance::same; }

/// Measured values that need no layout.
void take_stock(Board& board) {
  const Measured& measured = board.measured;
  if (measured.blank_thickness && differ(*measured.blank_thickness, blank_thickness(board)))
    board.blank.thickness = measured.blank_thickness;
  for (Setup& setup : board.setups)
    if (measured.tape && differ(*measured.tape, setup.tape)) setup.tape = *measured.tape;
  if (measured.slot_width && differ(*measured.slot_width, board.slots.width)) board.slots.width = *measured.slot_width;
}

double width_at(const Layout& layout, double x) { return layout.edge(0, x) + layout.edge(1, x); }

std::string place_words(const Board& board, double x, double y) {
  return "x = " + in_units(board, x) + ", y = " + in_units(board, y);
}

Fault off_board(const Board& board, const std::string& key, std::size_t index, double x, double y) {
  return {FaultCode::off_board, key + "[" + std::to_string(index) + "]",
          "the place " + place_words(board, x, y) + " lies beside the board: nothing can be measured there",
          "x counts from the nut line toward the bridge, y from the centre line, in the board's frame"};
}

Faults places_off_board(const Board& board, const Layout& layout, const Surface& surface) {
  const Measured& measured = board.measured;
  Faults faults;
  const auto along = [&](double x) {
    return x >= layout.nut_end - tolerance::same && x <= layout.heel_end + tolerance::same;
  };
  for (std::size_t i = 0; i < measured.widths.size(); ++i)
    if (const double x = measured.widths[i][0]; !along(x))
      faults.push_back(off_board(board, "measured.widths", i, x, 0));
  for (std::size_t i = 0; i < measured.thickness.size(); ++i) {
    const double x = measured.thickness[i][0], y = measured.thickness[i][1];
    const bool across = y >= -layout.edge(0, x) - tolerance::same && y <= layout.edge(1, x) + tolerance::same;
    if (!along(x) || !across || !surface.exists(x, y))
      faults.push_back(off_board(board, "measured.thickness", i, x, y));
  }
  return faults;
}

/// By how much the board is thicker than planned; 0 where no place differs.
double thickness_gained(const Board& board, const Surface& surface) {
  double sum = 0;
  bool any = false;
  for (const auto& [x, y, thickness] : board.measured.thickness) {
    const double gained = thickness - (surface.height(x, y) + board.sanding);
    any = any || std::abs(gained) > tolerance::same;
    sum += gained;
  }
  return any ? sum / static_cast<double>(board.measured.thickness.size()) : 0;
}

/// Floors that are cut stay where they are while the surface over them is moved.
void take_thickness(Board& board, double gained) {
  if (gained == 0) return;
  const std::set<Operation> cut = cut_when_measured(board);
  if (!board.blank.thickness) board.blank.thickness = blank_thickness(board);
  if (has_thickness(board)) board.thickness_to = thickness_to(board);
  if (cut.contains(Operation::pockets)) {
    for (Inlay& inlay : board.inlays) {
      if (!inlay.piece_thickness) inlay.piece_thickness = piece_thickness(inlay);
      inlay.depth += gained;
    }
    for (auto& [name, depth] : board.measured.pocket_depths) depth += gained;
    for (Cut& each : board.cuts)
      if (each.from == CutFrom::top) each.depth += gained;  // right through stays so: it is infinite
  }
  if (cut.contains(Operation::slots)) {
    board.slots.depth = slot_depth(board) + gained;
    if (board.nut.seat != NutSeat::none) board.nut.depth += gained;
  }
  board.board.thickness += gained;
}

void take_widths(Board& board, const Layout& layout) {
  std::vector<Sample> samples;
  bool any = false;
  for (const auto& [x, width] : board.measured.widths) {
    samples.push_back({x, width - width_at(layout, x)});
    any = any || std::abs(samples.back().y) > tolerance::same;
  }
  if (!any) return;
  const FittedLine gained = least_squares(samples);
  Shape& shape = board.board;
  if (shape.nut_width) {
    shape.heel_width = width_at(layout, layout.heel_end) + gained.at(layout.heel_end);
    shape.width_at_fret.reset();
    *shape.nut_width += gained.at(0);
    return;
  }
  const auto moved = [](LengthPair margin, double by) {
    return LengthPair(margin.first + by / 2, margin.second + by / 2);
  };
  const LengthPair nut = shape.edge_margin ? *shape.edge_margin : shape.nut_margin.value_or(LengthPair());
  const LengthPair heel = shape.edge_margin ? *shape.edge_margin : shape.heel_margin.value_or(LengthPair());
  shape.edge_margin.reset();
  shape.nut_margin = moved(nut, gained.at(0));
  shape.heel_margin = moved(heel, gained.at(layout.heel_end));
}

}  // namespace

std::set<Operation> cut_when_measured(const Board& board) {
  const Measured& measured = board.measured;
  std::set<Operation> cut(measured.done.begin(), measured.done.end());
  if (!measured.pocket_depths.empty()) cut.insert(Operation::pockets);
  if (!measured.thickness.empty()) cut.insert(Operation::radius);
  if (!measured.slots.empty() || measured.slot_width) cut.insert(Operation::slots);
  if (!measured.widths.empty()) cut.insert(Operation::outline);
  const auto last =
      std::find_if(board.order.rbegin(), board.order.rend(), [&](Operation each) { return cut.contains(each); });
  cut.insert(last, board.order.rend());
  return cut;
}

std::variant<Board, Faults> as_measured(const Board& planned) {
  if (planned.measured == Measured()) return planned;
  Board board = planned;
  take_stock(board);
  if (board.measured.thickness.empty() && board.measured.widths.empty()) return board;
  Board whole = board;  // a blank too thin for the planned board may hold one that came out thinner
  whole.blank.thickness.reset();
  const auto laid = lay_out(whole);
  if (const auto* faults = std::get_if<Faults>(&laid)) return *faults;
  const Layout& layout = std::get<Layout>(laid);
  const Surface surface = surface_of(board, layout);
  if (Faults faults = places_off_board(board, layout, surface); !faults.empty()) return faults;
  take_thickness(board, thickness_gained(board, surface));
  take_widths(board, layout);
  return board;
}

}  // namespace sagitta
