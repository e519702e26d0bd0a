#include <algorithm>
#include <cmath>
#include <numbers>

#include "board/SlotCut.hpp"
#include "frets/FretFamilies.hpp"
#include "frets/StringRun.hpp"
#include "layout/LastFret.hpp"
#include "layout/Taper.hpp"
#include "rules/Subject.hpp"
#include "rules/Work.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

/// What an outer string and the edge take of the distance between the string's middle and the edge, mm: half the
/// string's gauge, where gauges are given, and the roll or bevel of the edge.
double taken_of_margin(const Board& board, bool bass) {
  const std::vector<double>& gauges = board.strings.gauges;
  const double gauge = gauges.empty() ? 0 : bass ? gauges.front() : gauges.back();
  const double rounding = board.edges ? std::max(board.edges->roll, board.edges->bevel) : 0;
  return gauge / 2 + rounding;
}

void judge_margin(const Subject& subject, Judge& judge) {
  const Layout& layout = subject.prepared.layout();
  const bool left = subject.prepared.board().hand == Hand::left;
  const int bass = left ? 1 : 0, treble = 1 - bass;
  const double taken[2] = {taken_of_margin(subject.prepared.board(), !left),
                           taken_of_margin(subject.prepared.board(), left)};
  const auto margin = [&](int side, double x) { return layout.edge(side, x) - layout.spread(x) / 2 - taken[side]; };
  const auto nearest_x = [&](int side) {
    return margin(side, 0) < margin(side, layout.heel_end) ? 0 : layout.heel_end;
  };
  const bool symmetric = taper_in(layout).symmetric();
  const int side = margin(bass, nearest_x(bass)) < margin(treble, nearest_x(treble)) ? bass : treble;
  const double x = nearest_x(side), least = margin(side, x);
  const Point at{x, (side == 0 ? -1 : 1) * layout.spread(x) / 2};
  const bool alike = symmetric && taken[0] == taken[1];
  const std::string edge = subject.prepared.board().edges ? "edge's rounding" : "edge";
  const std::string string = side == bass ? "the outer bass string" : "the outer treble string";
  const Rule& near = rule("string-near-edge");
  const double lack = judge.limit(near) - least;
  judge.hold(near, least,
             {at, subject.prepared.surface().height(at), {Kind::strings}, alike ? "the outer strings" : string},
             (alike ? "the outer strings run " : string + " runs ") + judge.shown(least) + " from the " + edge +
                 " at the " + (x == 0 ? "nut" : "body end") + " (" + judge.shown(margin(side, 0)) + " at the nut, " +
                 judge.shown(margin(side, layout.heel_end / 2)) + " in the middle, " +
                 judge.shown(margin(side, layout.heel_end)) +
                 " at the body end): they slip off the board when they are pulled",
             symmetric ? "make the board " + judge.shown(2 * lack) + " wider there"
                       : "make the margin at that edge " + judge.shown(lack) + " larger there",
             widened(subject, x, 2 * lack, judge));
}

std::string string_name(const StringRun& run, const Layout& layout, int course) {
  const std::string side = run.at.y < 0 ? " at the lower edge" : " at the upper edge";
  if (run.string == 0) return "the bass string" + side;
  if (run.string + 1 == static_cast<int>(layout.strings.size())) return "the treble string" + side;
  if (course > 1)
    return "string " + std::to_string(run.string % course + 1) + " of course " +
           std::to_string(run.string / course + 1) + " from the bass side";
  return "string " + std::to_string(run.string + 1) + " from the bass side";
}

/// The radius that takes the hump away, and where it has to be reached.
struct Cure {
  std::string words;
  std::optional<Fix> fix;
};

Cure cure_of(const Subject& subject, const Judge& judge) {
  const bool last_fret = subject.prepared.board().surface.heel_at == HeelAt::last_fret;
  const double needed = judge.up(humpless_radius(subject.prepared));
  const std::string shown = judge.shown(needed);
  if (subject.prepared.board().surface.profile == Profile::compound)
    return {"make surface.radius_at_heel " + shown + ", or use profile = \"string-line\"",
            Fix{"surface.radius_at_heel", needed}};
  return {"use profile = \"string-line\", or \"compound\" with a radius of " + shown + " at the " +
              (last_fret ? "last fret" : "body end"),
          {}};
}

void judge_humps(const Subject& subject, Judge& judge) {
  const std::vector<StringRun> runs = string_runs(subject.prepared.layout(), subject.prepared.surface());
  if (runs.empty()) return;
  const auto worst = std::max_element(runs.begin(), runs.end(),
                                      [](const StringRun& a, const StringRun& b) { return a.hump < b.hump; });
  const std::string name = string_name(*worst, subject.prepared.layout(), subject.prepared.board().strings.course);
  const Cure cure = cure_of(subject, judge);
  judge.hold(rule("hump-under-string"), worst->hump,
             {worst->at, subject.prepared.surface().height(worst->at), {Kind::string, worst->string}, name},
             "under " + name + " the surface rises " + judge.shown(worst->hump) +
                 " above a straight line from the nut to " +
                 (subject.prepared.surface().fall_start        ? "where it falls away"
                  : subject.prepared.layout().frets.size() > 1 ? "the last fret"
                                                               : "the body end") +
                 ": the string buzzes there",
             cure.words, cure.fix);
}

/// The middle line of each course, bass first; of each string where they run singly.
std::vector<LineSegment> course_middles(const Layout& layout, int course) {
  const auto step = static_cast<std::size_t>(course);
  std::vector<LineSegment> middles;
  for (std::size_t i = 0; i + step <= layout.strings.size(); i += step) {
    const LineSegment &first = layout.strings[i], &last = layout.strings[i + step - 1];
    middles.push_back({between(first.a, last.a, 0.5), between(first.b, last.b, 0.5)});
  }
  return middles;
}

void judge_spacing(const Subject& subject, Judge& judge) {
  const int course = subject.prepared.board().strings.course;
  const std::vector<LineSegment> strings = course_middles(subject.prepared.layout(), course);
  const std::string each = course > 1 ? "courses " : "strings ";
  for (std::size_t i = 1; i < strings.size(); ++i) {
    const Point a = strings[i - 1].a, b = strings[i].a;
    const double apart = distance(a, b);
    if (!judge.breaks(rule("strings-close"), apart)) continue;
    const double heel = distance(strings[i - 1].b, strings[i].b);
    judge.hold(rule("strings-close"), apart,
               {between(a, b, 0.5), subject.prepared.surface().height(a), {Kind::strings}, "the strings at the nut"},
               each + std::to_string(i) + " and " + std::to_string(i + 1) + " from the bass side are " +
                   judge.shown(apart) + " apart at the nut and " + judge.shown(heel) + " at the saddle",
               "make strings.nut_spread larger, if the hand needs more room");
    return;
  }
}

void judge_saddle(const Subject& subject, Judge& judge) {
  const Layout& layout = subject.prepared.layout();
  const double height = saddle_height(subject.prepared.board(), subject.prepared.surface(), 0, 0);
  const double joint = layout.frets[static_cast<std::size_t>(joint_fret(subject.prepared))].middle.x;
  const double degree = (layout.mean_scale - joint) * std::tan(std::numbers::pi / 180);
  judge.hold(rule("saddle-height"), height, {{layout.mean_scale, 0}, height, {Kind::saddle}, "the saddle"},
             std::string("the plane of the ") +
                 (slot_cut(subject.prepared.board()) == SlotCut::all ? "fret tops" : "playing surface") +
                 " reaches the saddle " + judge.shown(height) +
                 " above the glue face; each degree of neck angle raises it by " + judge.shown(degree),
             "make bridge and neck angle agree with it before the neck is set");
}

void judge_fall(const Subject& subject, Judge& judge) {
  const Layout& layout = subject.prepared.layout();
  const Point end{layout.heel_end, 0};
  if (subject.prepared.board().surface.fall)
    judge.hold(rule("fall-large"), *subject.prepared.board().surface.fall,
               {end, subject.prepared.surface().height(end), {Kind::heel_end}, "the body end"},
               "the surface falls by " + judge.shown(*subject.prepared.board().surface.fall) +
                   " at the body end: the highest frets are too low to play",
               "make surface.fall smaller", Fix{"surface.fall", judge.down(judge.limit(rule("fall-large")))});
  if (!subject.prepared.board().neck || !subject.prepared.board().neck->joint_fret ||
      subject.prepared.surface().fall_start)
    return;
  const int joint = *subject.prepared.board().neck->joint_fret, past = last_fret(layout).fret - joint;
  if (past < 0) return;
  const Point at = layout.frets[static_cast<std::size_t>(joint)].middle;
  judge.hold(
      rule("no-fall-away"), past,
      {at, subject.prepared.surface().height(at), {.kind = Kind::fret, .fret = joint}, "fret " + std::to_string(joint)},
      std::to_string(past) + (past == 1 ? " fret lies" : " frets lie") +
          " over the body and the surface does not fall away there: a hump at the"
          " joint, where glue and weather move the neck, reaches the strings",
      "let the surface fall a little from fret " + std::to_string(joint) +
          " on with surface.fall, or level it after gluing");
}

}  // namespace

void judge_strings(const Subject& subject, Judge& judge) {
  if (subject.prepared.layout().strings.empty()) return;
  judge_margin(subject, judge);
  judge_humps(subject, judge);
  judge_spacing(subject, judge);
  judge_saddle(subject, judge);
  judge_fall(subject, judge);
}

}  // namespace sagitta
