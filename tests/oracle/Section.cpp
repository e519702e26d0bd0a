#include "oracle/Section.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta::oracle {
namespace {

struct Active {
  double low, high;
  const Region* region;
};

std::vector<Active> active_at(const std::vector<Region>& regions, double x) {
  std::vector<Active> active;
  for (const Region& region : regions) {
    if (x <= region.box.low.x || x >= region.box.high.x) continue;
    if (const auto span = interval(region.strands, x)) active.push_back({span->first, span->second, &region});
  }
  return active;
}

struct Floor {
  bool arc;
  double value;  ///< arc: offset under the surface; level: height
};

/// One section, with everything that lies over it.
struct Section {
  const Sections& all;
  double x, crown, radius;
  std::vector<Active> cuts, pins;

  double height(Floor floor, double y) const {
    return floor.arc ? crown - floor.value - all.surface.drop(x, y) : floor.value;
  }

  Floor top_at(double y) const {
    Floor lowest{false, all.top};
    for (const Active& cut : cuts) {
      if (y <= cut.low || y >= cut.high) continue;
      const Floor floor{cut.region->floor == Cut::Floor::arc, cut.region->value};
      if (height(floor, y) < height(lowest, y)) lowest = floor;
    }
    return lowest;
  }

  double bottom_at(double y) const {
    double bottom = 0;
    for (const Active& pin : pins)
      if (pin.low < y && y < pin.high) bottom = std::max(bottom, pin.region->value);
    return bottom;
  }

  void add_crossings(double level, double offset, std::vector<double>& ys) const {
    const double delta = all.depth_under(level, offset, x);
    if (all.surface.flat || delta <= 0 || delta >= radius) return;
    const double y = std::sqrt(delta * (2 * radius - delta));
    ys.push_back(-y);
    ys.push_back(y);
  }

  std::vector<double> breaks() const {
    std::vector<double> ys{0};  // where two floors may touch without crossing
    std::vector<double> levels{all.top, 0}, offsets;
    for (const Active& cut : cuts) {
      ys.push_back(cut.low);
      ys.push_back(cut.high);
      (cut.region->floor == Cut::Floor::arc ? offsets : levels).push_back(cut.region->value);
    }
    for (const Active& pin : pins) {
      ys.push_back(pin.low);
      ys.push_back(pin.high);
      levels.push_back(pin.region->value);
    }
    for (std::vector<double>* values : {&levels, &offsets}) {
      std::sort(values->begin(), values->end());
      values->erase(std::unique(values->begin(), values->end()), values->end());
    }
    for (const double level : levels)
      for (const double offset : offsets) add_crossings(level, offset, ys);
    std::sort(ys.begin(), ys.end());
    return ys;
  }

  double stretch(double y0, double y1) const {
    const double middle = 0.5 * (y0 + y1);
    const Floor top = top_at(middle);
    const double bottom = bottom_at(middle);
    if (height(top, middle) <= bottom) return 0;
    if (!top.arc) return (top.value - bottom) * (y1 - y0);
    const double dropped = all.surface.flat ? 0 : drop_integral(radius, y1) - drop_integral(radius, y0);
    return (crown - top.value - bottom) * (y1 - y0) - dropped;
  }
};

Region region_of(const Loop& loop, Cut::Floor floor, double value) {
  Region region{strands_of(loop), {}, floor, value};
  for (const Strand& s : region.strands) {
    region.box.add(s.a);
    region.box.add(s.b);
    const double x = std::clamp(s.radius > 0 ? s.centre.x : s.x0, s.x0, s.x1);  // an arc's highest or lowest place
    region.box.add({x, s.y(x)});
  }
  return region;
}

}  // namespace

Sections::Sections(const Work& work) : surface(work.surface), outline(strands_of(work.outline)), top(work.top) {
  for (const Cut& cut : work.cuts) cuts.push_back(region_of(cut.region, cut.floor, cut.value));
  for (const Pin& pin : work.pins)
    pins.push_back(region_of(circle(pin.centre, pin.radius), Cut::Floor::level, pin.depth));
  for (const Cut& hollow : work.hollows) pins.push_back(region_of(hollow.region, hollow.floor, hollow.value));
}

double Sections::area(double x) const {
  const Section section{*this, x, surface.crown(x), surface.radius(x), active_at(cuts, x), active_at(pins, x)};
  const std::vector<double> edges = crossings(outline, x), breaks = section.breaks();
  double sum = 0;
  for (std::size_t i = 0; i + 1 < edges.size(); i += 2) {
    double from = edges[i];
    for (const double y : breaks) {
      if (y <= from || y >= edges[i + 1]) continue;
      sum += section.stretch(from, y);
      from = y;
    }
    sum += section.stretch(from, edges[i + 1]);
  }
  return sum;
}

std::pair<double, double> Sections::column(Point p) const {
  if (!inside(outline, p)) return {0, 0};
  double high = top, low = 0;
  for (const Region& cut : cuts) {
    if (!inside(cut.strands, p)) continue;
    high = std::min(high, cut.floor == Cut::Floor::arc ? surface.height(p) - cut.value : cut.value);
  }
  for (const Region& pin : pins)
    if (inside(pin.strands, p)) low = std::max(low, pin.value);
  return {high, low};
}

double drop_integral(double radius, double y) {
  // With y = R sin a: R^2 ((sin a - a) / 2 + sin a sin^2(a/2)). Rid of cancellation but for the first bracket.
  const double sine = y / radius, a = std::asin(sine), half = std::sin(a / 2), s = a * a;
  double less = sine - a;
  if (std::abs(a) < 0.5)  // -a^3/3! + a^5/5! - .. + a^15/15!
    less = -a * s / 6 * (1 - s / 20 * (1 - s / 42 * (1 - s / 72 * (1 - s / 110 * (1 - s / 156 * (1 - s / 210))))));
  return radius * radius * (less / 2 + sine * half * half);
}

}  // namespace sagitta::oracle
