#pragma once

/// What cuts may touch: a slot across the board, and the board's outline.

#include "plan/Feature.hpp"

namespace sagitta::test {

inline Feature slot(double from, double to) {
  Feature f;
  f.kind = Source::Kind::slot;
  f.name = "slot";
  f.bound = {BoundingSurface::Kind::offset_surface, 2, false};
  f.loop = rectangle({from, -30}, {to, 30});
  return f;
}

inline Feature outline_of(const Loop& loop) {
  Feature f;
  f.role = Feature::Role::stock;
  f.name = "outline";
  f.loop = loop;
  return f;
}

}  // namespace sagitta::test
