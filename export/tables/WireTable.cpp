#include "tables/WireTable.hpp"

#include <nlohmann/json.hpp>

#include "text/CsvRow.hpp"

namespace sagitta {

std::string wire_csv(const std::vector<WirePiece>& list) {
  std::string text = "fret,straight_mm,along_mm,cut_mm,bend_radius_mm,nip_bass_mm,nip_treble_mm,tang_mm\n";
  for (const WirePiece& piece : list)
    text += CsvRow()
                .whole(piece.fret)
                .number(piece.straight)
                .number(piece.along)
                .number(piece.cut)
                .number(piece.bend_radius)
                .number(piece.nip_bass)
                .number(piece.nip_treble)
                .number(piece.tang)
                .line();
  return text +
         CsvRow().text("total").text("").text("").number(total_wire(list)).text("").text("").text("").text("").line();
}

nlohmann::ordered_json wire_json(const std::vector<WirePiece>& list) {
  using Json = nlohmann::ordered_json;
  Json pieces = Json::array();
  for (const WirePiece& piece : list)
    pieces.push_back({{"fret", piece.fret},
                      {"straight", piece.straight},
                      {"along", piece.along},
                      {"cut", piece.cut},
                      {"bend_radius", piece.bend_radius ? Json(*piece.bend_radius) : Json()},
                      {"nip_bass", piece.nip_bass},
                      {"nip_treble", piece.nip_treble},
                      {"tang", piece.tang}});
  return {{"total", total_wire(list)}, {"pieces", pieces}};
}

}  // namespace sagitta
