#include "plan/OutlineContact.hpp"

#include <algorithm>

#include "plan/Rounding.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

bool follow(const CurveSegment& one, const CurveSegment& next) { return distance(one.b, next.a) <= tolerance::same; }

bool is_slot_through(const Feature& feature) {
  return feature.kind == Source::Kind::slot && !feature.shape && feature.loop.size() == 4;
}

/// Counter-clockwise arcs, head to tail, with one tangent where they join.
bool is_oval(const Loop& loop) {
  for (std::size_t i = 0; i < loop.size(); ++i) {
    const CurveSegment &arc = loop[i], &next = loop[(i + 1) % loop.size()];
    if (!arc.is_arc() || arc.sweep <= 0 || !follow(arc, next)) return false;
    if (std::abs(cross(unit(arc.slope(1)), unit(next.slope(0)))) > tolerance::vertex) return false;
  }
  return loop.size() > 1;
}

/// Whether the arc passes through the direction n from its centre.
bool faces(const CurveSegment& arc, Point n) {
  const double full = 2 * std::numbers::pi / std::abs(arc.sweep);
  double t = (std::atan2(n.y, n.x) - arc.start) / arc.sweep;
  t -= full * std::floor(t / full);
  return t <= 1 + tolerance::same || t >= full - tolerance::same;
}

bool beside(const CurveSegment& segment, Point p) {
  const Point d = segment.b - segment.a;
  const double s = dot(p - segment.a, d) / dot(d, d);
  return s >= 0 && s <= 1;
}

/// To the right of a straight segment: out of what lies to its left.
Point right_of(const CurveSegment& segment) { return -1 * left_of(unit(segment.b - segment.a)); }

/// Where a segment of the outline comes near the other.
struct Touch {
  std::size_t segment = 0;
  Point at;        ///< on the outline
  Point normal;    ///< out of it; unit
  double gap = 0;  ///< along the normal
};

/// Looks for touches of one outline, counter-clockwise, with another: places that lie on one normal of both, or a
/// corner of the other on a normal of ours.
class Touches {
 public:
  /// `within`: the outline lies in what the other bounds; else outside.
  Touches(const Loop& own, bool within, double snap) : own_(own), within_(within), snap_(snap) {
    for (const CurveSegment& segment : own) reach_.push_back(bounds(segment).grown(snap));
  }

  std::vector<Touch> with(const Loop& other) {
    const Box reach = bounds(own_).grown(snap_);
    for (std::size_t k = 0; k < other.size(); ++k) {
      const Box box = bounds(other[k]);
      if (!reach.overlaps(box)) continue;
      for (own_index_ = 0; own_index_ < own_.size(); ++own_index_) {
        if (!reach_[own_index_].overlaps(box)) continue;
        other[k].is_arc() ? near_arc(other[k]) : near_line(other[k]);
        const CurveSegment& next = other[(k + 1) % other.size()];
        if (follow(other[k], next)) near_corner(other[k], next);
      }
    }
    return std::move(found_);
  }

 private:
  const CurveSegment& own() const { return own_[own_index_]; }

  /// `outward`: of the other, at the place that faces ours.
  void note(Point n, Point facing, Point outward) {
    if ((dot(outward, n) > 0) == within_) note(n, facing);
  }

  void note(Point n, Point facing) {
    const bool reached = own().is_arc() ? faces(own(), n) : beside(own(), facing);
    const Point at = own().is_arc() ? own().centre + own().radius * n : facing - dot(facing - own().a, n) * n;
    const double gap = dot(facing - at, n);
    if (reached && std::abs(gap) <= snap_) found_.push_back({own_index_, at, n, gap});
  }

  void near_line(const CurveSegment& segment) {
    if (!own().is_arc()) return;
    const Point outward = right_of(segment), n = (within_ ? 1.0 : -1.0) * outward;
    const Point facing = own().centre + dot(segment.a - own().centre, n) * n;
    if (beside(segment, facing)) note(n, facing, outward);
  }

  void near_arc(const CurveSegment& arc) {
    const Point apart = arc.centre - own().centre;
    if (!own().is_arc()) {
      const Point n = right_of(own());
      if (dot(arc.centre - own().a, n) > 0) note_arc(n, -1, arc);
    } else if (length(apart) > tolerance::same) {
      const Point n = unit(apart);
      note_arc(n, -1, arc);                                     // they bend away from each other
      if (arc.radius > own().radius) note_arc(-1 * n, 1, arc);  // ours lies in its circle
    }
  }

  /// `way`: from the arc's centre to the place that faces ours, along n.
  void note_arc(Point n, double way, const CurveSegment& arc) {
    const Point out = way * n;
    if (faces(arc, out)) note(n, arc.centre + arc.radius * out, arc.sweep > 0 ? out : -1 * out);
  }

  void near_corner(const CurveSegment& arriving, const CurveSegment& leaving) {
    const Point corner = leaving.a, apart = own().is_arc() ? corner - own().centre : right_of(own());
    if (length(apart) <= tolerance::same) return;
    const Point n = unit(apart), on = near_end(arriving.reversed()) - corner, off = near_end(leaving) - corner;
    if (dot(on, n) <= 2 * snap_ || dot(off, n) <= 2 * snap_) return;
    if ((cross(-1 * on, off) < 0) == within_) note(n, corner);
  }

  /// A place so far from the segment's beginning that a corner can be told from what is as good as straight.
  static Point near_end(const CurveSegment& segment) {
    return segment.at(std::min(1.0, longest_cusp / segment.length()));
  }

  const Loop& own_;
  bool within_;
  double snap_;
  std::vector<Box> reach_;  ///< of each segment
  std::size_t own_index_ = 0;
  std::vector<Touch> found_;
};

Point scaled(Point p, Point about, double by) { return about + by * (p - about); }

void make_smaller(Feature& oval, Point middle, double by) {
  for (CurveSegment& arc : oval.loop) {
    for (Point* p : {&arc.a, &arc.b, &arc.centre}) *p = scaled(*p, middle, by);
    arc.radius *= by;
  }
  if (!oval.ellipse) return;
  oval.ellipse->ellipse.centre = scaled(oval.ellipse->ellipse.centre, middle, by);
  oval.ellipse->ellipse.major = by * oval.ellipse->ellipse.major;
  oval.ellipse->off *= by;
}

/// So much of its size does an oval keep that stands `snap` off everywhere.
double size_left(const std::vector<Touch>& touches, Point middle, double snap) {
  double least = 1;
  for (const Touch& touch : touches)
    least = std::min(least, 1 - (snap - touch.gap) / dot(touch.at - middle, touch.normal));
  return least;
}

void move_side(Loop& band, std::size_t side, double along_x) {
  const std::size_t n = band.size();
  for (Point* p : {&band[side].a, &band[side].b, &band[(side + n - 1) % n].b, &band[(side + 1) % n].a}) p->x += along_x;
}

Point middle_of(const Feature& oval) {
  if (oval.ellipse) return oval.ellipse->ellipse.centre;
  const Box box = bounds(oval.loop);
  return between(box.low, box.high, 0.5);
}

}  // namespace

bool gives_by_outline(const Feature& feature) {
  const bool cuts = feature.role == Feature::Role::cut || feature.role == Feature::Role::removal ||
                    feature.role == Feature::Role::pin;
  return cuts && !feature.shape && (is_slot_through(feature) || (feature.drawn && is_oval(feature.loop)));
}

bool draw_back_outline(Feature& feature, const Feature& other, double snap) {
  const bool within = other.role == Feature::Role::stock || other.role == Feature::Role::strip;
  const bool slot = is_slot_through(feature);
  if (slot && other.role != Feature::Role::stock) return false;
  const Loop outline_of_other = other.shape ? outline(*other.shape) : other.loop;
  const std::vector<Touch> touches = Touches(feature.loop, within, snap).with(outline_of_other);
  if (slot) {
    std::vector<double> by(feature.loop.size());
    for (const Touch& touch : touches) by[touch.segment] = std::max(by[touch.segment], snap - touch.gap);
    for (std::size_t i = 0; i < by.size(); ++i)
      if (by[i] > tolerance::same) move_side(feature.loop, i, -by[i] / right_of(feature.loop[i]).x);
  } else {
    const Point middle = middle_of(feature);
    const double left = size_left(touches, middle, snap);
    if (left < 1 - tolerance::same) make_smaller(feature, middle, left);
  }
  return !touches.empty();
}

double outline_moved_by(const Loop& before, const Loop& after) {
  double most = 0;
  for (std::size_t i = 0; i < std::min(before.size(), after.size()); ++i)
    most = std::max(most, distance(before[i].a, after[i].a));
  return most;
}

}  // namespace sagitta
