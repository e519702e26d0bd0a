#include "export/DrawingFiles.hpp"

#include <algorithm>
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

/// What papers an operation needs; all without one.
struct Wanted {
  std::optional<Operation> operation;

  bool any_of(std::initializer_list<Operation> operations) const {
    return !operation || std::find(operations.begin(), operations.end(), *operation) != operations.end();
  }
  bool slots() const { return any_of({Operation::slots}); }
  bool pieces() const { return any_of({Operation::inlay}); }
  bool inlays() const { return any_of({Operation::pockets, Operation::inlay}); }
};

/// The drawing without what other operations cut; its notes say that it is a part.
Drawing part_of(Drawing drawing, const JobPart& part) {
  if (part.whole()) return drawing;
  drawing.notes.insert(drawing.notes.begin(), "A part of the job: " + words_of(part) + ".");
  if (part.operation)
    std::erase_if(drawing.layers, [&](const Layer& layer) {
      return !is_ground(layer.name) && !is_cut_by(*part.operation, layer.name);
    });
  return drawing;
}

std::vector<SetUp> setups_wanted(const ReadyBoard& ready, const DrawingOptions& options) {
  std::vector<SetUp> setups = setups_of(ready.board(), ready.layout);
  if (!options.setups.empty())
    std::erase_if(setups, [&](const SetUp& setup) { return !options.setups.contains(setup.folder); });
  return setups;
}

/// Where a set-up's files lie, without their ending.
std::string setup_file(const SetUp& setup) { return "setups/" + setup.folder + "/setup"; }

}  // namespace

std::vector<PaperFile> table_files(const ReadyBoard& ready, const InlayOutlines& inlays, const JobPart& part) {
  std::vector<PaperFile> files;
  const Wanted wanted{part.operation};
  const std::vector<WirePiece> wire = wire_list(ready.file.board, ready.layout, ready.surface);
  const std::vector<ListedPiece> pieces = piece_list(inlays.pieces);
  if (wanted.slots()) add(files, "frets", fret_csv(ready.layout), fret_json(ready.layout));
  if (wanted.slots()) add(files, "wire", wire_csv(wire), wire_json(wire));
  if (wanted.inlays() && !pieces.empty()) add(files, "pieces", piece_csv(pieces), piece_json(pieces));
  return files;
}

std::vector<PrintedBook> printed_books(const ReadyBoard& ready, const DrawingOptions& options) {
  std::vector<PrintedBook> books;
  const Board& board = ready.file.board;
  const InlayOutlines inlays = inlay_outlines(ready.inlays);
  const Wanted wanted{options.part.operation};
  const Drawing drawing = part_of(drawing_of(board, ready.layout, inlays, options), options.part);
  if (wanted.slots()) books.push_back({"template.pdf", template_book(board, ready.layout, drawing, options.paper)});
  if (options.part.whole()) books.push_back({"shop-drawing.pdf", shop_book(ready, drawing, options.paper)});
  if (wanted.inlays() && !inlays.pieces.empty())
    books.push_back({"inlay-drawing.pdf", inlay_book(ready, inlays, options.paper)});
  for (const SetUp& setup : setups_wanted(ready, options)) {
    const Drawing own = setup_drawing(board, ready.layout, setup, drawing);
    books.push_back({setup_file(setup) + ".pdf", setup_book(board, ready.layout, setup, own, options.paper)});
  }
  return books;
}

std::vector<PaperFile> drawing_files(const ReadyBoard& ready, const DrawingKinds& kinds,
                                     const DrawingOptions& options) {
  std::vector<PaperFile> files;
  const Board& board = ready.file.board;
  const InlayOutlines inlays = inlay_outlines(ready.inlays);
  const Wanted wanted{options.part.operation};
  if (kinds.csv) files = table_files(ready, inlays, options.part);
  if (kinds.pdf)
    for (const PrintedBook& printed : printed_books(ready, options))
      files.push_back({printed.file, "pdf", printed.book.bytes()});
  if (!kinds.dxf && !kinds.svg) return files;
  const Drawing drawing = part_of(drawing_of(board, ready.layout, inlays, options), options.part);
  add(files, "board", drawing, kinds);
  if (layer_named(drawing, "pins") || layer_named(drawing, "dowels"))
    add(files, "from-below", from_below(drawing), kinds);
  if (board.neck && options.part.whole())
    add(files, "mating", mating_drawing(board, mating_face(board, ready.layout)), kinds);
  for (const SetUp& setup : setups_wanted(ready, options))
    add(files, setup_file(setup), setup_drawing(board, ready.layout, setup, drawing), kinds);
  if (!wanted.pieces()) return files;
  if (const auto nesting = nest(inlays.pieces, board.sheets, nest_rules(board)))
    for (const NestedSheet& sheet : nesting->sheets)
      add(files, "setups/" + sheet_folder(sheet) + "/setup", sheet_drawing(board, sheet), kinds);
  return files;
}

}  // namespace sagitta
