#pragma once

/// What shapes the wood at a stage: the blank or the outline, the strip that the radius is cut over, and every cut,
/// each with its outline from above and the surface that it leaves.

#include <optional>
#include <string>
#include <vector>

#include "plan/Plan.hpp"
#include "plane/RoundedPolygon.hpp"

namespace sagitta {

struct Feature {
  enum class Role {
    stock,    ///< wood is only where one of these lies
    strip,    ///< the playing surface is cut only here
    cut,      ///< lowers the top to `bound`
    removal,  ///< no wood is left
    pin,      ///< raises the bottom to `bound`: a pin's hole, or another cut from below
    piece,    ///< a piece of inlay: no wood but within it, from `bound` up to `ceiling`
    hole      ///< takes the wood between `bound`, a trough, and the vault over it
  };
  Role role = Role::cut;
  Source::Kind kind = Source::Kind::outline;
  FeatureId id;
  std::string name;  ///< for people
  std::string key;   ///< the board-file key that places it
  BoundingSurface bound;
  BoundingSurface ceiling;               ///< of a piece
  bool in_strip = false;                 ///< counts only inside the strip
  std::optional<RoundedPolygon> shape;   ///< convex with round corners: may be drawn back where it only touches
  Loop loop;                             ///< used when there is no `shape`; drawn: all its outlines one after the other
  bool drawn = false;                    ///< arcs that follow each other with one tangent stand for one curve
  std::optional<OffsetEllipse> ellipse;  ///< drawn: that curve, where it is one
  std::optional<Point> seam;             ///< a line that bounds nothing runs through here, square to the centre line
};

/// How far an outline was moved at most, `before` to `after`: no point of a rounded polygon moves further than the
/// nearest corner of its core, and its radius changes. mm.
double moved_by(const RoundedPolygon& before, const RoundedPolygon& after);

/// A feature that is called by what its id says.
Feature feature_called(const FeatureId& id);

/// What has been cut when a stage is reached.
struct WorkDone {
  bool thickness = false, pockets = false, radius = false, slots = false, outline = false;
  bool edges = false;  ///< rolled or bevelled
  double on_top = 0;   ///< what sanding will still take
};
WorkDone work_done_at(const Board& board, Stage stage);

/// Height of the stock's top where the radius is not cut.
double stock_top(const Board& board, const Layout& layout, const WorkDone& done);

std::vector<Feature> features_of(const Board& board, const Layout& layout, const Surface& surface, const Inlays& inlays,
                                 const WorkDone& done);

/// The plan of any such features on stock whose top is at `top`. `units`: what faults tell places in.
std::variant<Plan, Faults> plan_of(const Surface& surface, double top, Stage stage, const WorkDone& done,
                                   std::vector<Feature> features, Units units = Units::mm);

}  // namespace sagitta
