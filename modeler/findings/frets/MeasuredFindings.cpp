#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "board/SlotCut.hpp"
#include "frets/FretFamilies.hpp"
#include "frets/SlotCheck.hpp"
#include "layout/SlotLines.hpp"
#include "rules/Subject.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

std::string tenths(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f", std::abs(value));
  return text;
}

void judge_sensitivity(const Subject& subject, Judge& judge) {
  if (subject.prepared.layout().slots.empty() || slot_cut(subject.prepared.board()) != SlotCut::all) return;
  const FretLine& last = subject.prepared.layout().frets.back();
  const double cents = cents_per_tenth(subject.prepared.layout(), last.fret);
  char shown[32];
  std::snprintf(shown, sizeof shown, "%.2f", cents);
  judge.hold(
      rule("placement-sensitive"), cents,
      {last.middle,
       subject.prepared.surface().height(last.middle),
       {.kind = Kind::fret, .fret = last.fret},
       "fret " + std::to_string(last.fret)},
      judge.shown(0.1) + " off its place puts fret " + std::to_string(last.fret) + " " + shown + " cents out of tune",
      "check the machine's x over the whole length before the slots are cut");
}

void judge_worst(const Subject& subject, const std::vector<SlotError>& errors, Judge& judge) {
  const SlotError *far = &errors.front(), *false_note = far;
  for (const SlotError& error : errors) {
    if (std::abs(error.off) > std::abs(far->off)) far = &error;
    if (std::abs(error.cents) > std::abs(false_note->cents)) false_note = &error;
  }
  const auto told = [&](const Rule& rule, double value, const SlotError& error) {
    const Point at{error.place, 0};
    const std::string slot = error.fret == 0 ? "slot zero" : "the slot of fret " + std::to_string(error.fret);
    return judge.hold(
        rule, value, {at, subject.prepared.surface().height(at), {.kind = Kind::slot, .fret = error.fret}, slot},
        slot + " was cut " + judge.shown(std::abs(error.off)) + (error.off < 0 ? " short of" : " beyond") +
            " its place: the note is " + tenths(error.cents) + " cents " + (error.cents < 0 ? "flat" : "sharp"),
        "fill the slot and cut it again at " + judge.shown(error.place) + " from x = 0");
  };
  told(rule("slot-out-of-tune"), std::abs(false_note->cents), *false_note);
  told(rule("slot-misplaced"), std::abs(far->off), *far);
}

void judge_drift(const Subject& subject, const std::vector<SlotError>& errors, Judge& judge) {
  const SlotDrift drift = slot_drift(errors);
  char part[32];
  std::snprintf(part, sizeof part, "%.3f %%", 100 * std::abs(drift.per_mm));
  const Point at{errors.back().place, 0};
  judge.hold(rule("slots-drift"), std::abs(drift.growth()),
             {at, subject.prepared.surface().height(at), {Kind::slots}, "all slots"},
             "the slots' error grows by " + judge.shown(std::abs(drift.growth())) +
                 " from the first to the last: they were cut " + part + (drift.per_mm < 0 ? " too short" : " too long"),
             std::string("correct the machine's scale along x by ") + part +
                 ", and look whether file and program agree about mm and inches");
}

}  // namespace

void judge_measured(const Subject& subject, Judge& judge) {
  judge_sensitivity(subject, judge);
  const std::vector<SlotError> errors = slot_errors(subject.prepared.board().measured.slots, subject.prepared.layout());
  if (subject.prepared.board().measured.slots.empty() || errors.empty()) return;
  const int more =
      static_cast<int>(subject.prepared.board().measured.slots.size()) - slots_to_measure(subject.prepared.layout());
  judge.hold(rule("measured-slots-differ"), std::abs(more),
             {{}, subject.prepared.surface().thickness, {FeatureId::Kind::measured_slots}, "measured.slots"},
             std::to_string(subject.prepared.board().measured.slots.size()) +
                 " slots were measured and the board has " +
                 std::to_string(slots_to_measure(subject.prepared.layout())) +
                 ": each is compared with the slot of its place in the list",
             "give one x for each slot, from the nut on");
  judge_worst(subject, errors, judge);
  judge_drift(subject, errors, judge);
}

}  // namespace sagitta
