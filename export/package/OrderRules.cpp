#include "package/OrderRules.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include "board/Length.hpp"
#include "drawing/DrawingParts.hpp"
#include "drawing/ResolvedSetup.hpp"
#include "layout/Measure.hpp"

namespace sagitta {
namespace {

std::string joined(const std::vector<std::string>& names) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

/// Not a number lies in no range. An option is in mm, whatever the board is in.
void judge_range(const std::string& what, double value, double least, double most) {
  if (value >= least && value <= most) return;
  throw OrderError(what + " of " + shown_length(value, Units::mm) + " cannot be had: it is at least " +
                   shown_length(least, Units::mm) + " and at most " + shown_length(most, Units::mm));
}

void judge_stages(const PreparedBoard& ready, const ExportOrder& order) {
  const std::vector<Stage> stages = stages_of(ready.board());
  const std::vector<Assembly> assemblies = assemblies_of(ready);
  std::vector<std::string> all;
  for (const Stage each : stages) all.emplace_back(name(each));
  for (const Assembly each : assemblies) all.emplace_back(name(each));
  const auto refuse = [&](std::string_view wanted) {
    throw OrderError("stage " + std::string(wanted) + ": this board has no such stage; it has " + joined(all));
  };
  for (const Stage each : order.stages)
    if (std::find(stages.begin(), stages.end(), each) == stages.end()) refuse(name(each));
  for (const Assembly each : order.assemblies)
    if (std::find(assemblies.begin(), assemblies.end(), each) == assemblies.end()) refuse(name(each));
}

void judge_setups(const PreparedBoard& ready, const ExportOrder& order) {
  std::vector<std::string> all;
  for (const ResolvedSetup& setup : setups_of(ready)) all.push_back(setup.folder);
  for (const std::string& wanted : order.drawing.setups)
    if (std::find(all.begin(), all.end(), wanted) == all.end())
      throw OrderError("set-up " + wanted + ": the board has no such set-up; it has " + joined(all));
}

}  // namespace

void judge_order(const PreparedBoard& ready, const ExportOrder& order) {
  judge_range("a deviation", order.deviation, least_deviation, most_deviation);
  if (const auto& clearance = order.drawing.part.clearance) {
    judge_range("a clearance", *clearance, least_clearance_again, most_clearance_again);
    if (order.drawing.part.pieces.empty())
      throw OrderError("a clearance goes with pieces: the pockets are cut, and only the pieces named are made again");
  }
  judge_stages(ready, order);
  judge_setups(ready, order);
  if (order.drawing.dowels && dowels_of(ready.layout()).empty())
    throw OrderError("dowels: the waste of this blank has no room for them: it needs " +
                     in_units(ready.board(), waste_for_dowels()) +
                     " beyond the radius cut at each end; take a longer or wider blank, or do without");
}

}  // namespace sagitta
