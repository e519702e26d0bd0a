#include "inlay/NarrowPlaces.hpp"

#include <algorithm>
#include <cmath>

#include "inlay/MedialDiscs.hpp"
#include "inlay/OpenClose.hpp"
#include "polygon/Clusters.hpp"

namespace sagitta {
namespace {

constexpr double crumb = 1e-5;      // mm^2
constexpr double spare = 0.0005;    // mm; what is made is wider by this, so that the next round leaves it
constexpr double overlap = 0.0005;  // mm; parts that are added reach into what they are added to

double perimeter(const Region& region) {
  double sum = 0;
  for (const Polygon& polygon : region)
    for (std::size_t i = 0; i < polygon.size(); ++i) sum += distance(polygon[i], polygon[(i + 1) % polygon.size()]);
  return sum;
}

std::vector<Box> boxes_of(const std::vector<Region>& parts) {
  std::vector<Box> boxes;
  for (const Region& part : parts) boxes.push_back(bounds(part));
  return boxes;
}

double area_near(const std::vector<Region>& parts, const Box& box, double reach) {
  double sum = 0;
  for (const Region& part : parts)
    if (box.overlaps(bounds(part), reach)) sum += area(part);
  return sum;
}

void append(const Region& more, Region& all) { all.insert(all.end(), more.begin(), more.end()); }

/// What is done about each narrow place is worked out for all places at once; then each takes what changes less there.
class Remedies {
 public:
  Remedies(const Region& piece, const std::vector<Region>& gaps, double radius, double opening, const Region& taken,
           const Cancel& cancel)
      : piece_(piece), radius_(radius), opening_(opening), taken_(taken), cancel_(cancel) {
    const std::vector<Box> boxes = boxes_of(gaps);
    for (const std::vector<int>& group : clusters(boxes, 2 * radius)) {
      Place place;
      for (const int i : group) {
        place.box.add(boxes[i].low);
        place.box.add(boxes[i].high);
        append(gaps[i], place.gap);
      }
      places_.push_back(std::move(place));
    }
  }

  Region run(Remedy remedy) {
    std::vector<Box> all;
    Region gap;
    for (const Place& place : places_) {
      all.push_back(place.box);
      append(place.gap, gap);
    }
    const std::vector<Region> added = remedy == Remedy::either ? fillings(gap, all) : std::vector<Region>{};
    std::vector<Box> widened;
    Region filled = piece_;
    if (added.empty()) {
      widened = all;
    } else {
      const Region wide =
          difference(piece_, medial_discs(piece_, OutlineSide::outside, radius_ + spare, all, cancel_), cancel_);
      const std::vector<Region> lost = parts(difference(piece_, opened(wide, opening_, cancel_), cancel_));
      const std::vector<Region> blocked = true_parts(intersection(together(added), taken_, cancel_));
      for (const Place& place : places_) {
        const double more = area_near(added, place.box, overlap);
        const bool fills =
            more > 0 && more < area_near(lost, place.box, overlap) && area_near(blocked, place.box, overlap) == 0;
        if (!fills) {
          widened.push_back(place.box);
          continue;
        }
        for (const Region& part : added)
          if (place.box.overlaps(bounds(part), overlap))
            filled = union_of(filled, difference(offset(part, overlap, cancel_), taken_, cancel_), cancel_);
      }
    }
    const Region discs = medial_discs(piece_, OutlineSide::outside, radius_ + spare, widened, cancel_);
    return opened(difference(filled, discs, cancel_), opening_, cancel_);
  }

 private:
  struct Place {
    Box box;
    Region gap;
  };

  static Region together(const std::vector<Region>& parts) {
    Region all;
    for (const Region& part : parts) append(part, all);
    return all;
  }

  /// The gaps, and what makes the necks wide enough that are left between them.
  std::vector<Region> fillings(const Region& gap, const std::vector<Box>& boxes) const {
    const Region filled = union_of(piece_, offset(gap, overlap, cancel_), cancel_);
    std::vector<Box> necks;
    for (const Box& box : boxes_of(true_parts(difference(filled, opened(filled, opening_, cancel_), cancel_))))
      if (std::any_of(boxes.begin(), boxes.end(), [&](const Box& b) { return b.overlaps(box, radius_); }))
        necks.push_back(box);
    const Region discs = medial_discs(filled, OutlineSide::inside, radius_ + spare, necks, cancel_);
    return true_parts(difference(union_of(filled, discs, cancel_), piece_, cancel_));
  }

  const Region& piece_;
  double radius_, opening_;
  const Region& taken_;
  const Cancel& cancel_;
  std::vector<Place> places_;
};

}  // namespace

std::vector<Region> true_parts(const Region& region, double thin) {
  std::vector<Region> found;
  for (Region& part : parts(region)) {
    const double own = area(part);
    if (own < crumb) continue;
    if (2 * own >= thin * perimeter(part)) {
      found.push_back(std::move(part));
      continue;
    }
    // A sliver round all of an outline may hold true parts together.
    for (Region& thick : parts(opened(part, thin / 2)))
      if (area(thick) >= crumb) found.push_back(std::move(thick));
  }
  return found;
}

Region with_room(const Region& piece, const std::vector<Region>& gaps, double radius, double opening,
                 const Region& taken, Remedy remedy, const Cancel& cancel) {
  return Remedies(piece, gaps, radius, opening, taken, cancel).run(remedy);
}

}  // namespace sagitta
