#include "inlay/MedialDiscs.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "polygon/OutlineIndex.hpp"

namespace sagitta {
namespace {

constexpr double slack = 0.0003;       // mm; of a radius: chords and offsets leave as much
constexpr double noise = 0.0001;       // mm; points nearer to a line than this say nothing of its direction
constexpr double step = 0.125;         // of the radius: between points of the outline that are looked at
constexpr double least_chord = 0.6;    // of a disc's radius, between the two places where it touches: else one place
constexpr double joined = 0.5;         // of the radius: middles nearer to each other are joined
constexpr double half_needle = 0.002;  // mm; discs are grown from needles about the middles
constexpr int most_shrinks = 40;

/// The middle of the largest disc that touches the outline at p and lies toward n; nothing when it is as large as
/// `radius`, or touches in one place only.
std::optional<Point> middle(Point p, Point n, double radius, const OutlineIndex& outline) {
  double own = radius;
  Point chord;
  for (int i = 0; i < most_shrinks; ++i) {
    const OutlineIndex::Nearest nearest = outline.nearest(p + own * n);
    const Point way = nearest.p - p;
    const double ahead = dot(n, way);
    if (ahead <= 0) break;
    const double next = dot(way, way) / (2 * ahead);
    if (next > own - slack / 10) break;
    own = next;
    chord = way;
  }
  if (own > radius - slack || dot(chord, chord) < least_chord * least_chord * own * own) return std::nullopt;
  return p + own * n;
}

/// All points within half_needle of the way from a to b, nearly: as wide as that beside it, and no further at its ends.
Polygon needle(Point a, Point b) {
  const Point way = distance(a, b) > half_needle ? unit(b - a) : Point{1, 0};
  Polygon outline;
  for (const bool ahead : {true, false})
    for (const int eighth : {-2, -1, 0, 1, 2}) {
      const Point out = half_needle * turned(way, eighth * std::numbers::pi / 4);
      outline.push_back(ahead ? b + out : a - out);
    }
  return outline;
}

bool overlaps_any(const Box& box, const std::vector<Box>& near) {
  return std::any_of(near.begin(), near.end(), [&](const Box& other) { return box.overlaps(other); });
}

/// The needles along one outline.
class Needles {
 public:
  Needles(double radius, Region& into) : radius_(radius), into_(into) {}
  void add(Point p) {
    into_.push_back(needle(last_ && distance(*last_, p) < joined * radius_ ? *last_ : p, p));
    last_ = p;
  }
  void interrupt() { last_.reset(); }

 private:
  double radius_;
  Region& into_;
  std::optional<Point> last_;
};

}  // namespace

Region medial_discs(const Region& region, OutlineSide side, double radius, const std::vector<Box>& near,
                    const Cancel& cancel) {
  if (near.empty()) return {};
  const Region outline = thinned(region, noise);
  const OutlineIndex index(outline);
  Region all;
  for (const Polygon& polygon : outline) {
    Needles needles(radius, all);
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Point a = polygon[i], b = polygon[i + 1 < polygon.size() ? i + 1 : 0];
      const double size = distance(a, b);
      Box box;
      box.add(a);
      box.add(b);
      if (size <= noise || !overlaps_any(box, near) || cancel.wanted()) {
        if (size > noise) needles.interrupt();
        continue;
      }
      const Point n = (side == OutlineSide::inside ? 1 : -1) * left_of(unit(b - a));
      const int count = 1 + static_cast<int>(size / (step * radius));
      for (int k = 0; k < count; ++k) {
        const Point p = between(a, b, (k + 0.5) / count);
        if (!overlaps_any({p, p}, near)) continue;
        if (const auto found = middle(p, n, radius, index)) {
          needles.add(*found);
        } else {
          needles.interrupt();
        }
      }
    }
  }
  return cancel.wanted() ? Region{} : offset(filled(all, cancel), radius - half_needle, cancel);
}

}  // namespace sagitta
