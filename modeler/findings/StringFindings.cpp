#include <algorithm>

#include "findings/Families.hpp"

namespace sagitta {
namespace {

/// Stations along a string. The rise is nearly a parabola, flat at its top: between two stations it changes by less
/// than a thousandth of itself.
constexpr int stations = 512;

void judge_margin(const Subject& subject, Judge& judge) {
  const Layout& layout = subject.layout;
  const auto margin = [&](double x) { return layout.half_width(x) - layout.spread(x) / 2; };
  const double x = margin(0) < margin(layout.heel_end) ? 0 : layout.heel_end;
  const double side = subject.board.hand == Hand::left ? -1 : 1;
  const Point at{x, side * layout.spread(x) / 2};
  const Rule& near = rule("string-near-edge");
  const double lack = judge.limit(near) - margin(x);
  judge.hold(near, margin(x), {at, subject.surface.height(at), "the outer strings"},
             "the outer strings run " + judge.shown(margin(x)) + " from the edge at the " + (x == 0 ? "nut" : "heel") +
                 ": they slip off the board when they are pulled",
             "make the board " + judge.shown(2 * lack) + " wider there", widened(subject, x, 2 * lack, judge));
}

void judge_hump(const Subject& subject, const Segment& string, Judge& judge) {
  const Surface& surface = subject.surface;
  double end = subject.layout.frets.back().middle.x;
  if (surface.fall_start) end = std::min(end, *surface.fall_start);
  if (end <= 0) return;
  const auto on_string = [&](double x) {
    return between(string.a, string.b, (x - string.a.x) / (string.b.x - string.a.x));
  };
  const double first = surface.height(on_string(0)), last = surface.height(on_string(end));
  double rise = 0;
  Point at = string.a;
  for (int i = 1; i < stations; ++i) {
    const double part = 1.0 * i / stations;
    const Point p = on_string(part * end);
    const double above = surface.height(p) - (first + part * (last - first));
    if (above > rise) rise = above, at = p;
  }
  const double needed = surface.radius(0) * subject.layout.spread(end) / subject.layout.spread(0);
  const std::string side = at.y < 0 ? "the outer string at the lower edge" : "the outer string at the upper edge";
  judge.hold(rule("hump-under-string"), rise, {at, surface.height(at), side},
             "under " + side + " the surface rises " + judge.shown(rise) +
                 " above a straight line from the nut to the last fret: the string buzzes there",
             "use profile = \"string-line\", or a radius of " + judge.shown(needed) + " at the last fret");
}

}  // namespace

void judge_strings(const Subject& subject, Judge& judge) {
  judge_margin(subject, judge);
  if (subject.surface.flat || subject.layout.strings.empty()) return;
  judge_hump(subject, subject.layout.strings.front(), judge);
  if (subject.layout.strings.size() > 1) judge_hump(subject, subject.layout.strings.back(), judge);
}

}  // namespace sagitta
