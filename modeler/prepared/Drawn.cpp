#include "prepared/Drawn.hpp"

#include <utility>

#include "measured/AsMeasured.hpp"
#include "prepared/HeelDrawing.hpp"

namespace sagitta {
namespace {

std::variant<Drawn, Faults> drawn(Board board, std::variant<Layout, Faults> laid, Board planned) {
  if (auto* faults = std::get_if<Faults>(&laid)) return std::move(*faults);
  Layout& layout = std::get<Layout>(laid);
  const Surface surface = surface_of(board, layout);
  return Drawn{std::move(board), std::move(layout), surface, std::move(planned)};
}

std::variant<Layout, Faults> laid_out(const Board& board, Outside outside) {
  if (board.board.heel != Heel::drawn) return lay_out(board);
  auto end = read_heel_drawing(board, outside);
  if (auto* faults = std::get_if<Faults>(&end)) return std::move(*faults);
  return lay_out(board, std::get<DrawnEnd>(end));
}

}  // namespace

std::variant<Drawn, Faults> draw(Board planned) { return draw(std::move(planned), Outside::refused); }

std::variant<Drawn, Faults> draw(Board planned, Outside outside) {
  auto measured = as_measured(planned);
  if (auto* faults = std::get_if<Faults>(&measured)) return std::move(*faults);
  auto laid = laid_out(std::get<Board>(measured), outside);
  return drawn(std::get<Board>(std::move(measured)), std::move(laid), std::move(planned));
}

std::variant<Drawn, Faults> draw(Board board, const OwnPlaces& own) {
  auto laid = lay_out(board, own);
  return drawn(board, std::move(laid), board);
}

Faults surface_faults(const Drawn& drawn) { return surface_faults(drawn.board, drawn.layout, drawn.surface); }

}  // namespace sagitta
