#include "export/DrawingFiles.hpp"

#include <nlohmann/json.hpp>

#include "export/DxfFile.hpp"
#include "export/FretTable.hpp"
#include "export/PieceList.hpp"
#include "export/SetUp.hpp"
#include "export/SetUpSheet.hpp"
#include "export/ShopDrawing.hpp"
#include "export/SvgFile.hpp"
#include "export/Template.hpp"
#include "export/WireTable.hpp"

namespace sagitta {
namespace {

using Json = nlohmann::ordered_json;

void add(std::vector<PaperFile>& files, const std::string& name, const Drawing& drawing, const DrawingKinds& kinds) {
  if (kinds.dxf) {
    files.push_back({name + ".dxf", "dxf", dxf_text(drawing, DxfVersion::r2000)});
    files.push_back({name + "-r12.dxf", "dxf", dxf_text(drawing, DxfVersion::r12)});
  }
  if (kinds.svg) files.push_back({name + ".svg", "svg", svg_text(drawing)});
}

void add(std::vector<PaperFile>& files, const std::string& name, const std::string& csv, const Json& json) {
  files.push_back({name + ".csv", "csv", csv});
  files.push_back({name + ".json", "json", json.dump(2) + "\n"});
}

}  // namespace

std::vector<PaperFile> table_files(const ReadyBoard& ready) {
  std::vector<PaperFile> files;
  const std::vector<WirePiece> wire = wire_list(ready.file.board, ready.layout, ready.surface);
  const std::vector<ListedPiece> pieces = piece_list(ready.file.board, ready.layout);
  add(files, "frets", fret_csv(ready.layout), fret_json(ready.layout));
  add(files, "wire", wire_csv(wire), wire_json(wire));
  if (!pieces.empty()) add(files, "pieces", piece_csv(pieces), piece_json(pieces));
  return files;
}

std::vector<PaperFile> drawing_files(const ReadyBoard& ready, const DrawingKinds& kinds,
                                     const DrawingOptions& options) {
  std::vector<PaperFile> files;
  const Board& board = ready.file.board;
  if (kinds.csv) files = table_files(ready);
  if (kinds.pdf) {
    files.push_back({"template.pdf", "pdf", template_pdf(board, ready.layout, options.paper)});
    files.push_back({"shop-drawing.pdf", "pdf", shop_drawing_pdf(ready, options.paper)});
    if (!piece_list(board, ready.layout).empty())
      files.push_back({"inlay-drawing.pdf", "pdf", inlay_drawing_pdf(ready, options.paper)});
  }
  if (!kinds.dxf && !kinds.svg && !kinds.pdf) return files;
  const Drawing drawing = drawing_of(board, ready.layout, options);
  add(files, "board", drawing, kinds);
  if (layer_named(drawing, "pins") || layer_named(drawing, "dowels"))
    add(files, "from-below", from_below(drawing), kinds);
  for (const SetUp& setup : setups_of(board, ready.layout)) {
    const std::string name = "setups/" + setup.folder + "/setup";
    const Drawing own = setup_drawing(board, ready.layout, setup, drawing);
    add(files, name, own, kinds);
    if (kinds.pdf) files.push_back({name + ".pdf", "pdf", setup_sheet_pdf(board, ready.layout, setup, own, options.paper)});
  }
  return files;
}

}  // namespace sagitta
