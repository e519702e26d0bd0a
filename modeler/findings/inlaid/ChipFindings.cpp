#include "inlaid/ChipCover.hpp"
#include "inlaid/InlayFamilies.hpp"

namespace sagitta {

void judge_chips(const Subject& subject, Judge& judge) {
  for (const Chip& chip : chips_of(subject.prepared.board())) {
    const double left = chip_left(subject.prepared, chip);
    const Surface& surface = subject.prepared.surface();
    const double z = surface.exists(chip.middle.x, chip.middle.y) ? surface.height(chip.middle) : 0;
    judge.hold(rule("chip-left"), left, {chip.middle, z, {FeatureId::Kind::board}, "a chip"},
               "the chip at x = " + judge.shown(chip.middle.x) + ", y = " + judge.shown(chip.middle.y) + " reaches " +
                   judge.shown(left) + " beyond what covers it",
               "cover it with an inlay or a binding; sagitta rescue lists the smallest that do");
  }
}

}  // namespace sagitta
