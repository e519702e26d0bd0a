#include "tables/LineTable.hpp"

#include <nlohmann/json.hpp>

#include "text/CsvRow.hpp"

namespace sagitta {

std::string line_csv(const std::vector<LinePiece>& list) {
  std::string text = "fret,material,length_mm,thickness_mm,height_mm\n";
  for (const LinePiece& piece : list)
    text += CsvRow()
                .whole(piece.fret)
                .text(piece.material)
                .number(piece.length)
                .number(piece.thickness)
                .number(piece.height)
                .line();
  return text + CsvRow().text("total").text("").number(total_line(list)).text("").text("").line();
}

nlohmann::ordered_json line_json(const std::vector<LinePiece>& list) {
  using Json = nlohmann::ordered_json;
  Json pieces = Json::array();
  for (const LinePiece& piece : list)
    pieces.push_back({{"fret", piece.fret},
                      {"material", piece.material},
                      {"length", piece.length},
                      {"thickness", piece.thickness},
                      {"height", piece.height}});
  return {{"total", total_line(list)}, {"pieces", pieces}};
}

}  // namespace sagitta
