#include "oracle/Events.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sagitta::oracle {
namespace {

/// A level floor and a surface moved down: their heights are equal along a crossing curve.
struct Pair {
  double level, offset;
};

std::vector<Strand> all_strands(const Sections& s) {
  std::vector<Strand> all = s.outline;
  for (const auto* regions : {&s.cuts, &s.pins})
    for (const Region& region : *regions) all.insert(all.end(), region.strands.begin(), region.strands.end());
  return all;
}

std::vector<Pair> pairs_of(const Sections& s) {
  std::vector<double> levels{s.top}, offsets;
  for (const Region& cut : s.cuts) (cut.floor == Cut::Floor::arc ? offsets : levels).push_back(cut.value);
  for (const Region& pin : s.pins) levels.push_back(pin.value);
  for (std::vector<double>* values : {&levels, &offsets}) {
    std::sort(values->begin(), values->end());
    values->erase(std::unique(values->begin(), values->end()), values->end());
  }
  std::vector<Pair> pairs;
  for (const double level : levels)
    for (const double offset : offsets) pairs.push_back({level, offset});
  return pairs;
}

template <class F>
double root(const F& f, double a, double b) {
  const bool rising = f(a) < 0;
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (a + b);
    ((f(middle) < 0) == rising ? a : b) = middle;
  }
  return 0.5 * (a + b);
}

/// Roots of f over (a, b), found between samples that crowd toward both ends.
template <class F>
void add_roots(const F& f, double a, double b, std::vector<double>& xs) {
  constexpr int samples = 32;
  double x0 = a, f0 = f(a);
  for (int i = 1; i <= samples; ++i) {
    const double s = std::sin(std::numbers::pi / 2 * i / samples);
    const double x1 = i == samples ? b : a + (b - a) * s * s, f1 = f(x1);
    if ((f0 < 0) != (f1 < 0)) xs.push_back(root(f, x0, x1));
    x0 = x1;
    f0 = f1;
  }
}

void add_crossing_events(const Sections& s, const std::vector<Strand>& strands, double from, double to,
                         std::vector<double>& xs) {
  for (const Pair& pair : pairs_of(s)) {
    const auto under = [&](double x) { return s.depth_under(pair.level, pair.offset, x); };
    add_roots(under, from, to, xs);
    if (s.surface.flat) continue;
    for (const Strand& strand : strands) {
      const double a = std::max(from, strand.x0), b = std::min(to, strand.x1);
      if (b <= a) continue;
      const auto gap = [&](double x) {
        const double y = std::clamp(strand.y(x), -s.surface.radius(x), s.surface.radius(x));
        return s.surface.drop(x, y) - under(x);
      };
      add_roots(gap, a, b, xs);
    }
  }
}

}  // namespace

std::vector<double> events(const Sections& s) {
  double from = 1e300, to = -1e300;
  for (const Strand& strand : s.outline) {
    from = std::min(from, strand.x0);
    to = std::max(to, strand.x1);
  }
  const std::vector<Strand> strands = all_strands(s);
  std::vector<double> xs{from, to};
  if (s.surface.fall_start) xs.push_back(*s.surface.fall_start);
  for (const Strand& strand : strands) {
    xs.push_back(strand.x0);
    xs.push_back(strand.x1);
  }
  for (std::size_t i = 0; i < strands.size(); ++i)
    for (std::size_t j = i + 1; j < strands.size(); ++j) add_meetings(strands[i], strands[j], xs);
  add_crossing_events(s, strands, from, to, xs);
  std::sort(xs.begin(), xs.end());
  std::erase_if(xs, [&](double x) { return x < from || x > to; });
  xs.erase(std::unique(xs.begin(), xs.end()), xs.end());
  return xs;
}

}  // namespace sagitta::oracle
