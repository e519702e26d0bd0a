#include "plan/Selection.hpp"

namespace sagitta {

bool Selection::has(const FeatureId& id) const {
  const bool piece = id.kind == FeatureId::Kind::piece;
  if (piece && !pieces.empty() && !pieces.contains(id)) return false;
  const bool at_fret = piece || id.kind == FeatureId::Kind::slot || id.kind == FeatureId::Kind::inlay ||
                       id.kind == FeatureId::Kind::side_dot;
  return !at_fret || frets.empty() || frets.contains(id.fret);
}

}  // namespace sagitta
