#pragma once

/// The cut list of the fret wire as CSV.

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "frets/WireList.hpp"

namespace sagitta {

/// The cut list of the fret wire, one row a fret and a last row "total": fret, straight, along, cut, bend_radius (empty
/// where the board is flat), nip_bass, nip_treble, tang; mm. See WirePiece.
std::string wire_csv(const std::vector<WirePiece>& list);

/// {total, pieces: [{fret, straight, along, cut, bend_radius, nip_bass, nip_treble, tang}]}, mm; bend_radius is null
/// where the board is flat.
nlohmann::ordered_json wire_json(const std::vector<WirePiece>& list);

}  // namespace sagitta
