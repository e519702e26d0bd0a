#include "export/TrialFiles.hpp"

#include "board/Materials.hpp"
#include "export/DrawingNumber.hpp"
#include "export/DrawingParts.hpp"
#include "export/DxfFile.hpp"
#include "export/InlayOutlines.hpp"
#include "export/Interrupt.hpp"
#include "export/PieceBodies.hpp"
#include "export/StepFile.hpp"
#include "export/StlFile.hpp"
#include "export/SvgFile.hpp"
#include "lift/Shell.hpp"
#include "mesh/Mesh.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

/// The board's drawing of the strip, without what belongs to a board only.
bool of_a_strip(const Layer& layer) {
  for (const char* name : {"slot-middle", "slot-outline", "outline", "centre-line"})
    if (layer.name == name) return true;
  return layer.name == "pocket" || layer.name.starts_with("piece-");
}

void name_by_width(Layer& layer, const Trial& trial) {
  for (std::size_t i = 0; i < layer.figures.size() && i < trial.slots.size(); ++i)
    layer.figures[i].name =
        "slot " + std::to_string(trial.slots[i].number) + ", " + drawn_number(trial.slots[i].width) + " mm wide";
}

void name_by_clearance(Layer& layer, const Trial& trial) {
  for (std::size_t i = 0; i < layer.figures.size() && i < trial.pairs.size(); ++i)
    layer.figures[i].name = "pocket " + std::to_string(trial.pairs[i].number) + ", clearance " +
                            drawn_number(trial.pairs[i].clearance) + " mm";
}

/// All pieces are alike: the one that the pockets are tried with, as many times as there are pockets.
void write_pieces(const ReadyBoard& strip, Folder& folder) {
  StepModel model{strip.board().name + ", pieces", {}, {}};
  Mesh all;
  for (const PieceBody& piece : piece_bodies(strip, Assembly::pieces)) {
    model.bodies.push_back({piece.name, "pieces of " + piece.material, piece.colour, make_solid(piece.shell)});
    append(all, make_mesh(piece.shell));
  }
  folder.add("pieces.step", step_text(model));
  folder.add("pieces.stl", stl_bytes(all, model.name));
}

}  // namespace

Drawing trial_drawing(const Trial& trial) {
  const ReadyBoard& strip = trial.strip;
  Drawing drawing = drawing_of(strip.board(), strip.layout, inlay_outlines(strip.inlays));
  std::erase_if(drawing.layers, [](const Layer& layer) { return !of_a_strip(layer); });
  for (Layer& layer : drawing.layers) {
    if (layer.name.starts_with("slot-")) name_by_width(layer, trial);
    if (layer.name == "pocket") name_by_clearance(layer, trial);
  }
  return drawing;
}

void write_trial(const ReadyBoard& ready, const Trial& trial, const Paper& paper, Folder& folder,
                 const Cancel& cancel) {
  const ReadyBoard& strip = trial.strip;
  const Shell shell = lift(strip.plan(Stage::board));
  const MaterialFacts wood = material(strip.board(), strip.board().blank.material);
  stop_if_wanted(cancel);
  folder.add("strip.step",
             step_text({strip.board().name, {{strip.board().name, "strip", wood.colour, make_solid(shell)}}, {}}));
  folder.add("strip.stl", stl_bytes(make_mesh(shell, default_deviation, cancel), strip.board().name));
  stop_if_wanted(cancel);
  write_pieces(strip, folder);
  const Drawing drawing = trial_drawing(trial);
  folder.add("trial.dxf", dxf_text(drawing, DxfVersion::r2000));
  folder.add("trial-r12.dxf", dxf_text(drawing, DxfVersion::r12));
  folder.add("trial.svg", svg_text(drawing));
  folder.add("trial-sheet.pdf", trial_sheet_pdf(ready, trial, paper));
  stop_if_wanted(cancel);
}

}  // namespace sagitta
