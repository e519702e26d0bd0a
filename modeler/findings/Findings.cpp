#include "findings/Findings.hpp"

#include <algorithm>

#include "board/Spelling.hpp"
#include "frets/FretFamilies.hpp"
#include "inlaid/InlayFamilies.hpp"
#include "neck/NeckFamilies.hpp"
#include "rules/Subject.hpp"
#include "wood/WoodFamilies.hpp"

namespace sagitta {
namespace {

void judge_limits(const Board& board, Judge& judge) {
  std::vector<std::string> names;
  for (const Rule& rule : catalogue) names.emplace_back(rule.name);
  for (const auto& [name, limit] : board.limits) {
    if (std::find(names.begin(), names.end(), name) != names.end()) continue;
    const std::string near = nearest_word(name, names);
    judge.hold(rule("unknown-limit"), 1, {{}, 0, {FeatureId::Kind::limit}, "limits." + name},
               "no finding is called \"" + name + "\", so this limit does nothing",
               near.empty() ? "take the name of a finding" : "was \"" + near + "\" meant?");
  }
}

Subject subject_of(const PreparedBoard& ready, const NeckReading* neck) {
  Subject subject{ready.only({}), neck, let_pieces(ready.board(), ready.inlays())};
  std::vector<Box> boxes;
  for (const LetPiece& let : subject.let) boxes.push_back(let.box());
  subject.let_places = BoxIndex(boxes);
  return subject;
}

}  // namespace

std::vector<Finding> findings_of(const PreparedBoard& ready, const NeckReading* neck) {
  const Subject subject = subject_of(ready, neck);
  Judge judge(ready.board());
  for (const auto family :
       {judge_scale,   judge_measured, judge_neck,   judge_neck_file, judge_channel,  judge_heights,
        judge_inlays,  judge_drawings, judge_sheets, judge_wire,      judge_seating,  judge_wood,
        judge_cuts,    judge_forms,    judge_holes,  judge_chips,     judge_strings,  judge_blank,
        judge_cutters, judge_ridges,   judge_order,  judge_markers,   judge_movement, judge_cautions})
    family(subject, judge);
  judge_limits(ready.board(), judge);
  std::vector<Finding> found = judge.take();
  const auto cost = [](const Finding& finding) {
    return std::find_if(catalogue.begin(), catalogue.end(), [&](const Rule& r) { return r.name == finding.name; });
  };
  std::stable_sort(found.begin(), found.end(), [&](const auto& a, const auto& b) { return cost(a) < cost(b); });
  return found;
}

}  // namespace sagitta
