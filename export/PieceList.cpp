#include "export/PieceList.hpp"

#include <algorithm>
#include <cstdio>
#include <map>
#include <nlohmann/json.hpp>

#include "export/CsvRow.hpp"
#include "export/DrawingParts.hpp"
#include "plan/Feature.hpp"
#include "plane/Rounded.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// A piece stands this much proud of its pocket where the file does not say otherwise (BOARD-FILE: piece_thickness). mm.
constexpr double usual_rise = 0.2;

Point middle(const ListedPiece& piece) {
  const Box box = bounds(piece.outline.pieces);
  return between(box.low, box.high, 0.5);
}

Point size(const ListedPiece& piece) {
  const Box box = bounds(piece.outline.pieces);
  return box.high - box.low;
}

ListedPiece piece_at(const Board& board, const Marker& marker) {
  const Inlay& inlay = board.inlays[marker.inlay];
  ListedPiece piece;
  piece.material = inlay.material;
  piece.fret = marker.fret;
  piece.depth = inlay.depth;
  piece.thickness = inlay.piece_thickness.value_or(inlay.depth + usual_rise);
  const Rounded shape = shrunk(pocket_shape(board, inlay, marker.centre), inlay.clearance);
  if (!shape.empty()) piece.outline = {"piece", outline(shape), true};
  return piece;
}

bool before(const ListedPiece& a, const ListedPiece& b) {
  const Point p = middle(a), q = middle(b);
  if (std::abs(p.x - q.x) > tolerance::snap) return p.x < q.x;
  return p.y < q.y;
}

}  // namespace

std::vector<ListedPiece> piece_list(const Board& board, const Layout& layout) {
  std::vector<ListedPiece> pieces;
  for (const Marker& marker : layout.markers) {
    if (board.inlays[marker.inlay].shape == InlayShape::artwork) continue;
    ListedPiece piece = piece_at(board, marker);
    const bool there = std::any_of(pieces.begin(), pieces.end(), [&](const ListedPiece& other) {
      return other.material == piece.material && same_figure(other.outline, piece.outline);
    });
    if (!piece.outline.pieces.empty() && !there) pieces.push_back(std::move(piece));
  }
  std::stable_sort(pieces.begin(), pieces.end(), before);
  std::map<std::string, int> counts;
  for (ListedPiece& piece : pieces) {
    piece.number = static_cast<int>(&piece - pieces.data()) + 1;
    char ending[16];
    std::snprintf(ending, sizeof ending, "-%02d", ++counts[piece.material]);
    piece.name = piece.material + ending;
    piece.outline.name = piece.name;
  }
  return pieces;
}

std::string piece_csv(const std::vector<ListedPiece>& pieces) {
  std::string text = "number,piece,material,fret,x_mm,y_mm,along_mm,across_mm,pocket_depth_mm,thickness_mm\n";
  for (const ListedPiece& piece : pieces)
    text += CsvRow()
                .whole(piece.number)
                .text(piece.name)
                .text(piece.material)
                .whole(piece.fret)
                .number(middle(piece).x)
                .number(middle(piece).y)
                .number(size(piece).x)
                .number(size(piece).y)
                .number(piece.depth)
                .number(piece.thickness)
                .line();
  return text;
}

nlohmann::ordered_json piece_json(const std::vector<ListedPiece>& pieces) {
  auto list = nlohmann::ordered_json::array();
  for (const ListedPiece& piece : pieces)
    list.push_back({{"number", piece.number},
                    {"piece", piece.name},
                    {"material", piece.material},
                    {"fret", piece.fret},
                    {"x", middle(piece).x},
                    {"y", middle(piece).y},
                    {"along", size(piece).x},
                    {"across", size(piece).y},
                    {"pocket_depth", piece.depth},
                    {"thickness", piece.thickness}});
  return list;
}

}  // namespace sagitta
