#include "tables/WireTable.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "text/CsvRow.hpp"

namespace sagitta {

std::string wire_csv(const std::vector<WirePiece>& list) {
  const bool parted = std::any_of(list.begin(), list.end(), [](const WirePiece& piece) { return piece.part; });
  std::string text = parted ? "fret,part," : "fret,";
  text += "straight_mm,along_mm,cut_mm,bend_radius_mm,nip_bass_mm,nip_treble_mm,tang_mm\n";
  const auto begun = [&](const WirePiece& piece) {
    CsvRow row;
    row.whole(piece.fret);
    if (parted) piece.part ? row.whole(*piece.part + 1) : row.text("");
    return row;
  };
  for (const WirePiece& piece : list)
    text += begun(piece)
                .number(piece.straight)
                .number(piece.along)
                .number(piece.cut)
                .number(piece.bend_radius)
                .number(piece.nip_bass)
                .number(piece.nip_treble)
                .number(piece.tang)
                .line();
  CsvRow total;
  total.text("total");
  if (parted) total.text("");
  return text + total.text("").text("").number(total_wire(list)).text("").text("").text("").text("").line();
}

nlohmann::ordered_json wire_json(const std::vector<WirePiece>& list) {
  using Json = nlohmann::ordered_json;
  Json pieces = Json::array();
  for (const WirePiece& piece : list) {
    Json row{{"fret", piece.fret}};
    if (piece.part) row["part"] = *piece.part + 1;
    row["straight"] = piece.straight;
    row["along"] = piece.along;
    row["cut"] = piece.cut;
    row["bend_radius"] = piece.bend_radius ? Json(*piece.bend_radius) : Json();
    row["nip_bass"] = piece.nip_bass;
    row["nip_treble"] = piece.nip_treble;
    row["tang"] = piece.tang;
    pieces.push_back(std::move(row));
  }
  return {{"total", total_wire(list)}, {"pieces", pieces}};
}

}  // namespace sagitta
