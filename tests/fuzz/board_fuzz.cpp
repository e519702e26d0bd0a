// Any bytes are either a board that is laid out, fitted, planned and judged, or are refused with reasons that lie in
// the file: no crash, no hang, bounded memory. What is sound can be written and read again.

#include <algorithm>
#include <cmath>
#include <string_view>

#include "Demand.hpp"
#include "Mutator.hpp"
#include "board/Edit.hpp"
#include "board/Writer.hpp"
#include "findings/Findings.hpp"
#include "input/PreparedFile.hpp"
#include "rules/Finding.hpp"

namespace sagitta::test {
namespace {

constexpr const char* nowhere = "/nonexistent";

void expect_told(const std::vector<Problem>& problems, std::string_view text) {
  const auto lines = std::count(text.begin(), text.end(), '\n') + 1;
  demand(!problems.empty(), "a refusal has a reason");
  for (const Problem& problem : problems) {
    demand(!problem.message.empty(), "a problem has a message");
    demand(problem.line >= 1 && problem.line <= lines && problem.column >= 1, "a problem lies in its file");
  }
}

void expect_kept_by_writing(std::string_view text, const BoardFile& file) {
  Board board = file.board;
  board.base.clear();
  const BoardFile again = read_board_text(write_board(board), "again.toml", nowhere);
  demand(again.sound(), "what was written is sound");
  demand(again.board == board, "what was written is the same board");
  demand(edit_text(std::string(text), file.board, file.board) == text, "an edit that changes nothing changes no text");
}

void expect_judged_or_refused(std::string_view text) {
  const BoardFile file = read_board_text(text, "board.toml", nowhere);
  if (!file.sound()) return expect_told(file.problems, text);
  expect_kept_by_writing(text, file);
  const auto prepared = prepare(file);
  if (const auto* problems = std::get_if<Problems>(&prepared)) return expect_told(*problems, text);
  const auto& ready = std::get<PreparedBoard>(prepared);
  for (const Finding& finding : findings_of(ready))
    demand(std::isfinite(finding.value) && !finding.message.empty(), "a finding has a value and a message");
}

}  // namespace
}  // namespace sagitta::test

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  sagitta::test::expect_judged_or_refused(std::string_view(reinterpret_cast<const char*>(data), size));
  return 0;
}
