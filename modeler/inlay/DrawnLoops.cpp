#include "inlay/DrawnLoops.hpp"

#include <algorithm>
#include <numbers>

#include "inlay/Biarc.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

constexpr int most_halvings = 16;
constexpr int looks = 8;  // along a part of a curve

/// Unit tangent where the curve begins: towards the first of its other points that lies elsewhere.
Point first_direction(const Bezier& curve) {
  for (const Point p : {curve.c, curve.d, curve.b})
    if (distance(p, curve.a) > tolerance::same) return unit(p - curve.a);
  return {1, 0};
}

Bezier reversed(const Bezier& curve) { return {curve.b, curve.d, curve.c, curve.a}; }

std::vector<CurveSegment> two_arcs(const Bezier& curve, double stray) {
  const std::vector<CurveSegment> arcs =
      biarc(curve.a, first_direction(curve), curve.b, -1 * first_direction(reversed(curve)), 1, tolerance::same);
  if (arcs.empty()) return {};
  for (int i = 1; i < looks; ++i)
    if (off_chain(arcs, curve.at(static_cast<double>(i) / looks)) > stray) return {};
  return arcs;
}

void add_arcs(const Bezier& curve, double stray, int halvings, Loop& loop) {
  if (distance(curve.a, curve.b) <= tolerance::same && halvings < most_halvings) return;
  if (const std::vector<CurveSegment> arcs = two_arcs(curve, stray); !arcs.empty()) {
    loop.insert(loop.end(), arcs.begin(), arcs.end());
    return;
  }
  if (halvings == 0) return loop.push_back(line(curve.a, curve.b));
  const Point ac = between(curve.a, curve.c, 0.5), cd = between(curve.c, curve.d, 0.5),
              db = between(curve.d, curve.b, 0.5), acd = between(ac, cd, 0.5), cdb = between(cd, db, 0.5),
              middle = between(acd, cdb, 0.5);
  add_arcs({curve.a, ac, acd, middle}, stray, halvings - 1, loop);
  add_arcs({middle, cdb, db, curve.b}, stray, halvings - 1, loop);
}

void add_segment(CurveSegment segment, double scale, Point middle, Loop& loop) {
  for (Point* p : {&segment.a, &segment.b, &segment.centre}) *p = scale * (*p - middle);
  segment.radius *= scale;
  if (std::abs(segment.sweep) <= std::numbers::pi) return loop.push_back(segment);
  const CurveSegment first = arc(segment.centre, segment.radius, segment.start, segment.sweep / 2);
  CurveSegment second = arc(segment.centre, segment.radius, segment.start + segment.sweep / 2, segment.sweep / 2);
  second.a = first.b;
  second.b = segment.b;
  loop.push_back(first);
  loop.back().a = segment.a;
  loop.push_back(second);
}

}  // namespace

Loops drawn_loops(const std::vector<PathLoop>& outlines, double scale, Point middle, double stray) {
  Loops loops;
  for (const PathLoop& outline : outlines) {
    Loop loop;
    for (const PathSegment& stroke : outline) {
      if (const auto* curve = std::get_if<Bezier>(&stroke)) {
        const auto own = [&](Point p) { return scale * (p - middle); };
        add_arcs({own(curve->a), own(curve->c), own(curve->d), own(curve->b)}, stray, most_halvings, loop);
      } else {
        add_segment(std::get<CurveSegment>(stroke), scale, middle, loop);
      }
    }
    std::erase_if(loop, [](const CurveSegment& s) { return s.length() <= tolerance::vertex; });
    for (std::size_t i = 0; i < loop.size(); ++i) loop[i].b = loop[(i + 1) % loop.size()].a;
    if (!loop.empty()) loops.push_back(std::move(loop));
  }
  return loops;
}

}  // namespace sagitta
