#include "package/HandOff.hpp"

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "board/Materials.hpp"
#include "cad/Gate.hpp"
#include "cad/Interrupt.hpp"
#include "cad/NeckModel.hpp"
#include "cad/PieceBodies.hpp"
#include "cad/StepFile.hpp"
#include "cad/StepFileLines.hpp"
#include "cad/StlFile.hpp"
#include "cad/ThreeMfFile.hpp"
#include "input/BoardFindings.hpp"
#include "jobsheet/JobHtml.hpp"
#include "jobsheet/JobPdf.hpp"
#include "mesh/Mesh.hpp"
#include "package/BodyFigures.hpp"
#include "package/DrawingFiles.hpp"
#include "package/FaultReport.hpp"
#include "package/ListedFolder.hpp"
#include "package/PrintedJob.hpp"
#include "package/Progress.hpp"
#include "package/Repeat.hpp"
#include "paper/ShadedPicture.hpp"
#include "plan/Plan.hpp"
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
bool wants_meshes(const ExportKinds& kinds) {
  return kinds.stl || kinds.three_mf || kinds.png || wants_job_sheet(kinds);
}

/// Makes the files of one board, one stage after the other, and keeps the list of them.
class Writer {
 public:
  Writer(const PreparedBoard& ready, const ExportOrder& order, Folder& folder, const Cancel& cancel)
      : ready_(ready),
        order_(order),
        folder_(folder),
        cancel_(cancel),
        all_(static_cast<int>(order.stages.size() + order.assemblies.size()) *
             (order.kinds.step + wants_meshes(order.kinds))),
        progress_(all_) {}

  void write(Stage stage) {
    stage_ = stage;
    stop_if_wanted(cancel_);
    if (order_.kinds.step) write_step();
    if (wants_meshes(order_.kinds)) write_meshes();
  }

  void write(Assembly assembly) {
    stop_if_wanted(cancel_);
    const std::vector<PieceBody> pieces = piece_bodies(ready_, assembly);
    const std::optional<Stage> wood = wood_of(assembly, board());
    if (order_.kinds.step) write_step(assembly, wood, pieces);
    if (wants_meshes(order_.kinds)) write_meshes(assembly, wood, pieces);
  }

  /// What the neck is made with: the glue face and a gauge of its sides.
  void write_neck() {
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
      folder_.add("neck/neck-face.step", "", "step",
                  sound_step(neck_face_model(ready_, plan), order_.step_style, "neck-face"));
      const auto [solid, measured] = sound_solid(gauge, place);
      const StepModel model{title("neck gauge"), {{title("neck gauge"), "gauge", "#9a9a9a", solid, measured}}, {}};
      folder_.add("neck/neck-gauge.step", "", "step", sound_step(model, order_.step_style, place.stage),
                  gauge_body(figures_of(measured)));
    }
    if (!order_.kinds.stl) return;
    const Mesh mesh = sound_mesh(gauge, order_.deviation, place, cancel_);
    ManifestFile& file = folder_.add("neck/neck-gauge.stl", "", "stl", stl_bytes(mesh, title("neck gauge")),
                                     gauge_body(figures_of(mesh)));
    file.deviation = mesh.deviation;
    file.triangles = mesh.triangles.size();
  }

  void write_papers() {
    const DrawingKinds kinds{order_.kinds.dxf, order_.kinds.svg, order_.kinds.pdf, order_.kinds.csv};
    for (const PaperFile& paper : drawing_files(ready_, kinds, order_.drawing)) add_paper(paper);
  }

  void write_job_sheet(const std::vector<Finding>& findings) {
    if (!wants_job_sheet(order_.kinds) || !order_.drawing.setups.empty()) return;
    stop_if_wanted(cancel_);
    const JobSheet sheet = job_sheet(ready_, findings);
    if (order_.kinds.html) add_paper({"job-sheet.html", "html", job_html(sheet, small_pictures_)});
    if (order_.kinds.pdf)
      add_paper({"job-sheet.pdf", "pdf", job_book(sheet, small_pictures_, order_.drawing.paper).bytes()});
  }

  /// `whole`: the board that the folder is a part of, with its findings.
  void write_manifest(const Board& whole, const std::vector<Finding>& findings) {
    if (folder_.empty())
      throw NothingToWrite("there is nothing to write: what is asked for has no files of these kinds");
    folder_.finish(whole, findings, options_json(order_).dump());
  }

 private:
  const Board& board() const { return ready_.board(); }

  std::string title(std::string_view what) const {
    return (board().name.empty() ? "fretboard" : board().name) + " " + std::string(what);
  }
  std::string title() const { return title(name(stage_)); }

  void begin(const std::string& what) {
    progress_.step(what);
    if (order_.tell) order_.tell(done_++, all_, what);
  }

  static BodyPlace place_of(Stage stage) { return {std::string(name(stage)), "board"}; }

  const SoundSolid& solid_of(Stage stage) {
    const auto found = solids_.find(stage);
    if (found != solids_.end()) return found->second;
    stop_if_wanted(cancel_);
    return solids_.emplace(stage, sound_solid(ready_.shell(stage), place_of(stage))).first->second;
  }

  const Mesh& mesh_of(Stage stage) {
    const auto found = meshes_.find(stage);
    if (found != meshes_.end()) return found->second;
    return meshes_.emplace(stage, sound_mesh(ready_.shell(stage), order_.deviation, place_of(stage), cancel_))
        .first->second;
  }

  void write_step() {
    begin(std::string(name(stage_)) + ", exact solid");
    const auto& [solid, measured] = solid_of(stage_);
    StepModel model;
    model.name = title();
    model.bodies.push_back({title(), "board", material(board(), board().blank.material).colour, solid, measured});
    model.lines = step_lines(ready_.surface(), guide_lines(ready_, stage_));
    add("step", sound_step(model, order_.step_style, std::string(name(stage_))), figures_of(measured));
  }

  void write_meshes() {
    begin(std::string(name(stage_)) + ", triangles");
    const Mesh& mesh = mesh_of(stage_);
    const MaterialFacts wood = material(board(), board().blank.material);
    if (order_.kinds.stl) add_mesh("stl", stl_bytes(mesh, title()), mesh);
    if (order_.kinds.three_mf)
      add_mesh("3mf", sound_three_mf(title(), {{"board", wood.name, wood.colour, mesh}}, std::string(name(stage_))),
               mesh);
    if (order_.kinds.png)
      add_paper({std::string(name(stage_)) + ".png", "png", png_bytes(paint({{&mesh, wood.colour}}, picture_width))});
    if (wants_job_sheet(order_.kinds)) small_pictures_[std::string(name(stage_))] = job_picture(board(), mesh);
  }

  void write_step(Assembly assembly, std::optional<Stage> wood, const std::vector<PieceBody>& pieces) {
    begin(std::string(name(assembly)) + ", exact solids");
    StepModel model;
    model.name = title(name(assembly));
    std::vector<ManifestBody> bodies;
    const auto put = [&](const std::string& body, const std::string& made_of, const SoundSolid& made) {
      stop_if_wanted(cancel_);
      model.bodies.push_back({body, body == "board" ? "board" : "pieces of " + made_of,
                              material(board(), made_of).colour, made.solid, made.measured});
      bodies.push_back(figures_of(made.measured));
      bodies.back().name = body;
      bodies.back().material = made_of;
    };
    if (wood) put("board", board().blank.material, solid_of(*wood));
    for (const PieceBody& piece : pieces) {
      const std::vector<SoundSolid> parts =
          sound_solids(piece.shell, {std::string(name(assembly)), piece.name}, cancel_);
      for (std::size_t i = 0; i < parts.size(); ++i)
        put(parts.size() == 1 ? piece.name : piece.name + " part " + std::to_string(i + 1), piece.material, parts[i]);
    }
    add(name(assembly), "step", sound_step(model, order_.step_style, std::string(name(assembly))), std::move(bodies));
  }

  void write_meshes(Assembly assembly, std::optional<Stage> wood, const std::vector<PieceBody>& pieces) {
    begin(std::string(name(assembly)) + ", triangles");
    std::vector<ThreeMfBody> bodies;
    std::vector<ManifestBody> figures;
    double deviation = 0;
    std::size_t triangles = 0;
    const auto put = [&](const std::string& body, const std::string& made_of, Mesh made) {
      stop_if_wanted(cancel_);
      const MaterialFacts facts = material(board(), made_of);
      bodies.push_back({body, facts.name, facts.colour, std::move(made)});
      const Mesh& mesh = bodies.back().mesh;
      figures.push_back(figures_of(mesh));
      figures.back().name = body;
      figures.back().material = made_of;
      deviation = std::max(deviation, mesh.deviation);
      triangles += mesh.triangles.size();
    };
    if (wood) put("board", board().blank.material, mesh_of(*wood));
    for (const PieceBody& piece : pieces)
      put(piece.name, piece.material,
          sound_mesh(piece.shell, order_.deviation, {std::string(name(assembly)), piece.name}, cancel_));
    const auto add_meshes = [&](const std::string& kind, const std::string& bytes) {
      ManifestFile& file = add(name(assembly), kind, bytes, figures);
      file.deviation = deviation;
      file.triangles = triangles;
    };
    if (order_.kinds.stl && !wood) add_meshes("stl", stl_bytes(together(bodies), title(name(assembly))));
    if (order_.kinds.three_mf)
      add_meshes("3mf", sound_three_mf(title(name(assembly)), bodies, std::string(name(assembly))));
    if (!order_.kinds.png) return;
    std::vector<PaintedBody> painted;
    for (const ThreeMfBody& body : bodies) painted.push_back({&body.mesh, body.colour});
    add_paper({std::string(name(assembly)) + ".png", "png", png_bytes(paint(painted, picture_width))});
  }

  void add_mesh(const std::string& kind, const std::string& bytes, const Mesh& mesh) {
    ManifestFile& file = add(kind, bytes, figures_of(mesh));
    file.deviation = mesh.deviation;
    file.triangles = mesh.triangles.size();
  }

  ManifestFile& add(const std::string& kind, const std::string& bytes, ManifestBody body) {
    body.name = "board";
    body.material = board().blank.material;
    return add(name(stage_), kind, bytes, {std::move(body)});
  }

  ManifestFile& add(std::string_view what, const std::string& kind, const std::string& bytes,
                    std::vector<ManifestBody> bodies) {
    stop_if_wanted(cancel_);
    const std::string stage(what);
    return folder_.add(stage + "." + kind, stage, kind, bytes, std::move(bodies));
  }

  void add_paper(const PaperFile& paper) {
    stop_if_wanted(cancel_);
    folder_.add(paper.file, "", paper.kind, paper.bytes);
  }

  const PreparedBoard& ready_;
  const ExportOrder& order_;
  ListedFolder folder_;
  JobPictures small_pictures_;
  const Cancel& cancel_;
  int all_ = 0, done_ = 0;
  Progress progress_;
  Stage stage_ = Stage::blank;
  std::map<Stage, SoundSolid> solids_;
  std::map<Stage, Mesh> meshes_;
};

}  // namespace

void write_hand_off(const PreparedBoard& ready, const std::vector<Finding>& findings, const ExportOrder& order,
                    Folder& folder, const Cancel& cancel) {
  const PreparedBoard part = part_of(ready, order.drawing.part);
  keep_on_fault(ready.planned(), findings, options_json(order).dump(), folder.path(), [&] {
    Writer writer(part, order, folder, cancel);
    for (const Stage stage : order.stages) writer.write(stage);
    for (const Assembly assembly : order.assemblies) writer.write(assembly);
    writer.write_neck();
    writer.write_papers();
    writer.write_job_sheet(findings);
    writer.write_manifest(ready.planned(), findings);
  });
}

}  // namespace sagitta
