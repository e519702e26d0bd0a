#include "inlay/PocketDepths.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "board/Spelling.hpp"
#include "layout/Measure.hpp"
#include "plane/Tolerance.hpp"
#include "polygon/Gap.hpp"

namespace sagitta {
namespace {

/// An outline with the outlines of the holes in it, and how deep it was cut.
struct Component {
  Loops loops;
  double size = 0;  ///< area within the outer outline
  double depth = -std::numeric_limits<double>::infinity();
};

/// The smallest component around a point; null when there is none.
Component* around(std::vector<Component>& components, Point p) {
  Component* smallest = nullptr;
  for (Component& each : components)
    if (holds({each.loops.front()}, p) && (!smallest || each.size < smallest->size)) smallest = &each;
  return smallest;
}

std::vector<Component> components_of(const Loops& outlines) {
  std::vector<Component> components;
  for (const Loop& loop : outlines)
    if (const double size = area(loop); size > 0) components.push_back({{loop}, size});
  for (const Loop& loop : outlines)
    if (area(loop) <= 0)
      if (Component* outer = around(components, loop.front().a)) outer->loops.push_back(loop);
  return components;
}

}  // namespace

void take_measured(const Board& board, InlayPiece& piece) {
  const Inlay& inlay = board.inlays[static_cast<std::size_t>(piece.inlay)];
  if (const auto depth = board.measured.pocket_depths.find(piece.name);
      depth != board.measured.pocket_depths.end() && std::abs(depth->second - piece.depth) > tolerance::same) {
    if (!inlay.piece_thickness) piece.thickness += depth->second - piece.depth;
    piece.depth = depth->second;
  }
  if (const auto thickness = board.measured.piece_thickness.find(piece.material);
      thickness != board.measured.piece_thickness.end() &&
      std::abs(thickness->second - piece.thickness) > tolerance::same)
    piece.thickness = thickness->second;
}

std::vector<Pocket> by_depth(const Pocket& whole, double planned, const std::vector<const InlayPiece*>& pieces) {
  if (std::all_of(pieces.begin(), pieces.end(), [&](const InlayPiece* each) { return each->depth == planned; }))
    return {whole};
  std::vector<Component> components = components_of(whole.outlines);
  for (const InlayPiece* piece : pieces)
    if (Component* in = around(components, piece->piece.front().front().a))
      in->depth = std::max(in->depth, piece->depth);
  std::vector<Pocket> pockets;
  for (const Component& each : components) {
    const double depth = std::isfinite(each.depth) ? each.depth : planned;
    auto same = std::find_if(pockets.begin(), pockets.end(),
                             [&](const Pocket& pocket) { return pocket.depth.value_or(planned) == depth; });
    if (same == pockets.end()) {
      same = pockets.insert(same, whole);
      same->outlines.clear();
      if (depth != planned) same->depth = depth;
    }
    same->outlines.insert(same->outlines.end(), each.loops.begin(), each.loops.end());
  }
  return pockets;
}

Faults measured_faults(const Board& board, const Inlays& inlays) {
  Faults faults;
  std::vector<std::string> names, materials;
  for (const InlayPiece& piece : inlays.pieces) names.push_back(piece.name), materials.push_back(piece.material);
  const auto unknown = [&](const std::string& key, const std::string& name, const std::vector<std::string>& known,
                           const std::string& what) {
    if (std::find(known.begin(), known.end(), name) != known.end()) return;
    const std::string near = nearest_word(name, known);
    faults.push_back({FaultCode::unknown_key, key, what + " \"" + name + "\"",
                      near.empty() ? "take a name from the list of pieces" : "was \"" + near + "\" meant?"});
  };
  for (const auto& [name, depth] : board.measured.pocket_depths)
    unknown("measured.pocket_depths", name, names, "the board has no piece that is called");
  for (const auto& [name, thickness] : board.measured.piece_thickness)
    unknown("measured.piece_thickness", name, materials, "the board has no piece of");
  for (const InlayPiece& piece : inlays.pieces) {
    const double left = board.board.thickness - piece.depth;
    if (!board.measured.pocket_depths.contains(piece.name) || left >= tolerance::least_floor - tolerance::same)
      continue;
    faults.push_back(
        {FaultCode::floor_too_low, "measured.pocket_depths",
         "the pocket of " + piece.name + " was measured " + in_units(board, piece.depth) + " deep: it leaves " +
             in_units_down(board, left) + " of wood, and the least is " + in_units(board, tolerance::least_floor),
         "measure from the finished top at the centre line, or fill the pocket and cut it again", id_of(piece)});
  }
  return faults;
}

}  // namespace sagitta
