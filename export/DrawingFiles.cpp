#include "export/DrawingFiles.hpp"

#include <nlohmann/json.hpp>

#include "export/DxfFile.hpp"
#include "export/FretTable.hpp"
#include "export/MatingDrawing.hpp"
#include "export/PieceList.hpp"
#include "export/InlayOutlines.hpp"
#include "export/SetUp.hpp"
#include "export/SetUpSheet.hpp"
#include "export/SheetDrawing.hpp"
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

std::vector<PaperFile> table_files(const ReadyBoard& ready, const InlayOutlines& inlays) {
  std::vector<PaperFile> files;
  const std::vector<WirePiece> wire = wire_list(ready.file.board, ready.layout, ready.surface);
  const std::vector<ListedPiece> pieces = piece_list(inlays.pieces);
  add(files, "frets", fret_csv(ready.layout), fret_json(ready.layout));
  add(files, "wire", wire_csv(wire), wire_json(wire));
  if (!pieces.empty()) add(files, "pieces", piece_csv(pieces), piece_json(pieces));
  return files;
}

std::vector<PaperFile> drawing_files(const ReadyBoard& ready, const DrawingKinds& kinds,
                                     const DrawingOptions& options) {
  std::vector<PaperFile> files;
  const Board& board = ready.file.board;
  const InlayOutlines inlays = inlay_outlines(ready.inlays);
  if (kinds.csv) files = table_files(ready, inlays);
  if (!kinds.dxf && !kinds.svg && !kinds.pdf) return files;
  const Drawing drawing = drawing_of(board, ready.layout, inlays, options);
  if (kinds.pdf) {
    files.push_back({"template.pdf", "pdf", template_pdf(board, ready.layout, drawing, options.paper)});
    files.push_back({"shop-drawing.pdf", "pdf", shop_drawing_pdf(ready, drawing, options.paper)});
    if (!inlays.pieces.empty())
      files.push_back({"inlay-drawing.pdf", "pdf", inlay_drawing_pdf(ready, inlays, options.paper)});
  }
  add(files, "board", drawing, kinds);
  if (layer_named(drawing, "pins") || layer_named(drawing, "dowels"))
    add(files, "from-below", from_below(drawing), kinds);
  if (board.neck) add(files, "mating", mating_drawing(board, mating_face(board, ready.layout)), kinds);
  for (const SetUp& setup : setups_of(board, ready.layout)) {
    const std::string name = "setups/" + setup.folder + "/setup";
    const Drawing own = setup_drawing(board, ready.layout, setup, drawing);
    add(files, name, own, kinds);
    if (kinds.pdf) files.push_back({name + ".pdf", "pdf", setup_sheet_pdf(board, ready.layout, setup, own, options.paper)});
  }
  if (const auto nesting = nest(inlays.pieces, board.sheets, nest_rules(board)))
    for (const NestedSheet& sheet : nesting->sheets)
      add(files, "setups/" + sheet_folder(sheet) + "/setup", sheet_drawing(board, sheet), kinds);
  return files;
}

}  // namespace sagitta
