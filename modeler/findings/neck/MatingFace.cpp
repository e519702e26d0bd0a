#include "neck/MatingFace.hpp"

#include <algorithm>

#include "layout/LastFret.hpp"
namespace sagitta {
namespace {

std::optional<LineSegment> joint_of(const Neck& neck, const Layout& layout) {
  if (neck.joint_fret && *neck.joint_fret <= last_fret(layout).fret) {
    const FretLine& fret = layout.frets[static_cast<std::size_t>(*neck.joint_fret)];
    return LineSegment{fret.bass_edge, fret.treble_edge};
  }
  if (!neck.body_at || *neck.body_at > layout.heel_end) return {};
  const double x = *neck.body_at;
  return LineSegment{{x, -layout.edge(0, x)}, {x, layout.edge(1, x)}};
}

std::optional<Loop> channel_of(const Neck& neck, const Layout& layout) {
  if (!neck.channel_width) return {};
  const double from = std::max(neck.channel_from.value_or(layout.nut_end), layout.nut_end);
  const double to = std::min(neck.channel_to.value_or(layout.heel_end), layout.heel_end);
  if (to <= from) return {};
  return rectangle({from, -*neck.channel_width / 2}, {to, *neck.channel_width / 2});
}

}  // namespace

MatingFace mating_face(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  const FretLine& nut = layout.frets.front();
  MatingFace face{layout.outline, {nut.bass_edge, nut.treble_edge}, {}, layout.pins, {}};
  if (!board.neck) return face;
  face.joint = joint_of(*board.neck, layout);
  face.channel = channel_of(*board.neck, layout);
  return face;
}

}  // namespace sagitta
