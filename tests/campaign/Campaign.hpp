#pragma once

/// A long run over random boards: a range of numbers, judged one after the other in a process of their own, so that a
/// board that crashes the kernel or never ends is one more record. What has been judged stands in a log; the same call
/// goes on where the last one was stopped.

#include <filesystem>
#include <functional>
#include <ostream>
#include <vector>

#include "campaign/Record.hpp"
#include "random/RandomBoard.hpp"

namespace sagitta::campaign {

struct Range {
  random_boards::Space space = random_boards::Space::near;
  std::uint64_t first = 1;
  int count = 0;
};

/// What a board is asked: the stages, all where none is named, with the pieces; one stage, chosen by the number,
/// through STEP as well.
random_boards::Verdict judged(std::uint64_t number, const Board& board, const std::vector<Stage>& stages);

/// Judges a board; may end the process.
using Judge = std::function<random_boards::Verdict(std::uint64_t, const Board&, const std::vector<Stage>&)>;

struct Settings {
  Judge judge = judged;
  double most_seconds = 100;  ///< of the processor, for one board; then its process is ended
  int shrinking = 60;         ///< boards that may be judged to make a failing one smaller
};

/// Judges what the log does not have yet and returns the records of the whole range in order. `folder` gets the log,
/// SPACE-FIRST-COUNT.log, and for each board that failed SPACE-NUMBER.toml, made small, what was wrong in its first
/// lines. A line for each failure is printed as it comes.
std::vector<Record> run(const Range& range, const std::filesystem::path& folder, std::ostream& out,
                        const Settings& settings = {});

/// Boards and stages, how many of each outcome, refusals by key, the slowest board, the worst volume.
void print(const std::vector<Record>& records, std::ostream& out);

std::string_view name(random_boards::Space space);
std::optional<random_boards::Space> space_named(std::string_view name);

}  // namespace sagitta::campaign
