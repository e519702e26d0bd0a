#include "oracle/HeightVolume.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "oracle/Events.hpp"
#include "oracle/Gauss.hpp"
#include "oracle/Section.hpp"

namespace sagitta::oracle {
namespace {

using std::numbers::pi;
constexpr double nowhere = std::numeric_limits<double>::infinity();

bool done(const Board& board, Stage stage, Operation operation) {
  if (stage == Stage::blank) return false;
  if (stage == Stage::finished) return true;
  const Operation last = stage == Stage::pocketed   ? Operation::pockets
                         : stage == Stage::radiused ? Operation::radius
                         : stage == Stage::slotted  ? Operation::slots
                                                    : Operation::outline;
  for (const Operation each : board.order) {
    if (each == operation) return true;
    if (each == last) return false;
  }
  return false;
}

/// The line of a fret, by its two edge points.
Trough trough_between(const Board& board, const Layout& layout, int fret, double depth) {
  const auto middle = [&](int f) {
    double x = layout.frets[static_cast<std::size_t>(f)].middle.x;
    if (f == 0 && layout.nut && !board.scale.zero_fret) x = std::max(x, layout.nut->face.x);
    return x;
  };
  const auto lean = [&](int f) {
    const FretLine& line = layout.frets[static_cast<std::size_t>(f)];
    return (line.bass.x - line.treble.x) / (line.bass.y - line.treble.y);
  };
  const double land = board.scallop->land;
  return {{middle(fret - 1) + land, 0}, {middle(fret) - land, 0}, lean(fret - 1), lean(fret), depth};
}

/// One place's floors, by number; the lowest wins.
class Heights {
 public:
  Heights(const Work& work, const Forms& forms, const Layout& layout, double on_top)
      : sections_(work), forms_(forms), layout_(layout), on_top_(on_top) {}

  const Sections& sections() const { return sections_; }

  struct Floor {
    double z = nowhere;
    int which = -1;
  };

  Floor top(double x, double y) const {
    Floor lowest{sections_.top, 0};
    int which = 0;
    const auto take = [&](double z) {
      ++which;
      if (z < lowest.z) lowest = {z, which};
    };
    for (const Region& cut : sections_.cuts) {
      const bool here = inside(cut.strands, {x, y});
      const bool level = cut.floor == Cut::Floor::level;
      take(!here ? nowhere : level ? cut.value : sections_.surface.height(x, y) - cut.value);
    }
    for (const Trough& trough : forms_.troughs) {
      const double from = trough.low.x + trough.low_lean * y, to = trough.high.x + trough.high_lean * y;
      const double s = (x - from) / (to - from), wave = std::sin(pi * s);
      take(s > 0 && s < 1 && in_strip(x, y) ? sections_.surface.height(x, y) + on_top_ - trough.depth * wave * wave
                                            : nowhere);
    }
    for (const double sense : {-1.0, 1.0}) take(forms_.edges ? worked(x, y, sense) : nowhere);
    return lowest;
  }

  bool in_strip(double x, double y) const {
    const Box& strip = layout_.strip;
    return x > strip.low.x && x < strip.high.x && y > strip.low.y && y < strip.high.y;
  }

  double bottom(double x, double y) const {
    double z = 0;
    for (const Region& pin : sections_.pins)
      if (inside(pin.strands, {x, y})) z = std::max(z, pin.value);
    return z;
  }

 private:
  /// The roll's circle touches the section's circle from inside: both centres and the place where they touch are on one
  /// line.
  double worked(double x, double y, double sense) const {
    const double edge = layout_.edge(sense < 0 ? 0 : 1, x), out = sense * y,
                 crown = sections_.surface.crown(x) + on_top_;
    const double big = sections_.surface.radius(x);
    const bool flat = sections_.surface.flat;
    if (forms_.roll > 0) {
      const double r = forms_.roll, aside = edge - r;
      const double angle = flat ? 0 : std::asin(aside / (big - r));
      if (out < aside + r * std::sin(angle)) return nowhere;
      const double centre = flat ? crown - r : crown - big + (big - r) * std::cos(angle);
      return centre + std::sqrt(std::max(0.0, r * r - (out - aside) * (out - aside)));
    }
    const double from = edge - forms_.bevel;
    if (out < from) return nowhere;
    return sections_.surface.height(x, from) + on_top_ - (out - from) / std::tan(forms_.angle);
  }

  Sections sections_;
  const Forms& forms_;
  const Layout& layout_;
  double on_top_;
};

/// Area of the section at x, between the y where a region's border or a change of the lowest floor lies.
double section_area(const Heights& heights, double x) {
  const std::vector<double> ends = crossings(heights.sections().outline, x);
  if (ends.size() < 2) return 0;
  std::vector<double> ys = ends;
  for (const auto* regions : {&heights.sections().cuts, &heights.sections().pins})
    for (const Region& region : *regions)
      for (const double y : crossings(region.strands, x))
        if (y > ends.front() && y < ends.back()) ys.push_back(y);
  std::sort(ys.begin(), ys.end());
  const auto which = [&](double y) { return heights.top(x, y).which; };
  constexpr int samples = 48;
  std::vector<double> all = ys;
  for (std::size_t i = 0; i + 1 < ys.size(); ++i)
    for (int k = 0; k < samples; ++k) {
      double a = ys[i] + (ys[i + 1] - ys[i]) * (k + 1e-9) / samples;
      double b = ys[i] + (ys[i + 1] - ys[i]) * (k + 1 - 1e-9) / samples;
      const int first = which(a);
      if (first == which(b)) continue;
      for (int half = 0; half < 60; ++half) (which((a + b) / 2) == first ? a : b) = (a + b) / 2;
      all.push_back((a + b) / 2);
    }
  std::sort(all.begin(), all.end());
  double area = 0;
  for (std::size_t i = 0; i + 1 < all.size(); ++i)
    if (all[i + 1] > all[i])
      area += integral([&](double y) { return std::max(0.0, heights.top(x, y).z - heights.bottom(x, y)); }, all[i],
                       all[i + 1], 1e-9)
                  .value;
  return area;
}

}  // namespace

Forms forms_at(const Board& board, const Layout& layout, Stage stage) {
  Forms forms;
  if (board.scallop && done(board, stage, Operation::radius)) {
    const Scallop& spec = *board.scallop;
    const auto middle = [&](int fret) {
      const Trough own = trough_between(board, layout, fret, 0);
      return (own.low.x + own.high.x) / 2;
    };
    const double from = trough_between(board, layout, spec.from_fret + 1, 0).low.x - spec.land;
    const double to = trough_between(board, layout, spec.to_fret, 0).high.x + spec.land;
    for (int fret = spec.from_fret + 1; fret <= spec.to_fret; ++fret) {
      const double part = (middle(fret) - from) / (to - from);
      forms.troughs.push_back(
          trough_between(board, layout, fret, spec.depth.first * (1 - part) + spec.depth.second * part));
    }
  }
  if (!board.edges || (board.edges->roll == 0 && board.edges->bevel == 0)) return forms;
  forms.edges =
      board.edges->stage == EdgeStage::machine ? done(board, stage, Operation::outline) : stage == Stage::finished;
  forms.roll = board.edges->roll;
  forms.bevel = board.edges->bevel;
  forms.angle = board.edges->bevel_angle_degrees * pi / 180;
  return forms;
}

double height_volume(const Board& board, const Layout& layout, const Surface& surface, Stage stage) {
  const Work work = work_at(board, layout, surface, stage);
  const Forms forms = forms_at(board, layout, stage);
  const Heights heights(work, forms, layout, stage == Stage::finished ? 0 : board.sanding);
  std::vector<double> xs = events(heights.sections());
  const double low = xs.front(), high = xs.back();
  for (const Trough& trough : forms.troughs)
    for (const double y : {-layout.edge(0, trough.low.x), 0.0, layout.edge(1, trough.low.x)}) {
      const double a = trough.low.x + trough.low_lean * y, b = trough.high.x + trough.high_lean * y;
      for (const double x : {a, (a + b) / 2, b}) xs.push_back(std::clamp(x, low, high));
    }
  std::sort(xs.begin(), xs.end());
  double volume = 0;
  for (std::size_t i = 0; i + 1 < xs.size(); ++i)
    if (xs[i + 1] - xs[i] > 1e-9)
      volume += integral([&](double x) { return section_area(heights, x); }, xs[i], xs[i + 1], 1e-5).value;
  return volume;
}

}  // namespace sagitta::oracle
