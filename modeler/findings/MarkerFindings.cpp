#include <cstdlib>
#include <set>

#include "findings/Families.hpp"

namespace sagitta {
namespace {

/// Marked on most boards: 3 5 7 9 12, on a ukulele 10 for 9, and the same again above the octave.
bool is_usual(int fret) {
  static const std::set<int> in_octave{3, 5, 7, 9, 10, 0};
  return fret > 0 && in_octave.count(fret % 12) > 0;
}

int nearest_usual(int fret) {
  for (int by = 0;; ++by)
    for (const int near : {fret + by, fret - by})
      if (is_usual(near)) return near;
}

void judge_fret(int fret, const Spot& spot, Judge& judge) {
  const int usual = nearest_usual(fret);
  judge.hold(rule("unusual-marker"), std::abs(fret - usual), spot,
             spot.feature + " marks a fret that seldom carries a mark: a player may look for it at fret " +
                 std::to_string(usual),
             "make sure that it is meant");
}

}  // namespace

void judge_markers(const Subject& subject, Judge& judge) {
  const Scale& scale = subject.board.scale;
  if (!scale.cents.empty() || scale.steps_per_octave.value_or(12) != 12) return;
  std::set<int> told;
  for (const Marker& marker : subject.layout.markers)
    if (told.insert(marker.fret).second)
      judge_fret(marker.fret, {marker.centre, subject.surface.height(marker.centre), inlay_name(marker)}, judge);
  for (const SideDot& dot : subject.layout.side_dots)
    if (told.insert(dot.fret).second)
      judge_fret(dot.fret,
                 {dot.mouth, subject.surface.height(dot.mouth) / 2, "the side dot at fret " + std::to_string(dot.fret)},
                 judge);
}

}  // namespace sagitta
