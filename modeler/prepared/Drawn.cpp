#include "prepared/Drawn.hpp"

#include <utility>

#include "measured/AsMeasured.hpp"

namespace sagitta {
namespace {

std::variant<Drawn, Faults> drawn(Board board, std::variant<Layout, Faults> laid, Board planned) {
  if (auto* faults = std::get_if<Faults>(&laid)) return std::move(*faults);
  Layout& layout = std::get<Layout>(laid);
  const Surface surface = surface_of(board, layout);
  return Drawn{std::move(board), std::move(layout), surface, std::move(planned)};
}

}  // namespace

std::variant<Drawn, Faults> draw(Board planned) {
  auto measured = as_measured(planned);
  if (auto* faults = std::get_if<Faults>(&measured)) return std::move(*faults);
  auto laid = lay_out(std::get<Board>(measured));
  return drawn(std::get<Board>(std::move(measured)), std::move(laid), std::move(planned));
}

std::variant<Drawn, Faults> draw(Board board, const OwnPlaces& own) {
  auto laid = lay_out(board, own);
  return drawn(board, std::move(laid), board);
}

Faults surface_faults(const Drawn& drawn) { return surface_faults(drawn.board, drawn.layout, drawn.surface); }

}  // namespace sagitta
