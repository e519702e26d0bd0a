#include "plan/Plan.hpp"

#include <algorithm>

#include "plan/Arrangement.hpp"
#include "plan/CellOrderError.hpp"
#include "plan/Cells.hpp"
#include "plan/Contact.hpp"
#include "plan/Feature.hpp"
#include "plan/Floors.hpp"
#include "plan/IntersectionCurves.hpp"
#include "plan/LooseWood.hpp"
#include "plan/NonManifoldVertex.hpp"
#include "plan/OutlineContact.hpp"
#include "plan/Rounding.hpp"
#include "plan/ScallopBranches.hpp"
#include "plan/SideHoles.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

class Planner {
 public:
  /// `top`: height of the stock's top. Features as they are at the stage, with what has been done by then.
  Planner(const Surface& surface, double top, Stage stage, const WorkDone& done, std::vector<Feature> features,
          Units units)
      : surface_(surface), top_(top), done_(done), features_(std::move(features)), units_(units) {
    plan_.stage = stage;
    plan_.surface = surface;
    of_piece_ = std::any_of(features_.begin(), features_.end(),
                            [](const Feature& f) { return f.role == Feature::Role::piece; });
  }

  std::variant<Plan, Faults> run() {
    Faults faults = unbuildable();
    if (!faults.empty()) return faults;
    Box extent;
    for (const Feature& f : features_)
      if (f.role == Feature::Role::stock)
        for (const CurveSegment& segment : f.loop) extent.add(segment.a);
    const double snap = snap_for(extent);
    const std::vector<Feature> drawn = features_;
    plan_.notes = settle_contacts(features_, snap);
    note_heights();
    constexpr int rounds = 8;  // three outlines through one point may leave wood corner to corner
    for (int round = 0; round < rounds; ++round) {
      settle_side_holes(features_, surface_, snap, plan_.notes);
      grazed_.clear();
      divide(snap);
      const bool moved = raise_grazed(), parted = part_pinched(snap);
      if (!moved && !parted) break;
    }
    if (faults = still_grazed(); !faults.empty()) return faults;
    if (!of_piece_)  // a piece of inlay may fall into several bodies: glue holds them
      if (faults = loose_wood(plan_, features_, units_); !faults.empty()) return faults;
    for (std::size_t i = 0; i < features_.size(); ++i)
      plan_.features.push_back(told(features_[i], i < drawn.size() ? drawn[i] : features_[i], covered_[i]));
    plan_.snap = snap;
    plan_.lowered = floors_.most_lowered();
    return std::move(plan_);
  }

 private:
  void divide(double snap) {
    Arrangement arrangement = arrange(strands(), snap);
    covered_ = arrangement.covered(static_cast<int>(features_.size()));
    plan_.map = std::move(arrangement.map);
    std::vector<Candidates> candidates = candidates_of(arrangement.covers);
    grazed_ = divide_at_intersections(plan_.map, candidates, surface_);
    plan_.cells.assign(candidates.size(), {});
    try {
      plan_.cells = cells_of(plan_.map, surface_, candidates);
    } catch (const CellOrderError&) {  // beside a grazed round wall: another round moves it, or it is refused
      if (grazed_.empty()) throw;
    }
  }

  /// `drawn`: as it came; a joint is one of the plan's own.
  static PlanFeature told(const Feature& f, const Feature& drawn, double covered) {
    PlanFeature told{f.kind, f.id, f.name, f.drawn};
    if (!f.seam) {
      const Loop outlines = f.shape ? outline(*f.shape) : f.loop;
      told.area = std::abs(area(outlines));
      told.length = perimeter(outlines);
      told.covered = covered;
    }
    told.ellipse = f.ellipse;
    if (!f.shape && !drawn.shape) told.moved = outline_moved_by(drawn.loop, f.loop);
    if (!f.shape || !drawn.shape) return told;
    told.moved = moved_by(*drawn.shape, *f.shape);
    if (f.role == Feature::Role::hole) told.raised = f.bound.value - drawn.bound.value;
    return told;
  }

  bool is_grazed(const Feature& f) const { return f.bound.round() && grazed_.count(f.bound.tunnel) > 0; }

  /// Moves side holes that a floor meets within tolerance of their silhouette. False when there are none.
  bool raise_grazed() {
    bool raised = false;
    for (Feature& f : features_) {
      if (!is_grazed(f) || f.role != Feature::Role::hole) continue;
      raised = true;
      f.bound.value += tolerance::graze;
      note_once({FaultCode::grazes, f.key,
                 f.name + " meets a floor just where its wall stands upright; moved up by less than a drill can be set",
                 "use a slightly larger or smaller side dot", f.id});
    }
    return raised;
  }

  Faults still_grazed() const {
    Faults faults;
    for (const Feature& f : features_)
      if (is_grazed(f) && f.role != Feature::Role::hole)
        faults.push_back({FaultCode::grazes, f.key,
                          f.name + ": a floor ends just where the roll meets the side, and leaves wood thinner than a "
                                   "hair",
                          "use a larger or smaller roll, or another depth of the cut that it runs into", f.id});
      else if (is_grazed(f))
        faults.push_back(
            {FaultCode::grazes, f.key,
             f.name + ": a floor runs along the widest place of the hole and leaves wood thinner than a hair",
             "use a larger or smaller side dot, or another depth of the cut that it runs into", f.id});
    return faults;
  }

  void note_once(Fault note) {
    if (std::find(plan_.notes.begin(), plan_.notes.end(), note) == plan_.notes.end())
      plan_.notes.push_back(std::move(note));
  }

  /// Parts wood that meets wood only along a line: the lesser feature there is drawn back, a drawn one joined to what
  /// it touches. False when there is nothing to do.
  bool part_pinched(double snap) {
    std::set<int> yielding;
    std::vector<Feature> joints;
    for (const int vertex : non_manifold_vertices(plan_)) {
      const int feature = lesser_feature_at(plan_, vertex);
      if (feature < 0) continue;
      if (features_[feature].shape)
        yielding.insert(feature);
      else
        joints.push_back(joint_at(features_[feature], plan_.map.vertices[vertex]));
    }
    for (const int feature : yielding) {
      Feature& f = features_[feature];
      f.shape = shrunk(*f.shape, snap);
      note_once({FaultCode::touches, f.key,
                 f.name + " leaves wood that only touches; drawn back so that a skin of wood stays",
                 "move it a little, or change its size", f.id});
    }
    for (Feature& joint : joints) {
      note_once({FaultCode::touches, joint.key,
                 joint.name + " touches another cut in one point; the thin wood beside that point is cut away",
                 "leave a gap in the drawing, or let the two overlap", joint.id});
      features_.push_back(std::move(joint));
    }
    return !yielding.empty() || !joints.empty();
  }

  /// A cut that joins a drawn one to what it touches at p: as deep, and wide enough that the wood beside it does not
  /// run out to nothing.
  static Feature joint_at(const Feature& drawn, Point p) {
    Feature joint = drawn;
    if (joint.role == Feature::Role::piece) joint.role = Feature::Role::cut;
    joint.shape = RoundedPolygon{{p}, longest_cusp};
    joint.loop.clear();
    joint.drawn = false;
    joint.ellipse.reset();
    return joint;
  }

  Faults unbuildable() const {
    Faults faults;
    for (const Feature& f : features_)
      if (f.shape && f.shape->empty())
        faults.push_back({FaultCode::cutter_too_large, f.key,
                          f.name + ": the cutters named are too large to cut this pocket",
                          "name a smaller pocket-detail or piece cutter, or make the inlay larger", f.id});
    return faults;
  }

  std::vector<InputCurve> strands() const {
    std::vector<InputCurve> strands;
    for (int i = 0; i < static_cast<int>(features_.size()); ++i) {
      const Feature& f = features_[i];
      int piece = 0;
      for (const CurveSegment& p : f.shape ? outline(*f.shape) : f.loop)
        strands.push_back({p, {f.kind, i, piece++}, f.seam ? -1 : i});
    }
    return strands;
  }

  /// Height of the playing surface moved down, on the centre line before the fall-away; on a flat one everywhere.
  double crown_of_moved(double by) const { return surface_.thickness - by; }

  void note_heights() {
    floors_.add(0);
    floors_.add(top_);
    floors_.add(crown_of_moved(-done_.on_top));
    for (const Feature& f : features_) {
      for (const BoundingSurface& bound : {f.bound, f.ceiling})
        if (bound.kind == BoundingSurface::Kind::level) floors_.add(bound.value);
      if (f.bound.kind == BoundingSurface::Kind::offset_surface) floors_.add(crown_of_moved(f.bound.value));
      if (f.kind == Source::Kind::scallop) note_saddles(f.bound);
    }
  }

  void note_saddles(BoundingSurface scallop) {
    for (const bool fallen : {false, true}) {
      scallop.fallen = fallen;
      if (!fallen || surface_.fall_start)
        floors_.keep_off(saddle_of({surface_, scallop, {BoundingSurface::Kind::level, 0}}));
    }
  }

  /// Keeps the lower of two bounds of one kind: levels by height, moved surfaces by how far they are moved. A form of
  /// the playing surface is kept beside them.
  static void lower(Candidates& here, BoundingSurface other, int feature) {
    if (other.form != 0 || other.kind == BoundingSurface::Kind::roll) return here.forms.push_back({other, feature});
    const bool moved = other.kind == BoundingSurface::Kind::offset_surface;
    std::optional<BoundingSurface>& bound = moved ? here.moved : here.level;
    if (bound && (moved ? other.value <= bound->value : other.value >= bound->value)) return;
    bound = other;
    (moved ? here.moved_feature : here.level_feature) = feature;
  }

  /// Keeps the higher of two bottoms.
  static void raise(Candidates& here, double bottom, int feature) {
    if (bottom <= here.bottom) return;
    here.bottom = bottom;
    here.bottom_feature = feature;
  }

  /// Which side of the fall-away's line a face lies on, by where its border is furthest from that line: beside a
  /// neighbour the line itself may be bent by up to the snap.
  bool beyond_fall(int face) const {
    if (!surface_.fall_start) return false;
    double furthest = 0;
    for (const HalfEdge start : plan_.map.faces[face].loops) {
      HalfEdge h = start;
      do {
        for (const Point p : {plan_.map.at(plan_.map.edges[h >> 1], 0.5), plan_.map.vertices[plan_.map.origin(h)]})
          if (const double x = p.x - *surface_.fall_start; std::abs(x) > std::abs(furthest)) furthest = x;
        h = plan_.map.next[h];
      } while (h != start);
    }
    return furthest > 0;
  }

  std::vector<Candidates> candidates_of(const std::vector<std::vector<int>>& covers) {
    std::vector<Candidates> all(covers.size());
    for (int face = 1; face < static_cast<int>(covers.size()); ++face) all[face] = candidates_at(face, covers[face]);
    return all;
  }

  Candidates candidates_at(int face, const std::vector<int>& cover) {
    Candidates here;
    bool strip = done_.outline, removed = false, held = !of_piece_;
    for (const int i : cover) {
      here.wood = here.wood || features_[i].role == Feature::Role::stock;
      strip = strip || features_[i].role == Feature::Role::strip;
      removed = removed || features_[i].role == Feature::Role::removal;
      held = held || features_[i].role == Feature::Role::piece;
    }
    here.wood = here.wood && held && !removed;
    if (!here.wood) return here;
    const bool fallen = beyond_fall(face);
    const bool radiused = done_.radius && strip;
    lower(here,
          canonical(radiused ? BoundingSurface{BoundingSurface::Kind::offset_surface, -done_.on_top, false}
                             : BoundingSurface{BoundingSurface::Kind::level, top_, false},
                    fallen),
          -1);
    for (const int i : cover) {
      const Feature& f = features_[i];
      if (f.role == Feature::Role::hole) {
        here.trough = f.bound;
        here.hole_feature = i;
      }
      const bool raises = f.role == Feature::Role::pin || f.role == Feature::Role::piece;
      if (raises) raise(here, floors_.clear(f.bound.value), f.role == Feature::Role::pin ? i : -1);
      if (f.role == Feature::Role::piece) lower(here, canonical(f.ceiling, fallen), i);
      if (f.role != Feature::Role::cut || (f.in_strip && !strip)) continue;
      lower(here, canonical(f.bound, fallen), i);
    }
    if (radiused && !here.forms.empty()) drop_playing_surface(here);
    return here;
  }

  /// Where the playing surface has another form, that lies under it or joins it.
  static void drop_playing_surface(Candidates& here) {
    if (here.moved && here.moved_feature < 0) here.moved.reset();
    if (here.level && here.level_feature < 0) here.level.reset();
  }

  /// The bound with its height, or its crown's, shared by all within `one_floor`; on a flat surface without fall a
  /// plain level. So a floor that would meet a crown a hair beside the centre line touches it there.
  BoundingSurface canonical(BoundingSurface bound, bool fallen) {
    if (bound.kind == BoundingSurface::Kind::level)
      return {BoundingSurface::Kind::level, floors_.clear(bound.value), false};
    const double own = crown_of_moved(bound.value), crown = floors_.canonical(own);
    if (bound.plane(surface_) && !fallen) return {BoundingSurface::Kind::level, floors_.clear(own), false};
    return {bound.kind, bound.value + (own - crown), fallen, bound.tunnel, bound.form};
  }

  const Surface& surface_;
  double top_;
  WorkDone done_;
  std::vector<Feature> features_;
  Units units_;  ///< of places in faults
  bool of_piece_ = false;
  Floors floors_;
  std::set<Tunnel> grazed_;
  std::vector<double> covered_;  ///< for each feature, mm^2
  Plan plan_;
};

}  // namespace

bool meets_along(const IntersectionCurve& crossing, const BoundingSurface& bound) {
  if (crossing.meeting) return bound == crossing.meeting->upper || bound == crossing.meeting->other;
  if (bound.kind == BoundingSurface::Kind::offset_surface)
    return bound.form == 0 && bound.value == crossing.offset && bound.fallen == crossing.fallen;
  if (!crossing.tunnel) return bound.kind == BoundingSurface::Kind::level && bound.value == crossing.level;
  const BoundingSurface::Kind wall = crossing.side > 0 ? BoundingSurface::Kind::vault : BoundingSurface::Kind::trough;
  return bound.kind == wall && bound.value == crossing.axis && bound.tunnel == *crossing.tunnel;
}

std::variant<Plan, Faults> plan_of(const Surface& surface, double top, Stage stage, const WorkDone& done,
                                   std::vector<Feature> features, Units units) {
  return Planner(surface, top, stage, done, std::move(features), units).run();
}

std::variant<Plan, Faults> make_plan(const Board& board, const Layout& layout, const Surface& surface,
                                     const Inlays& inlays, Stage stage) {
  const WorkDone done = work_done_at(board, stage);
  return plan_of(surface, stock_top(board, layout, done), stage, done,
                 features_of(board, layout, surface, inlays, done), board.units);
}

std::variant<Plan, Faults> make_plan(const Board& board, const Layout& layout, const Surface& surface, Stage stage) {
  const bool drawn = work_done_at(board, stage).pockets;
  auto inlays = drawn ? fit_inlays(board, layout) : std::variant<Inlays, Faults>(Inlays{});
  if (auto* faults = std::get_if<Faults>(&inlays)) return std::move(*faults);
  return make_plan(board, layout, surface, std::get<Inlays>(inlays), stage);
}

}  // namespace sagitta
