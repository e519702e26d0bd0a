#include <cmath>

#include "board/Materials.hpp"
#include "frets/FretFamilies.hpp"
#include "frets/Seating.hpp"
#include "rules/ShownMeasures.hpp"
#include "rules/Subject.hpp"

namespace sagitta {
/// Only where the wire's barbs were measured: without them nothing can be said of how the frets hold.
void judge_seating(const Subject& subject, Judge& judge) {
  const PreparedBoard& ready = subject.prepared;
  const auto seating = seating_of(ready);
  if (!ready.board().wire.barb_width || !seating) return;
  const bool composite = material(ready.board(), ready.board().blank.material).kind == MaterialKind::composite;
  const Slot& first = ready.layout().slots.front();
  const Point at = between(first.bass_end, first.treble_end, 0.5);
  const Spot spot{at, ready.surface().height(at), {FeatureId::Kind::slots}, "all slots"};
  judge.hold(rule("frets-bend-board"), seating->rise, spot,
             "estimate: frets that are " + judge.shown(seating->interference) +
                 " wider over their barbs than their slots bend the loose board backwards by at most " +
                 judge.shown(seating->rise) + "; " + shown_force(ready.board(), seating->load) +
                 " on its middle press it flat",
             std::string(composite ? "widen the slots and glue the frets in: " + ready.board().blank.material +
                                         " does not give way to the barbs"
                                   : "press the frets in after the board is glued to the neck, or widen the slots"));
  judge.hold(rule("frets-need-glue"), seating->interference, spot,
             "the tang over its barbs is " + judge.shown(-seating->interference) +
                 " narrower than the slots: the barbs do not hold",
             "glue the frets in, or take a wire with wider barbs");
}

}  // namespace sagitta
