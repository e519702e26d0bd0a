#pragma once

/// Whether the next cut may be made, now that something was measured.

#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "input/PreparedFile.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// A number of the cut that is not as it was planned; mm. None: the one board has it and the other has not.
struct ChangedNumber {
  std::string what;
  std::optional<double> planned, measured;
};

/// The answer, with what it rests on.
struct Release {
  enum class Answer { as_planned, changed, refused };
  Answer answer = Answer::as_planned;
  Operation operation{};
  std::string reason;                  ///< of a refusal, a sentence
  std::vector<ChangedNumber> changes;  ///< of a change
  Problems problems;                   ///< that refuse it
  std::vector<Finding> stops;          ///< that refuse it
};

/// Refused: measured.done names the operation, or lacks one that work.order puts before it (gluing in the pieces is no
/// cut and may be missing); the board as measured cannot be built; or one of its findings says stop. Changed: a number
/// of the cut differs from the planned board's by more than tolerance::vertex.
Release release_before(const BoardFile& file, Operation operation, Outside outside = Outside::refused);

/// The same for a board that is prepared already, with its findings.
Release release_before(const PreparedBoard& ready, const std::vector<Finding>& findings, Operation operation);

/// The cut that comes next: the first of work.order that measured.done does not name. Gluing in the pieces is none, nor
/// are pockets on a board without inlays. Nothing where all is cut.
std::optional<Operation> next_cut(const Board& board);

/// One line for reading, in the board's units.
std::string release_text(const Release& release, Units units);
/// {operation, answer: "as-planned" | "changed" | "refused", reason, changes: [{what, planned, measured, unit}],
/// problems, findings} as check_json; mm.
nlohmann::ordered_json release_json(const Release& release);

}  // namespace sagitta
