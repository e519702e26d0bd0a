#include <algorithm>
#include <cmath>

#include "layout/LastFret.hpp"
#include "neck/NeckFamilies.hpp"
#include "neck/NeckWidth.hpp"
#include "plane/Tolerance.hpp"
#include "rules/Work.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

/// Where the board stands against the neck: at the nut, at a fret, at the body end.
struct Place {
  double x = 0;
  FeatureId id;
  std::string name;
};

std::vector<Place> places_of(const Subject& subject) {
  std::vector<Place> places{{0, {Kind::nut}, "the nut"}};
  for (const FretLine& fret : subject.prepared.layout().frets)
    if (fret.fret > 0 && !fret.on_tongue)
      places.push_back({fret.middle.x, {.kind = Kind::fret, .fret = fret.fret}, "fret " + std::to_string(fret.fret)});
  places.push_back({subject.prepared.board().neck->body_at.value_or(subject.prepared.layout().heel_end),
                    {Kind::body_end},
                    "the body end"});
  return places;
}

/// "; the two edges cross at x = 120 mm", or nothing.
std::string crossing_words(const Subject& subject, const Judge& judge) {
  const auto x = neck_crossing(subject.prepared);
  return x ? "; the board's edge and the neck's cross at x = " + judge.shown(*x) : std::string();
}

void judge_widths(const Subject& subject, Judge& judge) {
  const Neck& neck = *subject.prepared.board().neck;
  const Place *narrow = nullptr, *wide = nullptr;
  double narrowest = 0, widest = 0;
  const std::vector<Place> places = places_of(subject);
  for (const Place& place : places) {
    const auto bare = neck_width(subject.prepared, place.x);
    if (!bare) continue;
    // A rough neck is trimmed to the board: only what trimming leaves counts.
    const double board = 2 * subject.prepared.layout().half_width(place.x);
    const double left = *bare - (neck.state == NeckState::rough ? 2 * neck.trim : 0);
    if (!narrow || board - left < narrowest) narrow = &place, narrowest = board - left;
    if (!wide || board - *bare > widest) wide = &place, widest = board - *bare;
  }
  if (!narrow) return;
  const auto sizes = [&](const Place& place, double difference) {
    const double board = 2 * subject.prepared.layout().half_width(place.x);
    return "at " + place.name + " the board is " + judge.shown(board) + " wide and the neck " +
           judge.shown(board - difference);
  };
  const auto spot = [&](const Place& place) {
    return Spot{{place.x, subject.prepared.layout().edge(1, place.x)}, 0, place.id, place.name};
  };
  const double lack = judge.limit(rule("board-narrower-than-neck")) - narrowest;
  judge.hold(rule("board-narrower-than-neck"), narrowest, spot(*narrow),
             sizes(*narrow, narrowest) + (neck.state == NeckState::rough ? " after trimming" : "") +
                 ": the neck stands out" + crossing_words(subject, judge),
             "make the board " + judge.shown(lack) + " wider there", widened(subject, narrow->x, lack, judge));
  judge.hold(rule("board-overhangs-neck"), widest, spot(*wide),
             sizes(*wide, widest) + ": it stands " + judge.shown(widest / 2) + " over on each side" +
                 crossing_words(subject, judge),
             "make the board narrower there, or plan to trim it to the neck");
}

void judge_reach(const Subject& subject, double limit, Judge& judge) {
  const Point heel{bounds(subject.prepared.layout().outline).high.x, 0};
  const std::string most = " the neck allows " + judge.shown(limit);
  if (!subject.prepared.layout().slots.empty()) {
    const Slot& last = subject.prepared.layout().slots.back();
    const Point fret = last.bass_end.x > last.treble_end.x ? last.bass_end : last.treble_end;
    judge.hold(
        rule("last-fret-past-limit"), fret.x - limit,
        {fret, subject.prepared.surface().height(fret), {.kind = Kind::fret, .fret = last.fret}, "the last fret"},
        "the last fret reaches to " + judge.shown(fret.x) + " and" + most,
        "use fewer frets, or a scale that is shorter");
  }
  judge.hold(rule("heel-past-limit"), heel.x - limit, {heel, 0, {Kind::heel_end}, "the body end"},
             "the board reaches to " + judge.shown(heel.x) + " and" + most + ": it runs into what stands there",
             "make board.past_last_fret " + judge.shown(heel.x - limit) + " less",
             Fix{"board.past_last_fret", judge.down(subject.prepared.board().board.past_last_fret - heel.x + limit)});
}

void judge_joint(const Subject& subject, Judge& judge) {
  const Neck& neck = *subject.prepared.board().neck;
  if (!neck.joint_fret || !neck.body_at) return;
  const int fret = std::min(*neck.joint_fret, last_fret(subject.prepared.layout()).fret);
  const Point at = subject.prepared.layout().frets[static_cast<std::size_t>(fret)].middle;
  const double off = at.x - *neck.body_at;
  judge.hold(
      rule("joint-fret-off-body"), std::abs(off),
      {at, subject.prepared.surface().height(at), {.kind = Kind::fret, .fret = fret}, "fret " + std::to_string(fret)},
      "fret " + std::to_string(fret) + " stands " + judge.shown(std::abs(off)) + (off < 0 ? " short of" : " beyond") +
          " the body end at " + judge.shown(*neck.body_at),
      "set the neck so that the body end lies at " + judge.shown(at.x) + ", or change the scale");
}

}  // namespace

std::optional<double> neck_width(const PreparedBoard& ready, double x) {
  const Board& board = ready.board();
  if (!board.neck) return {};
  const Neck& neck = *board.neck;
  const bool at_nut = std::abs(x) <= tolerance::same;
  const bool at_body = neck.body_at && std::abs(x - *neck.body_at) <= tolerance::same;
  if (x > ready.layout().heel_end + tolerance::same) return {};
  if (at_nut && neck.nut_width) return neck.nut_width;
  if (at_body && neck.body_width) return neck.body_width;
  if (!neck.nut_width || !neck.body_width || !neck.body_at || x < 0 || x > *neck.body_at) return {};
  return *neck.nut_width + (*neck.body_width - *neck.nut_width) * x / *neck.body_at;
}

std::optional<double> neck_crossing(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  const double end = std::min(board.neck ? board.neck->body_at.value_or(0) : 0, layout.heel_end);
  const auto nut = neck_width(ready, 0), heel = neck_width(ready, end);
  if (!nut || !heel || end <= 0) return {};
  const double before = 2 * layout.half_width(0) - *nut, after = 2 * layout.half_width(end) - *heel;
  if (before * after >= 0) return {};
  return end * before / (before - after);
}

void judge_neck(const Subject& subject, Judge& judge) {
  if (!subject.prepared.board().neck) return;
  judge_widths(subject, judge);
  if (subject.prepared.board().neck->limit) judge_reach(subject, *subject.prepared.board().neck->limit, judge);
  judge_joint(subject, judge);
}

}  // namespace sagitta
