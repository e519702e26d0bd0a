#include "tables/PieceList.hpp"

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "plane/Tolerance.hpp"
#include "text/CsvRow.hpp"

namespace sagitta {
namespace {

Point middle(const ListedPiece& listed) { return between(listed.box.low, listed.box.high, 0.5); }
Point size(const ListedPiece& listed) { return listed.box.high - listed.box.low; }

bool before(const ListedPiece& a, const ListedPiece& b) {
  const Point p = middle(a), q = middle(b);
  if (std::abs(p.x - q.x) > tolerance::snap) return p.x < q.x;
  return p.y < q.y;
}

}  // namespace

std::vector<ListedPiece> piece_list(const std::vector<InlayPiece>& pieces) {
  std::vector<ListedPiece> list;
  for (const InlayPiece& piece : pieces) {
    Box box;
    for (const Loop& loop : piece.piece) box.add(bounds(loop).low), box.add(bounds(loop).high);
    if (!piece.piece.empty()) list.push_back({0, piece, box});
  }
  std::stable_sort(list.begin(), list.end(), before);
  for (ListedPiece& listed : list) listed.number = static_cast<int>(&listed - list.data()) + 1;
  return list;
}

std::vector<ListedPiece> pieces_by_name(const std::vector<InlayPiece>& pieces) {
  // Pieces are named one after the other as they stand in `pieces`.
  std::map<FeatureId, std::size_t> turn;
  for (std::size_t i = 0; i < pieces.size(); ++i) turn[id_of(pieces[i])] = i;
  std::vector<ListedPiece> list = piece_list(pieces);
  std::ranges::stable_sort(list, {}, [&](const ListedPiece& each) {
    return std::pair{each.piece.material, turn[id_of(each.piece)]};
  });
  return list;
}

std::string piece_csv(const std::vector<ListedPiece>& pieces) {
  std::string text = "number,piece,material,fret,x_mm,y_mm,along_mm,across_mm,pocket_depth_mm,thickness_mm\n";
  for (const ListedPiece& listed : pieces)
    text += CsvRow()
                .whole(listed.number)
                .text(listed.piece.name)
                .text(listed.piece.material)
                .whole(listed.piece.fret)
                .number(middle(listed).x)
                .number(middle(listed).y)
                .number(size(listed).x)
                .number(size(listed).y)
                .number(listed.piece.depth)
                .number(listed.piece.thickness)
                .line();
  return text;
}

nlohmann::ordered_json piece_json(const std::vector<ListedPiece>& pieces) {
  auto list = nlohmann::ordered_json::array();
  for (const ListedPiece& listed : pieces)
    list.push_back({{"number", listed.number},
                    {"piece", listed.piece.name},
                    {"material", listed.piece.material},
                    {"fret", listed.piece.fret},
                    {"x", middle(listed).x},
                    {"y", middle(listed).y},
                    {"along", size(listed).x},
                    {"across", size(listed).y},
                    {"pocket_depth", listed.piece.depth},
                    {"thickness", listed.piece.thickness}});
  return list;
}

}  // namespace sagitta
