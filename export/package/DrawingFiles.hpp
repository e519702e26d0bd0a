#pragma once

/// The drawings, tables and printed sheets of a hand-off folder as files in memory.

#include <string>
#include <vector>

#include "drawing/BoardDrawing.hpp"
#include "drawing/Drawing.hpp"
#include "paper/PdfBook.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// A file of the hand-off folder that holds no solid.
struct PaperFile {
  std::string file;  ///< its name below the folder: "board.dxf", "setups/first-01/setup.svg"
  std::string kind;  ///< "dxf", "svg", "pdf", "csv", "json"
  std::string bytes;
};

struct DrawingKinds {
  bool dxf = false, svg = false, pdf = false, csv = false;
};

/// A document for the wall or the bench.
struct PrintedBook {
  std::string file;  ///< its name below the folder
  PdfBook book;
};

/// template.pdf (slotting), shop-drawing.pdf, inlay-drawing.pdf where there are inlays, and each set-up's sheet. Of a
/// part of the job, what that part needs; `ready` must be that part (see JobPart.hpp).
std::vector<PrintedBook> printed_books(const PreparedBoard& ready, const DrawingOptions& options);

/// The drawing as board.dxf (R2000), board-r12.dxf and board.svg; with pins or dowels from-below.* as well, seen from
/// below; with [neck] mating.* and neck/neck-face.*, neck/neck-face-down.*, neck/neck-sheet.pdf; for each set-up
/// setups/NAME-01/setup.* in its own zero; setups/sheet-MATERIAL-01/setup.* for each sheet that pieces are cut from;
/// and the printed books. Of a part of the job, what that part needs; `ready` must be that part (see JobPart.hpp).
std::vector<PaperFile> drawing_files(const PreparedBoard& ready, const DrawingKinds& kinds,
                                     const DrawingOptions& options);

/// frets, wire, pieces and, with [height], heights, each as .csv and .json.
std::vector<PaperFile> table_files(const PreparedBoard& ready, const InlayOutlines& inlays, const JobPart& part = {});

}  // namespace sagitta
