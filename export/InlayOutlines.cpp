#include "export/InlayOutlines.hpp"

#include <algorithm>
#include <cstdio>
#include <map>

#include "export/DrawingParts.hpp"
#include "plan/Feature.hpp"
#include "plane/Rounded.hpp"

namespace sagitta {
namespace {

/// A piece stands this much proud of its pocket where the file does not say otherwise (BOARD-FILE: piece_thickness). mm.
constexpr double usual_rise = 0.2;

InlayPiece piece_at(const Board& board, const Marker& marker) {
  const Inlay& inlay = board.inlays[marker.inlay];
  InlayPiece piece;
  piece.material = inlay.material;
  piece.inlay = marker.inlay;
  piece.fret = marker.fret;
  piece.depth = inlay.depth;
  piece.thickness = inlay.piece_thickness.value_or(inlay.depth + usual_rise);
  const Rounded pocket = pocket_shape(board, inlay, marker.centre);
  if (pocket.empty()) return piece;
  piece.pocket = {outline(pocket)};
  const Rounded shape = shrunk(pocket, inlay.clearance);
  if (!shape.empty()) piece.piece = {outline(shape)};
  return piece;
}

bool same_outlines(const Loops& a, const Loops& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if (!same_figure({"", a[i], true}, {"", b[i], true})) return false;
  return true;
}

std::string number_name(const std::string& material, int number) {
  char ending[16];
  std::snprintf(ending, sizeof ending, "-%02d", number);
  return material + ending;
}

}  // namespace

InlayOutlines inlay_outlines(const Board& board, const Layout& layout) {
  InlayOutlines outlines;
  std::map<std::string, int> counts;
  for (const Marker& marker : layout.markers) {
    if (board.inlays[marker.inlay].shape == InlayShape::artwork) continue;
    InlayPiece piece = piece_at(board, marker);
    const auto there = [&](const InlayPiece& other) { return same_outlines(other.pocket, piece.pocket); };
    if (piece.pocket.empty() || std::any_of(outlines.pieces.begin(), outlines.pieces.end(), there)) continue;
    piece.name = number_name(piece.material, ++counts[piece.material]);
    for (const Loop& loop : piece.pocket) outlines.pockets.push_back({"pocket of " + piece.name, loop, true});
    outlines.pieces.push_back(std::move(piece));
  }
  return outlines;
}

std::vector<Figure> figures_of(const InlayPiece& piece) {
  std::vector<Figure> figures;
  for (const Loop& loop : piece.piece) figures.push_back({piece.name, loop, true});
  return figures;
}

}  // namespace sagitta
