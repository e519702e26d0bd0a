#include "plan/Contact.hpp"

#include <algorithm>
#include <limits>

#include "plan/OutlineContact.hpp"
#include "plane/Tolerance.hpp"
#include "polygon/BoxIndex.hpp"

namespace sagitta {
namespace {

/// A straight obstacle: a shape that stays on the side away from `normal` reaches up to `offset`.
struct Line {
  CurveSegment segment;
  Point normal;  ///< unit, to the right of the segment
  double offset = 0;
};

Line line_of(const CurveSegment& segment) {
  const Point d = unit(segment.b - segment.a);
  const Point n{d.y, -d.x};
  return {segment, n, dot(n, segment.a)};
}

/// The core's points that reach furthest along n: one for a point contact, two for a side.
std::vector<Point> furthest(const RoundedPolygon& shape, Point n) {
  double most = -1e300;
  for (const Point p : shape.core) most = std::max(most, dot(n, p));
  std::vector<Point> found;
  for (const Point p : shape.core)
    if (dot(n, p) >= most - tolerance::same) found.push_back(p);
  return found;
}

bool beside(const CurveSegment& segment, Point p) {
  const Point d = segment.b - segment.a;
  const double s = dot(p - segment.a, d) / dot(d, d);
  const double slack = tolerance::snap / length(d);
  return s >= -slack && s <= 1 + slack;
}

/// Moves the side that faces n by `by` along n.
void move_side(RoundedPolygon& shape, Point n, double by) {
  const std::vector<Point> side = furthest(shape, n);
  for (Point& p : shape.core)
    if (std::find(side.begin(), side.end(), p) != side.end()) p = p + by * n;
}

/// A slot keeps its width: the end that faces n moves back along the middle line until it stands `by` further off.
void shorten(RoundedPolygon& slot, Point n, double by) {
  const bool second = dot(n, slot.core[1]) > dot(n, slot.core[0]);
  Point& end = slot.core[second ? 1 : 0];
  const Point inward = unit(slot.core[second ? 0 : 1] - end);
  const double gained = -dot(n, inward);
  if (gained > tolerance::same) end = end + (by / gained) * inward;
}

/// Whether the side that faces n is where a side hole's wall stands upright: flush with another wall it would only
/// touch.
bool along_tunnel(const Feature& feature, Point n) {
  const Tunnel& tunnel = feature.bound.tunnel;
  return feature.role == Feature::Role::hole && std::abs(n.x * tunnel.ny - n.y * tunnel.nx) < 0.5;
}

struct Settler {
  double snap;
  Faults& notes;

  /// `toward`: unit vector from the feature to what it touches, where a slot's end is to be shortened.
  void draw_back(Feature& feature, const Feature& other, double gap, Point toward = {0, 0}) const {
    if (feature.kind == Source::Kind::slot && feature.shape->core.size() == 2) {
      shorten(*feature.shape, toward, snap - gap);
    } else {
      feature.shape = shrunk(*feature.shape, snap - gap);
    }
    tell_of_skin(feature, other);
  }

  void tell_of_skin(const Feature& feature, const Feature& other) const {
    tell(feature, feature.name + " only touches " + other.name + "; drawn back so that a skin of wood stays",
         "leave a gap, or let the two overlap");
  }

  void tell(const Feature& feature, const std::string& message, const std::string& hint) const {
    Fault note{FaultCode::touches, feature.key, message, hint, feature.id};
    if (std::find(notes.begin(), notes.end(), note) == notes.end()) notes.push_back(std::move(note));
  }

  void tell_of_ledge(const Feature& feature, const Feature& other) const {
    tell(feature,
         feature.name + " touches the side of " + other.name +
             " from inside; made smaller so that the thinnest ledge stays",
         "leave a wider ledge, or let the two cross");
  }

  /// `inside_ok`: a shape that reaches the line from the side away from the normal is within the other feature there.
  void against_line(Feature& feature, const Feature& other, const Line& obstacle, bool inside_ok) const {
    for (const double way : {1.0, -1.0}) {
      const Point n = way * obstacle.normal;
      const double gap = way * obstacle.offset - support(*feature.shape, n);
      if (std::abs(gap) > snap || feature.shape->core.empty()) continue;
      const std::vector<Point> reach = furthest(*feature.shape, n);
      if (!std::any_of(reach.begin(), reach.end(), [&](Point p) { return beside(obstacle.segment, p); })) continue;
      if (reach.size() > 1 && !along_tunnel(feature, n)) {
        if (std::abs(gap) > tolerance::same) move_side(*feature.shape, n, gap);
      } else if (way > 0 && inside_ok) {
        const double ledge = feature.role == Feature::Role::pin ? snap : 0;
        if (std::abs(gap - ledge) > tolerance::same) feature.shape = shrunk(*feature.shape, ledge - gap);
      } else {
        draw_back(feature, other, gap, n);
      }
    }
  }

  /// Contact with an arc of an outline. `hole`: the wood lies outside the arc's circle.
  void against_arc(Feature& feature, const Feature& other, const CurveSegment& arc, bool hole) const {
    const RoundedPolygon centre{{arc.centre}, 0};
    const double apart = distance(RoundedPolygon{feature.shape->core, 0}, centre);
    double far = 0;
    Point furthest_point{};
    for (const Point p : feature.shape->core)
      if (distance(p, arc.centre) >= far) {
        far = distance(p, arc.centre);
        furthest_point = p;
      }
    const double inside_gap = arc.radius - far - feature.shape->radius;
    const double outside_gap = apart - arc.radius - feature.shape->radius;
    const double gap = hole ? outside_gap : inside_gap;
    if (std::abs(gap) > snap) return;
    const Point toward = hole && feature.shape->core.size() == 1 ? feature.shape->core.front() : furthest_point;
    const Point d = toward - arc.centre;
    double t = (std::atan2(d.y, d.x) - arc.start) / arc.sweep;
    const double full = 2 * std::numbers::pi / std::abs(arc.sweep);
    t -= full * std::floor(t / full);
    if (t <= 1 + tolerance::same) draw_back(feature, other, gap, unit((hole ? -1 : 1) * d));
  }

  void against_shape(Feature& feature, const Feature& other) const {
    if (feature.shape->core.empty() || other.shape->core.empty()) return;
    if (equal_discs(feature, other) || left_a_ledge(feature, other) || settled_in_an_end(feature, other)) return;
    const double gap = distance(*feature.shape, *other.shape);
    if (std::abs(gap) > snap) return;
    if (feature.role != Feature::Role::hole && settle_sides(feature, *other.shape)) return;
    draw_back(feature, other, gap);
  }

  /// A disc about the same centre as another and as large becomes that one.
  bool made_equal(RoundedPolygon& disc, const RoundedPolygon& other) const {
    if (disc.core.size() != 1 || distance(disc.core[0], other.core[0]) > snap) return false;
    if (std::abs(disc.radius - other.radius) > snap) return false;
    disc = other;
    return true;
  }

  /// Two discs about one centre, or one within the other: made equal, or drawn back so that a ledge stays.
  bool equal_discs(Feature& feature, const Feature& other) const {
    RoundedPolygon& a = *feature.shape;
    const RoundedPolygon& b = *other.shape;
    if (a.core.size() != 1 || b.core.size() != 1) return false;
    return made_equal(a, b) || left_within(a, b.core[0], b.radius);
  }

  /// A disc that touches a circle from inside, or is touched by it: drawn back, or grown, so that a ledge stays.
  bool left_within(RoundedPolygon& disc, Point centre, double radius) const {
    const double within = std::abs(disc.radius - radius) - distance(disc.core[0], centre);
    if (std::abs(within) > snap) return false;
    if (within < snap - tolerance::same) disc.radius += (disc.radius > radius ? 1 : -1) * (snap - within);
    return true;
  }

  /// A disc that touches another shape's round end or corner from inside, or holds it and is touched so.
  bool settled_in_an_end(Feature& feature, const Feature& other) const {
    RoundedPolygon& disc = *feature.shape;
    const RoundedPolygon& shape = *other.shape;
    const std::size_t n = shape.core.size();
    if (disc.core.size() != 1 || n < 2 || shape.radius == 0) return false;
    for (std::size_t i = 0; i < n; ++i) {
      const Point end = shape.core[i], before = shape.core[(i + n - 1) % n], after = shape.core[(i + 1) % n];
      const Point toward = (disc.radius > shape.radius ? -1.0 : 1.0) * (disc.core[0] - end);
      if (dot(toward, unit(end - before)) < -snap || dot(toward, unit(end - after)) < -snap) continue;
      const double whole = disc.radius;
      if (!left_within(disc, end, shape.radius)) continue;
      if (disc.radius < whole) tell_of_ledge(feature, other);
      return true;
    }
    return false;
  }

  /// A disc, pin or pocket, that touches a pocket's straight side from inside is drawn back so that a ledge stays.
  bool left_a_ledge(Feature& disc, const Feature& other) const {
    const RoundedPolygon& pocket = *other.shape;
    const std::size_t n = pocket.core.size();
    if (disc.shape->core.size() != 1 || disc.role == Feature::Role::hole || n < 3) return false;
    bool drawn = false;
    for (std::size_t i = 0; i < n; ++i) {
      const Line side = line_of(line(pocket.core[i], pocket.core[(i + 1) % n]));
      const double gap = side.offset + pocket.radius - support(*disc.shape, side.normal);
      if (std::abs(gap) > snap || !beside(side.segment, disc.shape->core.front())) continue;
      drawn = true;
      if (gap >= snap - tolerance::same) continue;
      disc.shape = shrunk(*disc.shape, snap - gap);
      tell_of_ledge(disc, other);
    }
    return drawn;
  }

  /// Polygon sides that face each other within the snap are moved together.
  bool settle_sides(Feature& feature, const RoundedPolygon& other) const {
    const std::size_t n = other.core.size();
    if (n < 2) return false;
    for (std::size_t i = 0; i < n; ++i) {
      const Point d = unit(other.core[(i + 1) % n] - other.core[i]);
      const Point out{d.y, -d.x};
      const Point toward = -1 * out;
      if (furthest(*feature.shape, toward).size() < 2) continue;
      const double gap = -support(other, out) - support(*feature.shape, toward);
      if (std::abs(gap) > snap) continue;
      if (std::abs(gap) > tolerance::same) move_side(*feature.shape, toward, gap);
      return true;
    }
    return false;
  }
};

/// Rank of precedence: the greater number gives way.
int rank(const Feature& f) {
  switch (f.kind) {
    case Source::Kind::pocket:
    case Source::Kind::cut:
      return 2;
    case Source::Kind::pin:
      return 3;
    case Source::Kind::side_dot:
      return 4;
    case Source::Kind::slot:
    case Source::Kind::nut:
      return 1;
    default:
      return 0;
  }
}

/// A disc whose centre lies within another shape, which may be as large or larger: it can touch a side from inside.
bool is_disc_within(const Feature& feature, const Feature& other) {
  return other.shape && feature.shape && feature.shape->core.size() == 1 && other.shape->core.size() > 2 &&
         distance({feature.shape->core, 0}, *other.shape) < 0;
}

/// Whether the first of two features that touch is the one to be changed: the one of the greater rank, else a disc
/// within the other, else the later.
bool gives_way(const std::vector<Feature>& features, std::size_t i, std::size_t j) {
  const Feature &feature = features[i], &other = features[j];
  if (rank(feature) != rank(other)) return rank(feature) > rank(other);
  const bool within = is_disc_within(feature, other), holds = other.shape && is_disc_within(other, feature);
  return within != holds ? within : i > j;
}

void settle(Feature& feature, const Feature& other, const Settler& settler) {
  if (!feature.shape) {
    if (draw_back_outline(feature, other, settler.snap)) settler.tell_of_skin(feature, other);
    return;
  }
  if (other.shape) return settler.against_shape(feature, other);
  for (const CurveSegment& segment : other.loop)
    if (segment.is_arc() && settler.made_equal(*feature.shape, {{segment.centre}, segment.radius})) return;
  const bool own_stock = other.role == Feature::Role::stock || other.role == Feature::Role::strip;
  for (const CurveSegment& segment : other.loop) {
    if (segment.is_arc()) {
      settler.against_arc(feature, other, segment, segment.sweep < 0);
    } else {
      settler.against_line(feature, other, line_of(segment), !own_stock);
    }
  }
}

/// What a feature may touch. An arc with the wood outside stands for its whole circle (against_arc).
Box box_of(const Feature& feature) {
  Box box;
  for (const CurveSegment& segment : feature.shape ? outline(*feature.shape) : feature.loop) {
    const Box part =
        segment.is_arc() && segment.sweep < 0 ? bounds(circle(segment.centre, segment.radius)) : bounds(segment);
    box.add(part.low);
    box.add(part.high);
  }
  return box;
}

std::vector<Box> boxes_of(const std::vector<Feature>& features) {
  std::vector<Box> boxes;
  for (const Feature& feature : features)
    boxes.push_back(feature.shape && feature.shape->empty() ? Box{} : box_of(feature));
  return boxes;
}

/// Each contact moves a side by at most two snaps; a shape with a thousand of them moves no further than this. mm.
constexpr double drift = 0.2;

}  // namespace

double snap_for(const Box& extent) {
  const double largest =
      std::max({std::abs(extent.low.x), std::abs(extent.low.y), std::abs(extent.high.x), std::abs(extent.high.y)});
  const float f = static_cast<float>(largest);
  return std::max(tolerance::snap, 2.0 * (std::nextafter(f, std::numeric_limits<float>::infinity()) - f));
}

Faults settle_contacts(std::vector<Feature>& features, double snap) {
  Faults notes;
  const Settler settler{snap, notes};
  constexpr int rounds = 3;  // drawing back may bring a shape near another neighbour; shrinking soon ends that
  for (int round = 0; round < rounds; ++round) {
    const BoxIndex index(boxes_of(features));
    for (std::size_t i = 0; i < features.size(); ++i) {
      if (features[i].shape ? features[i].shape->empty() : !gives_by_outline(features[i])) continue;
      for (const int k : index.near(box_of(features[i]), drift)) {
        const auto j = static_cast<std::size_t>(k);
        if (i == j || features[j].seam || (features[j].shape && features[j].shape->empty())) continue;
        if (gives_way(features, i, j)) settle(features[i], features[j], settler);
      }
    }
  }
  return notes;
}

}  // namespace sagitta
