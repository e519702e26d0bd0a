#pragma once

/// Fitted drawings, kept so that a drawing that is only moved is not fitted again.

#include <memory>
#include <string>
#include <vector>

#include "inlay/FittedFigure.hpp"

namespace sagitta {

/// Drawings as they were fitted, so that one that only moves is not fitted again. It knows a drawing by its file's
/// name: forget() when a file has changed.
class FigureStore {
 public:
  /// Null when there is none.
  std::shared_ptr<const FittedFigure> find(const std::string& file, const FigureCut& cut) const;
  std::shared_ptr<const FittedFigure> keep(const std::string& file, const FigureCut& cut, FittedFigure figure);
  void forget() { kept_.clear(); }

 private:
  struct Kept {
    std::string file;
    FigureCut cut;
    std::shared_ptr<const FittedFigure> figure;
  };
  std::vector<Kept> kept_;  ///< oldest first
};

}  // namespace sagitta
