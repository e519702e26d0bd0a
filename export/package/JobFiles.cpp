#include "package/JobFiles.hpp"

#include <algorithm>

#include "cad/Gate.hpp"
#include "cad/Interrupt.hpp"
#include "cad/NeckModel.hpp"
#include "cad/StepFile.hpp"
#include "cad/StepFileLines.hpp"
#include "cad/StlFile.hpp"
#include "cad/ThreeMfFile.hpp"
#include "jobsheet/JobPdf.hpp"
#include "package/BodyFigures.hpp"
#include "package/DrawingFiles.hpp"
#include "package/PrintedJob.hpp"
#include "paper/PngFile.hpp"
#include "paper/ShadedPicture.hpp"
#include "solid/Solid.hpp"

namespace sagitta {
namespace {

/// The bodies as one mesh.
Mesh together(const std::vector<ThreeMfBody>& bodies) {
  Mesh all;
  for (const ThreeMfBody& body : bodies) append(all, body.mesh);
  return all;
}

/// Pixels, of the pictures beside the solids.
constexpr int picture_width = 1600;

bool wants_job_sheet(const ExportKinds& kinds) { return kinds.html || kinds.pdf; }

}  // namespace

bool wants_meshes(const ExportKinds& kinds) {
  return kinds.stl || kinds.three_mf || kinds.png || wants_job_sheet(kinds);
}

JobFiles::JobFiles(const PreparedBoard& ready, const ExportOrder& order, const Cancel& cancel)
    : ready_(ready),
      order_(order),
      bodies_(ready, order.deviation, cancel),
      cancel_(cancel),
      all_(static_cast<int>(order.stages.size() + order.assemblies.size()) *
           (order.kinds.step + wants_meshes(order.kinds))),
      progress_(all_) {}

void JobFiles::make_solid_of(Stage stage) { bodies_.solid(stage); }

void JobFiles::write_step(Stage stage, ListedFolder& folder) {
  begin(std::string(name(stage)) + ", exact solid");
  const auto& [solid, measured] = bodies_.solid(stage);
  StepModel model;
  model.name = title(name(stage));
  model.bodies.push_back({model.name, "board", wood_facts().colour, solid, measured});
  model.lines = step_lines(ready_.surface(), guide_lines(ready_, stage));
  add(folder, name(stage), "step", sound_step(model, order_.step_style, std::string(name(stage))),
      {of_board(figures_of(measured))});
}

void JobFiles::write_meshes(Stage stage, ListedFolder& folder) {
  begin(std::string(name(stage)) + ", triangles");
  const std::string at(name(stage));
  const Mesh& mesh = bodies_.mesh(stage);
  const MaterialFacts wood = wood_facts();
  const auto add_mesh = [&](const std::string& kind, const std::string& bytes) {
    ManifestFile& file = add(folder, at, kind, bytes, {of_board(figures_of(mesh))});
    file.deviation = mesh.deviation;
    file.triangles = mesh.triangles.size();
  };
  if (order_.kinds.stl) add_mesh("stl", stl_bytes(mesh, title(at)));
  if (order_.kinds.three_mf) add_mesh("3mf", sound_three_mf(title(at), {{"board", wood.name, wood.colour, mesh}}, at));
  if (order_.kinds.png)
    add_paper(folder, {at + ".png", "png", png_bytes(paint({{&mesh, wood.colour}}, picture_width))});
  if (wants_job_sheet(order_.kinds)) keep_picture(at, job_picture(board(), mesh));
}

void JobFiles::write_step(Assembly assembly, ListedFolder& folder) {
  begin(std::string(name(assembly)) + ", exact solids");
  StepModel model;
  model.name = title(name(assembly));
  std::vector<ManifestBody> bodies;
  const auto put = [&](const std::string& body, const std::string& made_of, const SoundSolid& made) {
    model.bodies.push_back({body, body == "board" ? "board" : "pieces of " + made_of, material(board(), made_of).colour,
                            made.solid, made.measured});
    bodies.push_back(figures_of(made.measured));
    bodies.back().name = body;
    bodies.back().material = made_of;
  };
  if (const auto wood = wood_of(assembly, board())) put("board", board().blank.material, bodies_.solid(*wood));
  const std::vector<PieceBody>& pieces = bodies_.pieces(assembly);
  const std::vector<std::vector<SoundSolid>> solids = bodies_.piece_solids(assembly);
  for (std::size_t i = 0; i < pieces.size(); ++i)
    for (std::size_t k = 0; k < solids[i].size(); ++k)
      put(solids[i].size() == 1 ? pieces[i].name : pieces[i].name + " part " + std::to_string(k + 1),
          pieces[i].material, solids[i][k]);
  add(folder, name(assembly), "step", sound_step(model, order_.step_style, std::string(name(assembly))),
      std::move(bodies));
}

void JobFiles::write_meshes(Assembly assembly, ListedFolder& folder) {
  begin(std::string(name(assembly)) + ", triangles");
  std::vector<ThreeMfBody> bodies;
  const auto put = [&](const std::string& body, const std::string& made_of, Mesh mesh) {
    const MaterialFacts facts = material(board(), made_of);
    bodies.push_back({body, facts.name, facts.colour, std::move(mesh)});
  };
  const std::optional<Stage> wood = wood_of(assembly, board());
  if (wood) put("board", board().blank.material, bodies_.mesh(*wood));
  const std::vector<PieceBody>& pieces = bodies_.pieces(assembly);
  std::vector<Mesh> meshes = bodies_.piece_meshes(assembly);
  for (std::size_t i = 0; i < pieces.size(); ++i) put(pieces[i].name, pieces[i].material, std::move(meshes[i]));
  const std::string at(name(assembly));
  const auto add_meshes = [&](const std::string& kind, const std::string& bytes) {
    ManifestFile& file = add(folder, at, kind, bytes, figures_of_all(bodies, assembly));
    for (const ThreeMfBody& body : bodies) {
      file.deviation = std::max(file.deviation.value_or(0), body.mesh.deviation);
      file.triangles = file.triangles.value_or(0) + body.mesh.triangles.size();
    }
  };
  if (order_.kinds.stl && !wood) add_meshes("stl", stl_bytes(together(bodies), title(at)));
  if (order_.kinds.three_mf) add_meshes("3mf", sound_three_mf(title(at), bodies, at));
  if (!order_.kinds.png) return;
  std::vector<PaintedBody> painted;
  for (const ThreeMfBody& body : bodies) painted.push_back({&body.mesh, body.colour});
  add_paper(folder, {at + ".png", "png", png_bytes(paint(painted, picture_width))});
}

void JobFiles::write_neck(ListedFolder& folder) {
  if (!board().neck || !order_.drawing.part.whole() || !order_.drawing.setups.empty() ||
      !(order_.kinds.step || order_.kinds.stl))
    return;
  stop_if_wanted(cancel_);
  const NeckPlan plan = neck_plan(ready_);
  const Shell gauge = gauge_shell(ready_, plan);
  const BodyPlace place{"neck-gauge", "gauge"};
  const auto gauge_body = [](ManifestBody body) {
    body.name = "gauge";
    return std::vector<ManifestBody>{std::move(body)};
  };
  if (order_.kinds.step) {
    folder.add("neck/neck-face.step", "", "step",
               sound_step(neck_face_model(ready_, plan), order_.step_style, "neck-face"));
    const auto [solid, measured] = sound_solid(gauge, place);
    const StepModel model{title("neck gauge"), {{title("neck gauge"), "gauge", "#9a9a9a", solid, measured}}, {}};
    folder.add("neck/neck-gauge.step", "", "step", sound_step(model, order_.step_style, place.stage),
               gauge_body(figures_of(measured)));
  }
  if (!order_.kinds.stl) return;
  const Mesh mesh = sound_mesh(gauge, order_.deviation, place, cancel_);
  ManifestFile& file =
      folder.add("neck/neck-gauge.stl", "", "stl", stl_bytes(mesh, title("neck gauge")), gauge_body(figures_of(mesh)));
  file.deviation = mesh.deviation;
  file.triangles = mesh.triangles.size();
}

void JobFiles::write_drawings(ListedFolder& folder) {
  const DrawingKinds kinds{order_.kinds.dxf, order_.kinds.svg, order_.kinds.pdf, order_.kinds.csv};
  for (const PaperFile& paper : drawing_files(ready_, kinds, order_.drawing)) add_paper(folder, paper);
}

void JobFiles::write_job_sheet(const std::vector<Finding>& findings, ListedFolder& folder) {
  if (!wants_job_sheet(order_.kinds) || !order_.drawing.setups.empty()) return;
  stop_if_wanted(cancel_);
  const JobSheet sheet = job_sheet(ready_, findings);
  if (order_.kinds.html) add_paper(folder, {"job-sheet.html", "html", job_html(sheet, small_pictures_)});
  if (order_.kinds.pdf)
    add_paper(folder, {"job-sheet.pdf", "pdf", job_book(sheet, small_pictures_, order_.drawing.paper).bytes()});
}

const Board& JobFiles::board() const { return ready_.board(); }

MaterialFacts JobFiles::wood_facts() const { return material(board(), board().blank.material); }

std::string JobFiles::title(std::string_view what) const {
  return (board().name.empty() ? "fretboard" : board().name) + " " + std::string(what);
}

void JobFiles::begin(const std::string& what) {
  stop_if_wanted(cancel_);
  const std::lock_guard lock(telling_);
  progress_.step(what);
  if (order_.tell) order_.tell(done_++, all_, what);
}

void JobFiles::keep_picture(const std::string& stage, std::string bytes) {
  const std::lock_guard lock(telling_);
  small_pictures_[stage] = std::move(bytes);
}

ManifestBody JobFiles::of_board(ManifestBody body) const {
  body.name = "board";
  body.material = board().blank.material;
  return body;
}

std::vector<ManifestBody> JobFiles::figures_of_all(const std::vector<ThreeMfBody>& bodies, Assembly assembly) {
  std::vector<ManifestBody> figures;
  for (const ThreeMfBody& body : bodies) figures.push_back(figures_of(body.mesh));
  const bool wood = wood_of(assembly, board()).has_value();
  if (wood) figures.front() = of_board(std::move(figures.front()));
  const std::vector<PieceBody>& pieces = bodies_.pieces(assembly);
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    figures[i + wood].name = pieces[i].name;
    figures[i + wood].material = pieces[i].material;
  }
  return figures;
}

ManifestFile& JobFiles::add(ListedFolder& folder, std::string_view what, const std::string& kind,
                            const std::string& bytes, std::vector<ManifestBody> bodies) const {
  stop_if_wanted(cancel_);
  const std::string stage(what);
  return folder.add(stage + "." + kind, stage, kind, bytes, std::move(bodies));
}

void JobFiles::add_paper(ListedFolder& folder, const PaperFile& paper) const {
  stop_if_wanted(cancel_);
  folder.add(paper.file, "", paper.kind, paper.bytes);
}

}  // namespace sagitta
