#include "prepared/Drawn.hpp"

#include <utility>

namespace sagitta {
namespace {

std::variant<Drawn, Faults> drawn(Board board, std::variant<Layout, Faults> laid) {
  if (auto* faults = std::get_if<Faults>(&laid)) return std::move(*faults);
  Layout& layout = std::get<Layout>(laid);
  const Surface surface = surface_of(board, layout);
  return Drawn{std::move(board), std::move(layout), surface};
}

}  // namespace

std::variant<Drawn, Faults> draw(Board board) {
  auto laid = lay_out(board);
  return drawn(std::move(board), std::move(laid));
}

std::variant<Drawn, Faults> draw(Board board, const OwnPlaces& own) {
  auto laid = lay_out(board, own);
  return drawn(std::move(board), std::move(laid));
}

Faults surface_faults(const Drawn& drawn) { return surface_faults(drawn.board, drawn.layout, drawn.surface); }

}  // namespace sagitta
