#include "input/Touching.hpp"

#include <algorithm>
#include <set>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// The feature of the plan that the note speaks of; -1 when there is none.
int feature_of(const Plan& plan, const Fault& note) {
  for (int i = 0; i < static_cast<int>(plan.features.size()); ++i)
    if (plan.features[i].id == note.where) return i;
  return -1;
}

/// Pockets whose floor bounds the wood somewhere, at some stage.
std::set<FeatureId> cutting_pockets(const PreparedBoard& ready) {
  std::set<FeatureId> cutting;
  for (const Stage stage : stages_of(ready.board())) {
    const Plan& plan = ready.plan(stage);
    for (const Cell& cell : plan.cells)
      if (cell.feature >= 0 && plan.features[cell.feature].kind == Source::Kind::pocket)
        cutting.insert(plan.features[cell.feature].id);
  }
  return cutting;
}

/// The middle of what the feature drew in the plan.
Point place_of(const Plan& plan, int feature) {
  Box box;
  for (const PlanEdge& edge : plan.map.edges)
    if (edge.source.feature == feature) {
      box.add(plan.map.vertices[edge.from]);
      box.add(plan.map.vertices[edge.to]);
    }
  return box.low.x > box.high.x ? Point{} : between(box.low, box.high, 0.5);
}

Finding finding_of(const PreparedBoard& ready, const Plan& plan, int feature, const Fault& note) {
  Finding finding;
  finding.name = "touching";
  finding.severity = Severity::note;
  finding.limit = tolerance::snap;
  finding.unit = "mm";
  if (feature >= 0) {
    const Point place = place_of(plan, feature);
    const bool there = ready.surface().exists(place.x, place.y);
    finding.at = {place.x, place.y, there ? ready.surface().height(place) : ready.surface().thickness};
    finding.where = note.where;
    finding.feature = plan.features[feature].name;
  }
  finding.message = note.message;
  finding.cost = "the solid differs there from what a cutter leaves on the bench";
  finding.source = "common practice, no source";
  finding.suggestion = note.hint;
  return finding;
}

}  // namespace

std::vector<Finding> touching_findings(const PreparedBoard& ready) {
  const std::set<FeatureId> cutting = cutting_pockets(ready);
  std::vector<Finding> findings;
  Faults told;
  for (const Stage stage : stages_of(ready.board())) {
    const Plan& plan = ready.plan(stage);
    for (const Fault& note : plan.notes) {
      const int feature = feature_of(plan, note);
      const bool idle =
          feature >= 0 && plan.features[feature].kind == Source::Kind::pocket && !cutting.contains(note.where);
      if (idle || std::find(told.begin(), told.end(), note) != told.end()) continue;
      told.push_back(note);
      findings.push_back(finding_of(ready, plan, feature, note));
    }
  }
  return findings;
}

}  // namespace sagitta
