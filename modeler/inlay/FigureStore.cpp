#include "inlay/FigureStore.hpp"

#include <algorithm>

namespace sagitta {
namespace {

constexpr std::size_t most = 64;  // figures kept

}  // namespace

std::shared_ptr<const FittedFigure> FigureStore::find(const std::string& file, const FigureCut& cut) const {
  const auto found =
      std::find_if(kept_.begin(), kept_.end(), [&](const Kept& kept) { return kept.file == file && kept.cut == cut; });
  return found == kept_.end() ? nullptr : found->figure;
}

std::shared_ptr<const FittedFigure> FigureStore::keep(const std::string& file, const FigureCut& cut,
                                                      FittedFigure figure) {
  if (kept_.size() == most) kept_.erase(kept_.begin());
  return kept_.emplace_back(Kept{file, cut, std::make_shared<const FittedFigure>(std::move(figure))}).figure;
}

}  // namespace sagitta
