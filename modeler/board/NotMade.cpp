/// What a board file can say and this version does not make yet: refused, so that nothing is silently left out.

#include <cmath>

#include "board/Reading.hpp"

namespace sagitta {
namespace {

constexpr std::string_view keys_not_made[] = {"wire.end_bevel", "blank.grain"};
constexpr std::string_view sheet_keys_not_made[] = {"zero", "margin", "clamp", "hold", "skin", "face"};
constexpr std::string_view material_keys_not_made[] = {"movement_radial", "movement_tangential"};

void refuse(Reading& reading, const std::string& key) {
  if (reading.given(key))
    reading.report_value(FaultCode::not_made, key, "this version of Sagitta reads this but does not make it yet",
                         "take it out");
}

/// A value of a key that is made otherwise.
void refuse_value(Reading& reading, const std::string& key, bool not_made) {
  if (not_made) refuse(reading, key);
}

}  // namespace

void check_made(Reading& reading) {
  const Board& board = reading.out.board;
  for (const std::string_view table : tables_not_made) refuse(reading, std::string(table));
  for (const std::string_view key : keys_not_made) refuse(reading, std::string(key));
  for (std::size_t i = 0; i < board.sheets.size(); ++i)
    for (const std::string_view key : sheet_keys_not_made)
      refuse(reading, "sheets[" + std::to_string(i) + "]." + std::string(key));
  for (const auto& [name, material] : board.materials)
    for (const std::string_view key : material_keys_not_made)
      refuse(reading, "materials." + name + "." + std::string(key));
}

}  // namespace sagitta
