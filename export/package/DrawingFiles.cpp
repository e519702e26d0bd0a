#include "package/DrawingFiles.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "board/SlotCut.hpp"
#include "drawing/BoardDrawing.hpp"
#include "drawing/DxfFile.hpp"
#include "drawing/GaugeDrawing.hpp"
#include "drawing/InlayOutlines.hpp"
#include "drawing/MatingDrawing.hpp"
#include "drawing/NeckDrawing.hpp"
#include "drawing/ResolvedSetup.hpp"
#include "drawing/SheetDrawing.hpp"
#include "drawing/SvgFile.hpp"
#include "paper/GaugePage.hpp"
#include "paper/NeckSheet.hpp"
#include "paper/SetupSheet.hpp"
#include "paper/SheetPage.hpp"
#include "paper/ShopDrawing.hpp"
#include "paper/Template.hpp"
#include "tables/FretTable.hpp"
#include "tables/HeightTable.hpp"
#include "tables/LineTable.hpp"
#include "tables/PieceList.hpp"
#include "tables/StringTable.hpp"
#include "tables/StripTable.hpp"
#include "tables/WireTable.hpp"

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

/// What paper and outlines are made from: drawn once.
struct DrawnJob {
  InlayOutlines inlays;
  Drawing board;
  std::vector<std::pair<ResolvedSetup, Drawing>> setups;  ///< those wanted, each drawing in its own zero
  std::vector<std::pair<NestedSheet, Drawing>> sheets;    ///< of inlay material, where pieces are wanted
};

DrawnJob drawn_job(const PreparedBoard& ready, const DrawingOptions& options) {
  DrawnJob job{inlay_outlines(ready), {}, {}, {}};
  job.board = part_of(drawing_of(ready, job.inlays, options), options.part);
  for (const ResolvedSetup& setup : setups_of(ready))
    if (options.setups.empty() || options.setups.contains(setup.folder))
      job.setups.emplace_back(setup, setup_drawing(ready, setup, job.board));
  if (Wanted{options.part.operation}.pieces() && options.setups.empty())
    if (auto nesting = nest(job.inlays.pieces, ready.board().sheets, nest_rules(ready.board())))
      for (const NestedSheet& sheet : nesting->sheets) job.sheets.emplace_back(sheet, sheet_drawing(ready, sheet));
  return job;
}

/// Where a set-up's files lie, without their ending.
std::string setup_file(const ResolvedSetup& setup) { return "setups/" + setup.folder + "/setup"; }
std::string setup_file(const NestedSheet& sheet) { return "setups/" + sheet_folder(sheet) + "/setup"; }

/// The books of the board itself.
std::vector<PrintedBook> board_books(const PreparedBoard& ready, const DrawnJob& job, const DrawingOptions& options) {
  std::vector<PrintedBook> books;
  const Wanted wanted{options.part.operation};
  if (wanted.slots()) books.push_back({"template.pdf", template_book(ready, job.board, options.paper)});
  if (options.part.whole()) books.push_back({"shop-drawing.pdf", shop_book(ready, job.board, options.paper)});
  if (options.part.whole()) books.push_back({"gauges.pdf", gauge_book(ready, options.paper)});
  if (ready.board().neck && options.part.whole()) {
    const NeckPlan plan = neck_plan(ready);
    books.push_back({"neck/neck-sheet.pdf", neck_book(ready, plan, neck_drawing(ready.board(), plan), options.paper)});
  }
  if (wanted.inlays() && !job.inlays.pieces.empty())
    books.push_back({"inlay-drawing.pdf", inlay_book(ready, job.inlays, options.paper)});
  return books;
}

/// The board's own, unless set-ups were named, then those of the set-ups, then those of the sheets.
std::vector<PrintedBook> books_of(const PreparedBoard& ready, const DrawnJob& job, const DrawingOptions& options) {
  std::vector<PrintedBook> books;
  if (options.setups.empty()) books = board_books(ready, job, options);
  for (const auto& [setup, own] : job.setups)
    books.push_back({setup_file(setup) + ".pdf", setup_book(ready, setup, own, options.paper)});
  for (const auto& [sheet, own] : job.sheets)
    books.push_back({setup_file(sheet) + ".pdf", sheet_book(ready, sheet, own, options.paper)});
  return books;
}

/// The drawings of the board itself.
void add_board_drawings(std::vector<PaperFile>& files, const PreparedBoard& ready, const Drawing& drawing,
                        const DrawingKinds& kinds, const DrawingOptions& options) {
  const Board& board = ready.board();
  add(files, "board", drawing, kinds);
  if (options.part.whole()) add(files, "gauges", gauge_drawing(ready), kinds);
  if (layer_named(drawing, "pins") || layer_named(drawing, "dowels"))
    add(files, "from-below", from_below(drawing), kinds);
  if (!board.neck || !options.part.whole()) return;
  const NeckPlan plan = neck_plan(ready);
  add(files, "mating", mating_drawing(board, plan.face), kinds);
  add(files, "neck/neck-face", neck_drawing(board, plan), kinds);
  add(files, "neck/neck-face-down", neck_drawing_face_down(board, plan), kinds);
}

}  // namespace

std::vector<PaperFile> table_files(const PreparedBoard& ready, const InlayOutlines& inlays, const JobPart& part) {
  std::vector<PaperFile> files;
  const Wanted wanted{part.operation};
  const SlotCut cut = slot_cut(ready.board());
  const std::vector<ListedPiece> pieces = piece_list(inlays.pieces);
  if (wanted.slots()) add(files, "frets", fret_csv(ready.layout()), fret_json(ready.layout()));
  if (wanted.slots() && cut == SlotCut::all) {
    const std::vector<WirePiece> wire = wire_list(ready);
    add(files, "wire", wire_csv(wire), wire_json(wire));
  }
  if (wanted.slots() && cut == SlotCut::lines) {
    const std::vector<LinePiece> strips = line_list(ready);
    add(files, "lines", line_csv(strips), line_json(strips));
  }
  if (part.whole() && ready.board().strings.course > 1) add(files, "strings", string_csv(ready), string_json(ready));
  if (const auto chain = part.whole() ? height_chain(ready) : std::nullopt)
    add(files, "heights", height_csv(*chain), height_json(*chain));
  if (wanted.inlays() && !pieces.empty()) add(files, "pieces", piece_csv(pieces), piece_json(pieces));
  if (const auto& binding = ready.board().binding;
      binding && !binding->lines.empty() && wanted.any_of({Operation::outline})) {
    const std::vector<EdgeStrip> strips = edge_strips(ready);
    add(files, "strips", strip_csv(strips), strip_json(strips));
  }
  return files;
}

std::vector<PrintedBook> printed_books(const PreparedBoard& ready, const DrawingOptions& options) {
  return books_of(ready, drawn_job(ready, options), options);
}

std::vector<PaperFile> drawing_files(const PreparedBoard& ready, const DrawingKinds& kinds,
                                     const DrawingOptions& options) {
  std::vector<PaperFile> files;
  if (kinds.csv && options.setups.empty()) files = table_files(ready, inlay_outlines(ready), options.part);
  if (!kinds.dxf && !kinds.svg && !kinds.pdf) return files;
  const DrawnJob job = drawn_job(ready, options);
  if (kinds.pdf)
    for (const PrintedBook& printed : books_of(ready, job, options))
      files.push_back({printed.file, "pdf", printed.book.bytes()});
  if (!kinds.dxf && !kinds.svg) return files;
  if (options.setups.empty()) add_board_drawings(files, ready, job.board, kinds, options);
  for (const auto& [setup, own] : job.setups) add(files, setup_file(setup), own, kinds);
  for (const auto& [sheet, own] : job.sheets) add(files, setup_file(sheet), own, kinds);
  return files;
}

}  // namespace sagitta
