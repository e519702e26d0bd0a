#include "oracle/HeightVolume.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "oracle/Events.hpp"
#include "oracle/Gauss.hpp"
#include "oracle/Hole.hpp"
#include "oracle/Section.hpp"

namespace sagitta::oracle {
namespace {

using std::numbers::pi;
constexpr double nowhere = std::numeric_limits<double>::infinity();

bool done(const Board& board, Stage stage, Operation operation) {
  if (stage == Stage::blank) return false;
  if (stage == Stage::finished) return true;
  const Operation last = stage == Stage::pocketed      ? Operation::pockets
                         : stage == Stage::radiused    ? Operation::radius
                         : stage == Stage::slotted     ? Operation::slots
                         : stage == Stage::thicknessed ? Operation::thickness
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

/// A convex region's part of a section.
struct Part {
  double low, high;
  const Region* region;
  int which;
};

std::vector<Part> parts_at(const std::vector<Region>& regions, double x) {
  std::vector<Part> parts;
  for (std::size_t i = 0; i < regions.size(); ++i) {
    if (x <= regions[i].box.low.x || x >= regions[i].box.high.x) continue;
    if (const auto span = interval(regions[i].strands, x))
      parts.push_back({span->first, span->second, &regions[i], static_cast<int>(i) + 1});
  }
  return parts;
}

/// What a board's sections are made of.
struct Heights {
  Sections sections;
  const Forms& forms;
  const Layout& layout;
  double on_top;
};

/// The floors of one section by number; the lowest wins.
class Slice {
 public:
  Slice(const Heights& all, double x)
      : all_(all), x_(x), cuts_(parts_at(all.sections.cuts, x)), pins_(parts_at(all.sections.pins, x)) {
    for (const Trough& trough : all.forms.troughs) {
      const double reach = std::max(std::abs(all.layout.strip.low.y), std::abs(all.layout.strip.high.y));
      if (x > trough.low.x - std::abs(trough.low_lean) * reach &&
          x < trough.high.x + std::abs(trough.high_lean) * reach)
        troughs_.push_back(&trough);
    }
  }

  struct Floor {
    double z = nowhere;
    int which = -1;
  };

  Floor top(double y) const {
    Floor lowest{all_.sections.top, 0};
    const auto take = [&](double z, int which) {
      if (z < lowest.z) lowest = {z, which};
    };
    const double plain = all_.sections.surface.height(x_, y);
    for (const Part& part : cuts_)
      if (part.low < y && y < part.high)
        take(part.region->floor == Cut::Floor::level ? part.region->value : plain - part.region->value, part.which);
    if (in_strip(y))
      for (const Trough* trough : troughs_) {
        const double from = trough->low.x + trough->low_lean * y, to = trough->high.x + trough->high_lean * y;
        const double s = (x_ - from) / (to - from), wave = std::sin(pi * s);
        if (s > 0 && s < 1) take(plain + all_.on_top - trough->depth * wave * wave, form);
      }
    if (all_.forms.edges)
      for (const int side : {0, 1}) take(worked(y, side), form + 1 + side);
    return lowest;
  }

  double bottom(double y) const {
    double z = 0;
    for (const Part& pin : pins_)
      if (pin.low < y && y < pin.high) z = std::max(z, pin.region->value);
    return z;
  }

  /// Between the y where a region's border or a change of the lowest floor lies.
  double area() const {
    const std::vector<double> ends = crossings(all_.sections.outline, x_);
    double sum = 0;
    for (std::size_t i = 0; i + 1 < ends.size(); i += 2) {
      const std::vector<double> ys = breaks(ends[i], ends[i + 1]);
      for (std::size_t k = 0; k + 1 < ys.size(); ++k)
        if (ys[k + 1] > ys[k])
          sum += integral([&](double y) { return std::max(0.0, top(y).z - bottom(y)); }, ys[k], ys[k + 1], 1e-9).value;
    }
    return sum;
  }

 private:
  static constexpr int form = 1 << 20;  ///< beyond the numbers of cuts

  bool in_strip(double y) const {
    const Box& strip = all_.layout.strip;
    return x_ > strip.low.x && x_ < strip.high.x && y > strip.low.y && y < strip.high.y;
  }

  std::vector<double> breaks(double from, double to) const {
    std::vector<double> ys{from, to};
    for (const auto* parts : {&cuts_, &pins_})
      for (const Part& part : *parts)
        for (const double y : {part.low, part.high})
          if (y > from && y < to) ys.push_back(y);
    std::sort(ys.begin(), ys.end());
    constexpr int samples = 48;
    const std::size_t plain = ys.size();
    for (std::size_t i = 0; i + 1 < plain; ++i)
      for (int k = 0; k < samples; ++k) {
        double a = ys[i] + (ys[i + 1] - ys[i]) * (k + 1e-9) / samples;
        double b = ys[i] + (ys[i + 1] - ys[i]) * (k + 1 - 1e-9) / samples;
        const int first = top(a).which;
        if (first == top(b).which) continue;
        for (int half = 0; half < 60; ++half) (top((a + b) / 2).which == first ? a : b) = (a + b) / 2;
        ys.push_back((a + b) / 2);
      }
    std::sort(ys.begin(), ys.end());
    return ys;
  }

  /// The roll's circle touches the section's circle from inside: both centres and the place where they touch are on one
  /// line.
  double worked(double y, int side) const {
    const Surface& surface = all_.sections.surface;
    const double edge = all_.layout.edge(side, x_), out = side == 0 ? -y : y, crown = surface.crown(x_) + all_.on_top;
    if (all_.forms.roll > 0) {
      const double r = all_.forms.roll, aside = edge - r, big = surface.radius(x_);
      const double angle = surface.flat ? 0 : std::asin(aside / (big - r));
      if (out < aside + r * std::sin(angle)) return nowhere;
      const double centre = surface.flat ? crown - r : crown - big + (big - r) * std::cos(angle);
      return centre + std::sqrt(std::max(0.0, r * r - (out - aside) * (out - aside)));
    }
    const double from = edge - all_.forms.bevel;
    if (out < from) return nowhere;
    return surface.height(x_, from) + all_.on_top - (out - from) / std::tan(all_.forms.angle);
  }

  const Heights& all_;
  double x_;
  std::vector<Part> cuts_, pins_;
  std::vector<const Trough*> troughs_;
};

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
  const Heights heights{Sections(work), forms, layout, stage == Stage::finished ? 0 : board.sanding};
  std::vector<double> xs = events(heights.sections);
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
      volume += integral([&](double x) { return Slice(heights, x).area(); }, xs[i], xs[i + 1], 1e-5).value;
  for (std::size_t i = 0; i < work.holes.size(); ++i) volume -= hole_volume(work, heights.sections, i);
  return volume;
}

}  // namespace sagitta::oracle
