#include "export/DrawingFiles.hpp"

#include "export/DxfFile.hpp"
#include "export/SetUp.hpp"
#include "export/SvgFile.hpp"
#include "export/Template.hpp"

namespace sagitta {
namespace {

void add(std::vector<PaperFile>& files, const std::string& name, const Drawing& drawing, const DrawingKinds& kinds) {
  if (kinds.dxf) {
    files.push_back({name + ".dxf", "dxf", dxf_text(drawing, DxfVersion::r2000)});
    files.push_back({name + "-r12.dxf", "dxf", dxf_text(drawing, DxfVersion::r12)});
  }
  if (kinds.svg) files.push_back({name + ".svg", "svg", svg_text(drawing)});
}

}  // namespace

std::vector<PaperFile> drawing_files(const ReadyBoard& ready, const DrawingKinds& kinds,
                                     const DrawingOptions& options) {
  std::vector<PaperFile> files;
  const Board& board = ready.file.board;
  if (kinds.pdf) files.push_back({"template.pdf", "pdf", template_pdf(board, ready.layout, options.paper)});
  if (!kinds.dxf && !kinds.svg) return files;
  const Drawing drawing = drawing_of(board, ready.layout, options);
  add(files, "board", drawing, kinds);
  if (layer_named(drawing, "pins") || layer_named(drawing, "dowels"))
    add(files, "from-below", from_below(drawing), kinds);
  for (const SetUp& setup : setups_of(board, ready.layout))
    add(files, "setups/" + setup.folder + "/setup", setup_drawing(board, ready.layout, setup, drawing), kinds);
  return files;
}

}  // namespace sagitta
