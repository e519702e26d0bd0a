#include "release/Release.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "input/BoardFindings.hpp"
#include "package/Report.hpp"
#include "plane/Tolerance.hpp"
#include "release/CutNumbers.hpp"
#include "rules/Work.hpp"
#include "text/Measures.hpp"
#include "text/TerminalText.hpp"

namespace sagitta {
namespace {

bool is_in(const std::vector<Operation>& list, Operation operation) {
  return std::find(list.begin(), list.end(), operation) != list.end();
}

/// Whether the operation takes no wood from this board.
bool is_idle(const Board& board, Operation operation) {
  return operation == Operation::inlay || (operation == Operation::pockets && board.inlays.empty());
}

/// Why the order of work does not let it be the next cut; empty: it may be.
std::string out_of_turn(const Board& board, Operation operation) {
  const std::vector<Operation>& done = board.measured.done;
  const std::string name(operation_name(operation));
  if (!is_in(board.order, operation)) return "work.order does not name " + name;
  if (is_in(done, operation)) return "measured.done says that " + name + " is cut already";
  if (done.empty()) return {};
  for (const Operation each : board.order) {
    if (each == operation) return {};
    if (!is_idle(board, each) && !is_in(done, each))
      return std::string(operation_name(each)) + " comes before it in work.order, and measured.done does not name it";
  }
  return {};
}

std::vector<ChangedNumber> changes_between(const std::vector<CutNumber>& planned,
                                           const std::vector<CutNumber>& measured) {
  std::vector<ChangedNumber> changes;
  const auto value_in = [](const std::vector<CutNumber>& list, const std::string& what) -> std::optional<double> {
    const auto at = std::find_if(list.begin(), list.end(), [&](const CutNumber& each) { return each.what == what; });
    return at == list.end() ? std::nullopt : std::optional(at->value);
  };
  for (const CutNumber& number : measured) {
    const auto before = value_in(planned, number.what);
    if (!before || std::abs(*before - number.value) > tolerance::vertex)
      changes.push_back({number.what, before, number.value});
  }
  for (const CutNumber& number : planned)
    if (!value_in(measured, number.what)) changes.push_back({number.what, number.value, std::nullopt});
  return changes;
}

/// The numbers of the board as it was planned, before anything was measured.
std::vector<CutNumber> planned_numbers(const PreparedBoard& measured, Operation operation) {
  BoardFile planned;
  planned.board = measured.planned();
  planned.board.measured = {};
  const auto prepared = prepare(planned, measured.outside());
  const auto* ready = std::get_if<PreparedBoard>(&prepared);
  return ready ? cut_numbers(*ready, operation) : std::vector<CutNumber>();
}

Release refused(Operation operation, std::string reason) {
  return {Release::Answer::refused, operation, std::move(reason), {}, {}, {}};
}

std::string_view answer_word(Release::Answer answer) {
  return answer == Release::Answer::as_planned ? "as-planned"
         : answer == Release::Answer::changed  ? "changed"
                                               : "refused";
}

}  // namespace

Release release_before(const BoardFile& file, Operation operation, Outside outside) {
  if (file.sound())
    if (std::string reason = out_of_turn(file.board, operation); !reason.empty())
      return refused(operation, std::move(reason));
  const auto prepared = prepare(file, outside);
  if (const auto* problems = std::get_if<Problems>(&prepared)) {
    Release release = refused(operation, problems->front().message);
    release.problems = *problems;
    return release;
  }
  const PreparedBoard& ready = std::get<PreparedBoard>(prepared);
  return release_before(ready, board_findings(ready), operation);
}

Release release_before(const PreparedBoard& ready, const std::vector<Finding>& findings, Operation operation) {
  if (std::string reason = out_of_turn(ready.planned(), operation); !reason.empty())
    return refused(operation, std::move(reason));
  Release release;
  release.operation = operation;
  for (const Finding& finding : findings)
    if (finding.severity == Severity::stop) release.stops.push_back(finding);
  if (!release.stops.empty()) {
    release.answer = Release::Answer::refused;
    release.reason = release.stops.front().message;
    return release;
  }
  if (ready.planned().measured == Measured()) return release;
  release.changes = changes_between(planned_numbers(ready, operation), cut_numbers(ready, operation));
  if (!release.changes.empty()) release.answer = Release::Answer::changed;
  return release;
}

std::optional<Operation> next_cut(const Board& board) {
  for (const Operation each : board.order)
    if (!is_idle(board, each) && !is_in(board.measured.done, each)) return each;
  return std::nullopt;
}

std::string release_text(const Release& release, Units units) {
  const std::string name(operation_name(release.operation));
  if (release.answer == Release::Answer::as_planned) return name + ": may be cut as planned\n";
  if (release.answer == Release::Answer::refused)
    return name + ": must not be cut: " + terminal_text(release.reason) + "\n";
  std::string text;
  const auto shown = [&](const std::optional<double>& value) {
    return value ? measured_length(units, *value) : "none";
  };
  for (const ChangedNumber& change : release.changes)
    text +=
        (text.empty() ? "" : "; ") + change.what + " " + shown(change.measured) + ", planned " + shown(change.planned);
  return name + ": may be cut with changed numbers: " + terminal_text(text) + "\n";
}

nlohmann::ordered_json release_json(const Release& release) {
  nlohmann::ordered_json changes = nlohmann::ordered_json::array();
  const auto number = [](const std::optional<double>& value) {
    return value ? nlohmann::ordered_json(*value) : nlohmann::ordered_json(nullptr);
  };
  for (const ChangedNumber& change : release.changes)
    changes.push_back({{"what", change.what},
                       {"planned", number(change.planned)},
                       {"measured", number(change.measured)},
                       {"unit", "mm"}});
  nlohmann::ordered_json json = {{"operation", operation_name(release.operation)},
                                 {"answer", answer_word(release.answer)},
                                 {"reason", release.reason},
                                 {"changes", changes}};
  json.update(check_json(release.problems, release.stops));
  return json;
}

}  // namespace sagitta
