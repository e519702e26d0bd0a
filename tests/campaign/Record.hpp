#pragma once

/// What became of one board of a campaign, as a line of its log.

#include <cstdint>
#include <map>
#include <optional>
#include <string>

#include "random/Trial.hpp"

namespace sagitta::campaign {

enum class Outcome {
  sound,    ///< every stage is sound or refused by a documented fault
  unsound,  ///< some solid, mesh, STEP copy or volume is wrong
  threw,    ///< a step threw: a fault of the program
  slow,     ///< a stage took longer than `patience`
  died      ///< the process was killed, by a signal of its own or because it came to no end
};

struct Record {
  std::uint64_t number = 0;
  Outcome outcome = Outcome::sound;
  int stages = 0;                       ///< judged, refused ones included
  double seconds = 0;                   ///< of the slowest stage: plan, lift, solid and mesh
  double worst = 0;                     ///< largest relative difference of a volume from quadrature
  std::map<std::string, int> refusals;  ///< stages refused, by the fault's key
  friend bool operator==(const Record&, const Record&) = default;
};

/// A stage may take this long, s.
inline constexpr double patience = 5;

Record record_of(std::uint64_t number, const random_boards::Verdict& verdict);

/// One line without its end: number, outcome, stages, seconds, worst, then KEY=COUNT for each refusal.
std::string line(const Record& record);
/// Empty where the text is no such line.
std::optional<Record> record_from(const std::string& line);

std::string_view name(Outcome outcome);

}  // namespace sagitta::campaign
