#include "trial/TrialFiles.hpp"

#include <nlohmann/json.hpp>

#include "board/Materials.hpp"
#include "cad/Gate.hpp"
#include "cad/Interrupt.hpp"
#include "cad/PieceBodies.hpp"
#include "cad/StepFile.hpp"
#include "cad/StlFile.hpp"
#include "drawing/BoardDrawing.hpp"
#include "drawing/DrawingParts.hpp"
#include "drawing/DxfFile.hpp"
#include "drawing/InlayOutlines.hpp"
#include "drawing/SvgFile.hpp"
#include "lift/Shell.hpp"
#include "mesh/Mesh.hpp"
#include "package/BodyFigures.hpp"
#include "package/FaultReport.hpp"
#include "package/ListedFolder.hpp"
#include "package/Repeat.hpp"
#include "solid/Solid.hpp"
#include "text/DrawingNumber.hpp"

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

ManifestBody body(const std::string& name, const std::string& material, ManifestBody figures) {
  figures.name = name;
  figures.material = material;
  return figures;
}

void add_mesh(ListedFolder& folder, const std::string& stage, const std::string& title, const Mesh& mesh,
              std::vector<ManifestBody> bodies) {
  ManifestFile& file = folder.add(stage + ".stl", stage, "stl", stl_bytes(mesh, title), std::move(bodies));
  file.deviation = mesh.deviation;
  file.triangles = mesh.triangles.size();
}

void write_strip(const PreparedBoard& strip, ListedFolder& folder, const Cancel& cancel) {
  const std::string& title = strip.board().name;
  const Shell& shell = strip.shell(Stage::board);
  const MaterialFacts wood = material(strip.board(), strip.board().blank.material);
  const BodyPlace place{"trial strip", "strip"};
  const auto [solid, measured] = sound_solid(shell, place);
  stop_if_wanted(cancel);
  folder.add("strip.step", "strip", "step",
             sound_step({title, {{title, "strip", wood.colour, solid, measured}}, {}}, {}, place.stage),
             {body("strip", strip.board().blank.material, figures_of(measured))});
  const Mesh mesh = sound_mesh(shell, default_deviation, place, cancel);
  add_mesh(folder, "strip", title, mesh, {body("strip", strip.board().blank.material, figures_of(mesh))});
}

/// All pieces are alike: the one that the pockets are tried with, as many times as there are pockets.
void write_pieces(const PreparedBoard& strip, ListedFolder& folder, const Cancel& cancel) {
  StepModel model{strip.board().name + ", pieces", {}, {}};
  Mesh all;
  std::vector<ManifestBody> solids, meshes;
  for (const PieceBody& piece : piece_bodies(strip, Assembly::pieces)) {
    const BodyPlace place{"trial strip's pieces", piece.name};
    const auto [solid, measured] = sound_solid(piece.shell, place);
    const Mesh mesh = sound_mesh(piece.shell, default_deviation, place, cancel);
    model.bodies.push_back({piece.name, "pieces of " + piece.material, piece.colour, solid, measured});
    solids.push_back(body(piece.name, piece.material, figures_of(model.bodies.back().figures)));
    meshes.push_back(body(piece.name, piece.material, figures_of(mesh)));
    append(all, mesh);
  }
  folder.add("pieces.step", "pieces", "step", sound_step(model, {}, "trial strip's pieces"), std::move(solids));
  add_mesh(folder, "pieces", model.name, all, std::move(meshes));
}

}  // namespace

Drawing trial_drawing(const Trial& trial) {
  const PreparedBoard& strip = trial.strip;
  Drawing drawing = drawing_of(strip, inlay_outlines(strip));
  std::erase_if(drawing.layers, [](const Layer& layer) { return !of_a_strip(layer); });
  for (Layer& layer : drawing.layers) {
    if (layer.name.starts_with("slot-")) name_by_width(layer, trial);
    if (layer.name == "pocket") name_by_clearance(layer, trial);
  }
  return drawing;
}

void write_trial(const PreparedBoard& ready, const std::vector<Finding>& findings, const Trial& trial,
                 const Paper& paper, Folder& folder, const Cancel& cancel) {
  ListedFolder listed(folder);
  const std::string options = trial_options_json(paper).dump();
  keep_on_fault(ready.planned(), findings, options, folder.path(), [&] {
    write_strip(trial.strip, listed, cancel);
    write_pieces(trial.strip, listed, cancel);
  });
  const Drawing drawing = trial_drawing(trial);
  listed.add("trial.dxf", "", "dxf", dxf_text(drawing, DxfVersion::r2000));
  listed.add("trial-r12.dxf", "", "dxf", dxf_text(drawing, DxfVersion::r12));
  listed.add("trial.svg", "", "svg", svg_text(drawing));
  listed.add("trial-sheet.pdf", "", "pdf", trial_book(ready, trial, paper).bytes());
  listed.finish(ready.planned(), findings, options);
  stop_if_wanted(cancel);
}

}  // namespace sagitta
