#pragma once

/// Findings: what would go wrong with a sound board, before wood is cut. Each compares one measured value with a limit.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "board/Board.hpp"
#include "board/FeatureId.hpp"
#include "prepared/PreparedBoard.hpp"
#include "rules/Fix.hpp"

namespace sagitta {

struct NeckReading;

enum class Severity {
  stop,  ///< the board, the neck or the intonation is lost
  look,  ///< hours are lost, or the board is weaker than is usual: look at it before cutting
  note   ///< worth knowing
};

struct Finding {
  std::string name;  ///< stable; also the key of its limit in [limits]
  Severity severity = Severity::note;
  double value = 0;            ///< measured; lengths in mm whatever the file's units
  double limit = 0;            ///< in the same unit; the board's own when [limits] gives one
  std::string unit;            ///< "mm", "frets", "cutters"
  std::array<double, 3> at{};  ///< x, y, z in the board's frame, mm
  FeatureId where;
  std::string feature;     ///< the same for people: "the slot of fret 7"
  std::string message;     ///< what is so
  std::string cost;        ///< what it costs if it is ignored
  std::string source;      ///< of the limit: "key X", "common practice, no source", "published: ..", "key limits.NAME"
  std::string suggestion;  ///< what to change
  std::optional<Fix> fix;  ///< the suggestion as one edit, where it is a number
  friend bool operator==(const Finding&, const Finding&) = default;
};

/// "stop", "look" or "note".
std::string_view severity_name(Severity severity);

}  // namespace sagitta
