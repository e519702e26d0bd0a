#include "frets/StringRun.hpp"

#include <algorithm>
#include <cmath>

#include "board/SlotCut.hpp"
#include "layout/LastFret.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Stations along a string. The rise is nearly a parabola, flat at its top: between two stations it changes by less
/// than a ten thousandth of itself.
constexpr int stations = 128;

/// Where a string crosses the line of a fret.
Point crossing(const LineSegment& string, const FretLine& fret) {
  const Point way = string.b - string.a, across = fret.treble - fret.bass;
  const double turn = cross(way, across);
  if (std::abs(turn) < tolerance::same) return {fret.middle.x, string.a.y};
  return between(string.a, string.b, cross(fret.bass - string.a, across) / turn);
}

Point at_x(const LineSegment& string, double x) {
  return between(string.a, string.b, (x - string.a.x) / (string.b.x - string.a.x));
}

}  // namespace

std::vector<StringRun> string_runs(const Layout& layout, const Surface& surface) {
  std::vector<StringRun> runs;
  for (std::size_t i = 0; i < layout.strings.size(); ++i) {
    const LineSegment& string = layout.strings[i];
    const Point nut = crossing(string, layout.frets.front());
    // Without frets the string is stopped anywhere, up to the heel end.
    Point last = layout.frets.size() > 1 ? crossing(string, last_fret(layout)) : at_x(string, layout.heel_end);
    if (surface.fall_start && *surface.fall_start < last.x) last = at_x(string, *surface.fall_start);
    if (last.x <= nut.x) continue;
    const double first = surface.height(nut), end = surface.height(last);
    StringRun run{static_cast<int>(i), {nut, last}, 0, nut};
    for (int step = 1; step < stations && !surface.flat; ++step) {
      const double part = 1.0 * step / stations;
      const Point p = between(nut, last, part);
      const double rise = surface.height(p) - (first + part * (end - first));
      if (rise > run.hump) run.hump = rise, run.at = p;
    }
    runs.push_back(run);
  }
  return runs;
}

double humpless_radius(const PreparedBoard& ready) {
  const Layout& layout = ready.layout();
  if (!(layout.spread_at_nut > 0)) return 0;
  const SurfaceSpec& settings = ready.board().surface;
  const bool at_last_fret = settings.profile == Profile::compound && settings.heel_at == HeelAt::last_fret;
  const double x = at_last_fret ? last_fret(layout).middle.x : layout.heel_end;
  return ready.surface().radius(0) * layout.spread(x) / layout.spread(0);
}

int joint_fret(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const int last = last_fret(ready.layout()).fret;
  return board.neck && board.neck->joint_fret ? std::min(*board.neck->joint_fret, last) : last;
}

double saddle_height(const Board& board, const Surface& surface, double angle, double from_joint_to_saddle) {
  const double crown = slot_cut(board) == SlotCut::all ? board.wire.crown_height : 0;
  return (surface.thickness + crown) / std::cos(angle) + from_joint_to_saddle * std::tan(angle);
}

}  // namespace sagitta
