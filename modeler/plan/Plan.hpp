#pragma once

/// The plan of a stage: a planar subdivision whose cells each carry the surface that bounds the wood from above and
/// from below. Vertices, edges and cells are plain values; lengths in mm, board's frame.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "board/FeatureId.hpp"
#include "inlay/Inlays.hpp"
#include "layout/Layout.hpp"
#include "plan/BoundingSurface.hpp"
#include "plan/Stage.hpp"
#include "plan/Subdivision.hpp"

namespace sagitta {

/// Whether the bound is one of the two that meet along the crossing.
bool meets_along(const IntersectionCurve& crossing, const BoundingSurface& bound);

/// The wood over a cell, by the surfaces that bound it (kind none: not there): from `bottom` to `top`, or, where a side
/// hole passes, from `bottom` to `trough` and from `vault` to `top`, or one of the two.
struct Cell {
  BoundingSurface top, bottom, trough, vault;
  int feature = -1;         ///< index into Plan::features of the cut whose floor the top is; -1: no cut's
  int hole_feature = -1;    ///< the same for the side hole
  int bottom_feature = -1;  ///< the same for the cut from below that the bottom is the ceiling of

  bool below() const { return bottom.kind != BoundingSurface::Kind::none; }  ///< wood from the bottom up
  bool above() const { return vault.kind != BoundingSurface::Kind::none; }   ///< wood from a hole's vault up
  bool wood() const { return below() || above(); }
  const BoundingSurface& top_of_lower() const { return trough.kind != BoundingSurface::Kind::none ? trough : top; }
};

/// Something that shapes the wood, for `Source::feature`.
struct PlanFeature {
  Source::Kind kind = Source::Kind::outline;
  FeatureId id;
  std::string name;    ///< for people: "fret 7 slot", "inlay 1 at fret 3"
  bool drawn = false;  ///< its arcs stand for curves
  double moved = 0;    ///< how far its outline was moved at most, so that nothing lies nearer than the snap. mm
  double raised = 0;   ///< how far a side hole was moved up, so that no floor meets its side. mm
  double area = 0;     ///< within its outlines, as they were laid over each other. mm^2
  double length = 0;   ///< of its outlines, mm
  double covered = 0;  ///< area of the faces of the arrangement that lie within it, mm^2; a seam has none
  std::optional<OffsetEllipse> ellipse{};  ///< what its arcs stand for, where that is one
};

struct Plan {
  Stage stage = Stage::board;
  Surface surface;
  Subdivision map;          ///< faces of the map are the cells
  std::vector<Cell> cells;  ///< one a face; cell 0 is the outside
  std::vector<PlanFeature> features;
  Faults notes;        ///< cuts that touch and were drawn back, in words
  double snap = 0;     ///< what came nearer together than this was made to coincide, or kept apart. mm
  double lowered = 0;  ///< how far a floor was lowered at most to be one with another. mm
};

/// The plan of one stage of a board whose layout and surface are free of faults.
/// Faults: features that cannot be built, with the reason.
std::variant<Plan, Faults> make_plan(const Board& board, const Layout& layout, const Surface& surface,
                                     const Inlays& inlays, Stage stage);
/// The same where the inlays have not been fitted yet: drawings are read and fitted first.
std::variant<Plan, Faults> make_plan(const Board& board, const Layout& layout, const Surface& surface, Stage stage);

}  // namespace sagitta
