#include "cad/PieceBodies.hpp"

#include <algorithm>

#include "board/Materials.hpp"
#include "inlay/ArcSplineFit.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

constexpr std::pair<Assembly, std::string_view> names[] = {
    {Assembly::pieces, "pieces"}, {Assembly::inlaid, "inlaid"}, {Assembly::job, "job"}};

/// Flat pieces lie this far apart, in rows about this long. mm.
constexpr double gap = 5, row_length = 300;

/// Gives each piece its place in the rows.
class Rows {
 public:
  InlayPiece laid(const InlayPiece& piece) {
    const Box box = bounds(piece.piece);
    const Point size = box.high - box.low;
    if (x_ > 0 && x_ + size.x > row_length) {
      x_ = 0;
      y_ += high_ + gap;
      high_ = 0;
    }
    const Point by = Point{x_, y_} - box.low;
    x_ += size.x + gap;
    high_ = std::max(high_, size.y);
    return moved(piece, by);
  }

 private:
  double x_ = 0, y_ = 0, high_ = 0;
};

PieceState state_in(Assembly assembly) {
  return assembly == Assembly::pieces   ? PieceState::sheet
         : assembly == Assembly::inlaid ? PieceState::inlaid
                                        : PieceState::job;
}

}  // namespace

std::string_view name(Assembly assembly) {
  return std::find_if(std::begin(names), std::end(names), [&](const auto& entry) { return entry.first == assembly; })
      ->second;
}

std::optional<Assembly> assembly_named(std::string_view text) {
  for (const auto& [assembly, word] : names)
    if (word == text) return assembly;
  return std::nullopt;
}

std::vector<Assembly> assemblies_of(const PreparedBoard& ready) {
  if (ready.pieces().empty()) return {};
  return {Assembly::pieces, Assembly::inlaid, Assembly::job};
}

std::optional<Stage> wood_of(Assembly assembly, const Board& board) {
  if (assembly == Assembly::pieces) return std::nullopt;
  return assembly == Assembly::inlaid ? Stage::pocketed : stages_of(board).back();
}

std::vector<PieceBody> piece_bodies(const PreparedBoard& ready, Assembly assembly) {
  std::vector<PieceBody> bodies;
  Rows rows;
  for (const InlayPiece& piece : ready.pieces()) {
    const InlayPiece here = assembly == Assembly::pieces ? rows.laid(piece) : piece;
    auto plan = ready.piece_plan(here, state_in(assembly));
    if (const auto* wrong = std::get_if<Faults>(&plan))
      throw BuildError(std::string(name(assembly)), piece.name, wrong->front().message);
    if (!has_wood(std::get<Plan>(plan))) continue;
    bodies.push_back({piece.name, piece.material, material(ready.board(), piece.material).colour,
                      lift(std::get<Plan>(std::move(plan)))});
  }
  return bodies;
}

}  // namespace sagitta
