#include <algorithm>
#include <cmath>
#include <numbers>

#include "board/Length.hpp"
#include "neck/HeightChain.hpp"
#include "neck/NeckFamilies.hpp"
#include "neck/NeckShape.hpp"
#include "rules/Subject.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

double in_degrees(double radians) { return radians * 180 / std::numbers::pi; }
std::string degrees(double radians) { return decimal(std::round(100 * in_degrees(radians)) / 100) + " degrees"; }

void judge_buzz(const HeightChain& chain, Judge& judge) {
  const StringGap& least = chain.least_ahead;
  const auto& frets = chain.strings[static_cast<std::size_t>(least.string)].frets;
  const auto fret = std::find_if(frets.begin(), frets.end(), [&](const FretHeight& f) { return f.fret == least.fret; });
  const std::string held = least.fretted == 0 ? "open" : "held down at fret " + std::to_string(least.fretted);
  judge.hold(rule("buzz-at-fret"), least.gap,
             {fret->at, fret->top, {.kind = Kind::fret, .fret = least.fret}, "fret " + std::to_string(least.fret)},
             "string " + std::to_string(least.string + 1) + " from the bass side, " + held + ", passes " +
                 judge.shown(least.gap) + " over the top of fret " + std::to_string(least.fret) +
                 (least.gap < 0 ? ": it lies on it" : ""),
             "raise height.action, or bring height.relief between " + judge.shown(chain.least_relief) + " and " +
                 judge.shown(chain.most_relief));
}

/// What can be done about a bridge that does not suit the neck, besides another bridge.
std::string other_way(const HeightChain& chain, NeckJoint joint, const Judge& judge) {
  if (joint == NeckJoint::through) return "; a neck through the body keeps its angle";
  if (!chain.needed_angle) return "";
  return ", or neck.angle " + degrees(*chain.needed_angle) +
         (joint == NeckJoint::bolted
              ? ": a wedge that grows by " + judge.shown(100 * std::abs(std::tan(*chain.needed_angle - chain.angle))) +
                    " over " + judge.shown(100)
              : "");
}

void judge_bridge(const Subject& subject, const HeightChain& chain, Judge& judge) {
  if (!chain.bridge || !chain.needed_bridge) return;
  const auto& neck = subject.prepared.board().neck;
  const double lack = *chain.needed_bridge - *chain.bridge;
  const Spot spot{{chain.body->saddle_x, 0}, chain.saddle_z, {Kind::saddle}, "the saddle"};
  const std::string so = "for the action the saddle must stand " + judge.shown(*chain.needed_bridge) +
                         " above the body; with height.bridge " + judge.shown(*chain.bridge) +
                         " the action in the middle becomes " + judge.shown(*chain.bridge_action);
  const std::string cure = "make height.bridge " + judge.shown(*chain.needed_bridge) +
                           other_way(chain, neck ? neck->joint : NeckJoint::none, judge);
  const Fix fix{"height.bridge", *chain.needed_bridge};
  judge.hold(rule("bridge-too-low"), lack, spot, so + ": the bridge is too low", cure, fix);
  judge.hold(rule("bridge-too-high"), -lack, spot, so + ": the bridge is too high", cure, fix);
  if (!chain.needed_angle || (neck && neck->angle_degrees)) return;
  judge.hold(rule("angle-needed"), std::abs(in_degrees(*chain.needed_angle)), spot,
             "with this bridge and this action the neck must lie " +
                 std::string(*chain.needed_angle > 0 ? "back" : "forward") + " by " +
                 degrees(std::abs(*chain.needed_angle)) + ", and no angle is given",
             "give neck.angle = " + degrees(*chain.needed_angle) + ", or make height.bridge " +
                 judge.shown(*chain.needed_bridge),
             neck ? std::optional(Fix{"neck.angle", in_degrees(*chain.needed_angle)}) : std::nullopt);
}

/// Depth of neck and board together at one of the two places, as given, else as the neck's file has it.
std::optional<double> whole_depth(const Subject& subject, std::size_t place, double surface) {
  const Neck& neck = *subject.prepared.board().neck;
  if (const auto& given = place == 0 ? neck.depth_first : neck.depth_twelfth) return given;
  if (!subject.neck || !subject.neck->shape || !is_measured(*subject.neck->shape)) return {};
  const auto& depths = subject.neck->shape->depths;
  if (place >= depths.size() || depths[place] <= 0) return {};
  return depths[place] + surface;
}

void judge_rod(const Subject& subject, Judge& judge) {
  const PreparedBoard& ready = subject.prepared;
  if (!ready.board().neck || !ready.board().neck->channel_depth) return;
  const Neck& neck = *ready.board().neck;
  constexpr int frets[] = {1, 12};
  for (std::size_t i = 0; i < 2; ++i) {
    if (frets[i] >= static_cast<int>(ready.layout().frets.size())) continue;
    const Point at = ready.layout().frets[static_cast<std::size_t>(frets[i])].middle;
    if (at.x < neck.channel_from.value_or(at.x) || at.x > neck.channel_to.value_or(at.x)) continue;
    const double board = ready.surface().height(at);
    const auto whole = whole_depth(subject, i, board);
    if (!whole) continue;
    const double left = *whole - board - *neck.channel_depth;
    const std::string fret = "fret " + std::to_string(frets[i]);
    judge.hold(rule("neck-too-thin-at-rod"), left,
               {at, -*neck.channel_depth, {.kind = Kind::fret, .fret = frets[i]}, fret},
               "at " + fret + " neck and board are " + judge.shown(*whole) + " deep, the board takes " +
                   judge.shown(board) + " of it and the rod channel " + judge.shown(*neck.channel_depth) + ": " +
                   judge.shown(left) + " of wood is left under the rod",
               "make neck.channel_depth " +
                   judge.shown(std::max(0.0, *neck.channel_depth - judge.limit(rule("neck-too-thin-at-rod")) + left)) +
                   " or less, or the neck deeper there");
  }
}

void judge_end(const Subject& subject, Judge& judge) {
  const auto room = end_room(subject.prepared);
  if (!room) return;
  const double joint = joint_place(subject.prepared), end = subject.prepared.layout().heel_end;
  const bool at_joint = *room == *subject.prepared.board().height->body_step;
  judge.hold(rule("end-into-body"), *room, {{at_joint ? joint : end, 0}, 0, {Kind::heel_end}, "the body end"},
             "from the joint at x = " + judge.shown(joint) +
                 " to its end the board lies over the body, and the body's top stands up to " + judge.shown(-*room) +
                 " above the glue face there",
             "cut the body's top down under the board's end, or end the board at the joint");
}

}  // namespace

void judge_heights(const Subject& subject, Judge& judge) {
  judge_rod(subject, judge);
  judge_end(subject, judge);
  const auto chain = height_chain(subject.prepared);
  if (!chain) return;
  judge_buzz(*chain, judge);
  judge_bridge(subject, *chain, judge);
}

}  // namespace sagitta
