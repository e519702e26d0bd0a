#include <algorithm>
#include <cmath>
#include <limits>

#include "board/SlotCut.hpp"
#include "frets/FretFamilies.hpp"
#include "layout/SlotLines.hpp"
#include "plane/Tolerance.hpp"
#include "rules/Subject.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

constexpr double octave = 1200;
/// A fret nearer to the octave than a quarter tone is meant to be the octave. Cents.
constexpr double quarter_tone = 50;

void judge_octave(const Subject& subject, Judge& judge) {
  const auto& frets = subject.prepared.layout().frets;
  const auto nearest = std::min_element(frets.begin(), frets.end(), [](const FretLine& a, const FretLine& b) {
    return std::abs(a.cents - octave) < std::abs(b.cents - octave);
  });
  if (nearest == frets.end() || std::abs(nearest->cents - octave) > quarter_tone) return;
  const double bass = nearest->bass_from_nut - subject.prepared.layout().bass_scale / 2;
  const double treble = nearest->treble_from_nut - subject.prepared.layout().treble_scale / 2;
  const double off = std::abs(bass) > std::abs(treble) ? bass : treble;
  const std::string fret = "fret " + std::to_string(nearest->fret);
  judge.hold(rule("octave-off"), std::abs(off),
             {nearest->middle,
              subject.prepared.surface().height(nearest->middle),
              {.kind = Kind::fret, .fret = nearest->fret},
              fret},
             fret + " stands " + judge.shown(std::abs(off)) + (off < 0 ? " short of" : " beyond") +
                 " half the scale: every octave on this board is out of tune",
             subject.prepared.board().scale.cents.empty() ? "take steps_per_octave = 12"
                                                          : "set its place in scale.cents to 1200");
}

/// Least distance between the middle lines of two slots, and where.
struct Gap {
  double width = std::numeric_limits<double>::infinity();
  Point at;
  int fret = 0;
};

/// What lies between two slots, where it is less than `gap`.
void narrow(const Slot& a, const Slot& b, Gap& gap) {
  const double width =
      distance(RoundedPolygon{{a.bass_end, a.treble_end}, 0}, RoundedPolygon{{b.bass_end, b.treble_end}, 0});
  if (width >= gap.width) return;
  const bool at_bass = distance(a.bass_end, b.bass_end) < distance(a.treble_end, b.treble_end) - tolerance::same;
  const bool at_treble = distance(a.treble_end, b.treble_end) < distance(a.bass_end, b.bass_end) - tolerance::same;
  const double part = at_bass ? 0 : at_treble ? 1 : 0.5;
  const Point on_a = between(a.bass_end, a.treble_end, part), on_b = between(b.bass_end, b.treble_end, part);
  gap = {width, between(on_a, on_b, 0.5), b.fret};
}

Gap narrowest_gap(const Layout& layout) {
  Gap gap;
  std::size_t before = 0, first = 0;  // the first parts of the fret before, and of this one
  for (std::size_t i = 0; i < layout.slots.size(); ++i) {
    if (layout.slots[i].part == 0) before = first, first = i;
    for (std::size_t j = before; j < first; ++j) narrow(layout.slots[j], layout.slots[i], gap);
  }
  return gap;
}

void judge_spacing(const Subject& subject, Judge& judge) {
  if (subject.prepared.layout().slots.size() < 2 || slot_cut(subject.prepared.board()) != SlotCut::all) return;
  const Gap gap = narrowest_gap(subject.prepared.layout());
  const double free = gap.width - subject.prepared.board().wire.crown_width;
  const Spot spot{gap.at,
                  subject.prepared.surface().height(gap.at),
                  {.kind = Kind::fret_space, .fret = gap.fret},
                  "space " + std::to_string(gap.fret)};
  const std::string slots = "the slots of " + spot.feature + " are " + judge.shown(gap.width) + " apart";
  if (judge.hold(rule("crowns-meet"), free, spot,
                 slots + " and the crown is " + judge.shown(subject.prepared.board().wire.crown_width) +
                     " wide: two frets do not fit side by side",
                 "use fewer frets or a narrower wire"))
    return;
  judge.hold(rule("narrow-fret-space"), free, spot,
             slots + ", so that " + judge.shown(free) + " stay between the crowns: hardly room for a finger",
             "use fewer frets or a narrower wire");
}

}  // namespace

void judge_scale(const Subject& subject, Judge& judge) {
  judge_octave(subject, judge);
  judge_spacing(subject, judge);
}

}  // namespace sagitta
