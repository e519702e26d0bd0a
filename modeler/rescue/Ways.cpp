#include "rescue/Ways.hpp"

#include <algorithm>
#include <utility>

#include "board/BoardFile.hpp"
#include "board/Writer.hpp"
#include "findings/Findings.hpp"

namespace sagitta {
namespace {

bool stops(const Finding& finding) { return finding.severity == Severity::stop; }

/// Takes over into the plan what was measured, where nothing stands against it.
void go_on(Ways& ways) {
  if (!ways.ready() || ways.planned().measured == Measured()) return;
  if (ways.ready()->board().board.thickness < ways.planned().board.thickness)
    return;  // surface_ways says what it costs
  Way way;
  way.name = "go-on";
  way.edits = edits_between(ways.planned(), ways.ready()->board());
  if (way.edits.empty()) return;
  way.message = "go on with the board as it was measured: what is still to be cut is planned from it";
  way.cost = "nothing; the numbers of the next cuts change";
  way.effort = WayEffort::numbers;
  ways.offer(std::move(way));
}

}  // namespace

Judged judged(const Board& board, Outside outside) {
  const auto prepared = prepare(board, outside);
  if (const auto* faults = std::get_if<Faults>(&prepared)) return *faults;
  const PreparedBoard& ready = std::get<PreparedBoard>(prepared);
  if (Faults faults = ready.stage_faults(); !faults.empty()) return faults;
  return findings_of(ready);
}

Ways::Ways(const Board& planned, const JudgeBoard& judge)
    : planned_(planned), judge_(judge ? judge : [](const Board& board) { return judged(board); }) {
  auto prepared = prepare(planned);
  if (auto* faults = std::get_if<Faults>(&prepared)) {
    faults_ = std::move(*faults);
    return;
  }
  ready_ = std::get<PreparedBoard>(std::move(prepared));
  Judged found = judge_(planned);
  if (auto* faults = std::get_if<Faults>(&found))
    faults_ = std::move(*faults);
  else
    findings_ = std::get<std::vector<Finding>>(std::move(found));
}

bool Ways::has_fault(FaultCode code) const {
  return std::any_of(faults_.begin(), faults_.end(), [&](const Fault& fault) { return fault.code == code; });
}

bool Ways::has_finding(std::string_view name) const {
  return std::any_of(findings_.begin(), findings_.end(), [&](const Finding& each) { return each.name == name; });
}

std::optional<std::vector<Finding>> Ways::proved(const Board& board) const {
  const BoardFile read = read_board_text(write_board(board), "board.toml", board.folder, Outside::allowed);
  if (!read.sound()) return std::nullopt;
  Judged found = judge_(board);
  auto* findings = std::get_if<std::vector<Finding>>(&found);
  if (!findings || std::any_of(findings->begin(), findings->end(), stops)) return std::nullopt;
  return std::move(*findings);
}

bool Ways::offer(Way way) {
  if (way.edits.empty()) return false;
  auto findings = proved(edited(planned_, way.edits));
  if (!findings) return false;
  way.findings = std::move(*findings);
  ways_.push_back(std::move(way));
  return true;
}

int Ways::new_looks(const Way& way) const {
  return static_cast<int>(std::count_if(way.findings.begin(), way.findings.end(), [&](const Finding& each) {
    return each.severity == Severity::look && !has_finding(each.name);
  }));
}

std::vector<Way> Ways::best_first() && {
  std::stable_sort(ways_.begin(), ways_.end(), [&](const Way& a, const Way& b) {
    return std::pair(a.effort, new_looks(a)) < std::pair(b.effort, new_looks(b));
  });
  return std::move(ways_);
}

std::vector<Way> ways_out(const Board& board, const JudgeBoard& judge) {
  Ways ways(board, judge);
  go_on(ways);
  for (const auto kind : {slot_ways, blank_ways, pocket_ways, chip_ways, surface_ways, neck_ways}) kind(ways);
  return std::move(ways).best_first();
}

}  // namespace sagitta
