#pragma once

/// How a neck's reader and the process that asks it write to each other: the board's seat and the place there, what was
/// read and the wood back, each as JSON.

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "neck/BoardSeat.hpp"
#include "neck/NeckShape.hpp"
#include "neck/NeckWood.hpp"

namespace sagitta {

nlohmann::json seat_json(const BoardSeat& seat);
BoardSeat seat_of(const nlohmann::json& json);

nlohmann::json place_json(const NeckPlace& place);
NeckPlace place_of(const nlohmann::json& json);

nlohmann::json reading_json(const NeckReading& reading);
/// An answer that is none is a failure of the reader.
NeckReading reading_of(const std::string& text);

/// Points in micrometres.
nlohmann::json wood_json(const NeckWood& wood);
/// As reading_of. Corners that name no point are no answer either.
NeckWood wood_of(const std::string& text);

}  // namespace sagitta
