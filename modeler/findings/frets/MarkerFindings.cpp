#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <set>

#include "frets/FretFamilies.hpp"
#include "rules/Subject.hpp"

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

void judge_centre(const Subject& subject, const Marker& marker, Judge& judge) {
  const Inlay& inlay = subject.prepared.board().inlays[marker.inlay];
  const double off = std::max(std::abs(inlay.shift_along), std::abs(inlay.shift_across));
  judge.hold(rule("marker-off-centre"), off,
             {marker.centre, subject.prepared.surface().height(marker.centre), id_of(marker), inlay_name(marker)},
             inlay_name(marker) + " is shifted by " + judge.shown(std::abs(inlay.shift_along)) + " along and " +
                 judge.shown(std::abs(inlay.shift_across)) + " across from the middle of its space",
             "make sure that it is meant");
}

void judge_octave(const Subject& subject, const std::set<int>& marked, Judge& judge) {
  constexpr int octave = 12;
  if (marked.empty() || subject.prepared.board().scale.frets < octave || marked.count(octave)) return;
  int nearest = *marked.begin();
  for (const int fret : marked)
    if (std::abs(fret - octave) < std::abs(nearest - octave)) nearest = fret;
  const Point at = subject.prepared.layout().frets[octave].middle;
  judge.hold(rule("octave-unmarked"), std::abs(nearest - octave),
             {at, subject.prepared.surface().height(at), {.kind = FeatureId::Kind::fret, .fret = octave}, "fret 12"},
             "no mark stands at the octave, fret 12; the nearest is at fret " + std::to_string(nearest),
             "mark fret 12, or make sure that it is meant");
}

}  // namespace

void judge_markers(const Subject& subject, Judge& judge) {
  std::set<int> shifted;
  for (const Marker& marker : subject.prepared.layout().markers)
    if (shifted.insert(marker.inlay).second) judge_centre(subject, marker, judge);
  const Scale& scale = subject.prepared.board().scale;
  if (!scale.cents.empty() || scale.steps_per_octave.value_or(12) != 12) return;
  std::set<int> told;
  for (const Marker& marker : subject.prepared.layout().markers)
    if (told.insert(marker.fret).second)
      judge_fret(marker.fret,
                 {marker.centre, subject.prepared.surface().height(marker.centre), id_of(marker), inlay_name(marker)},
                 judge);
  for (const SideDot& dot : subject.prepared.layout().side_dots)
    if (told.insert(dot.fret).second)
      judge_fret(dot.fret,
                 {dot.mouth, subject.prepared.surface().height(dot.mouth) / 2, id_of(dot),
                  "the side dot at fret " + std::to_string(dot.fret)},
                 judge);
  judge_octave(subject, told, judge);
}

}  // namespace sagitta
