#include "export/HandOff.hpp"

#include <algorithm>
#include <cmath>

#include "board/Materials.hpp"
#include "board/Writer.hpp"
#include "export/Digest.hpp"
#include "export/DrawingFiles.hpp"
#include "export/Interrupt.hpp"
#include "export/Manifest.hpp"
#include "export/Progress.hpp"
#include "export/StepFile.hpp"
#include "export/StlFile.hpp"
#include "plan/Plan.hpp"
#include "solid/Solid.hpp"
#include "solid/StageMesh.hpp"

namespace sagitta {
namespace {

double area_of(const std::array<float, 3>& a, const std::array<float, 3>& b, const std::array<float, 3>& c) {
  const double u[3] = {double{b[0]} - a[0], double{b[1]} - a[1], double{b[2]} - a[2]};
  const double v[3] = {double{c[0]} - a[0], double{c[1]} - a[1], double{c[2]} - a[2]};
  return std::hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2;
}

/// A mesh's volume, area and box, from its own triangles.
ManifestBody figures_of(const Mesh& mesh) {
  ManifestBody body;
  body.volume = volume(mesh);
  for (const auto& [a, b, c] : mesh.triangles) body.area += area_of(mesh.points[a], mesh.points[b], mesh.points[c]);
  for (std::size_t i = 0; i < 3; ++i) {
    body.low[i] = mesh.points[0][i];
    body.high[i] = mesh.points[0][i];
    for (const auto& point : mesh.points) {
      body.low[i] = std::min(body.low[i], double{point[i]});
      body.high[i] = std::max(body.high[i], double{point[i]});
    }
  }
  return body;
}

ManifestBody figures_of(const TopoDS_Solid& solid) {
  const SolidFigures found = figures(solid);
  ManifestBody body;
  body.volume = found.volume;
  body.area = found.area;
  std::copy(std::begin(found.low), std::end(found.low), body.low.begin());
  std::copy(std::begin(found.high), std::end(found.high), body.high.begin());
  return body;
}

/// Makes the files of one board, one stage after the other, and keeps the list of them.
class Writer {
 public:
  Writer(const ReadyBoard& ready, const HandOff& order, Folder& folder, const Cancel& cancel)
      : ready_(ready),
        order_(order),
        folder_(folder),
        cancel_(cancel),
        all_(static_cast<int>(order.stages.size()) * (order.kinds.step + order.kinds.stl)),
        progress_(all_) {}

  void write(Stage stage) {
    stage_ = stage;
    stop_if_wanted(cancel_);
    const Shell shell = lift(std::get<Plan>(make_plan(board(), ready_.layout, ready_.surface, stage)));
    if (order_.kinds.step) write_step(shell);
    if (order_.kinds.stl) write_stl(shell);
  }

  void write_papers() {
    const DrawingKinds kinds{order_.kinds.dxf, order_.kinds.svg, order_.kinds.pdf,
                             order_.kinds.csv};
    for (const PaperFile& paper : drawing_files(ready_, kinds, order_.drawing)) {
      stop_if_wanted(cancel_);
      folder_.add(paper.file, paper.bytes);
      files_.push_back({paper.file, "", paper.kind, paper.bytes.size(), sha256(paper.bytes), {}, {}, {}});
    }
  }

  void write_manifest() {
    folder_.add("manifest.json", manifest_text({SAGITTA_VERSION, write_board(board()), files_}));
  }

 private:
  const Board& board() const { return ready_.file.board; }

  std::string title() const {
    return (board().name.empty() ? "fretboard" : board().name) + " " + std::string(name(stage_));
  }

  void begin(const std::string& what) {
    progress_.step(what);
    if (order_.tell) order_.tell(done_++, all_, what);
  }

  void write_step(const Shell& shell) {
    begin(std::string(name(stage_)) + ", exact solid");
    const TopoDS_Solid solid = make_solid(shell);
    stop_if_wanted(cancel_);
    add("step", step_text(solid, {title(), material(board(), board().blank.material).colour}), figures_of(solid));
  }

  void write_stl(const Shell& shell) {
    begin(std::string(name(stage_)) + ", triangles");
    const Mesh mesh = stage_mesh(shell, order_.deviation, cancel_);
    stop_if_wanted(cancel_);
    ManifestFile& file = add("stl", stl_bytes(mesh, title()), figures_of(mesh));
    file.deviation = mesh.deviation;
    file.triangles = mesh.triangles.size();
  }

  ManifestFile& add(const std::string& kind, const std::string& bytes, ManifestBody body) {
    stop_if_wanted(cancel_);
    body.name = "board";
    body.material = board().blank.material;
    ManifestFile file{std::string(name(stage_)) + "." + kind,
                      std::string(name(stage_)),
                      kind,
                      bytes.size(),
                      sha256(bytes),
                      {std::move(body)},
                      {},
                      {}};
    folder_.add(file.file, bytes);
    return files_.emplace_back(std::move(file));
  }

  const ReadyBoard& ready_;
  const HandOff& order_;
  Folder& folder_;
  const Cancel& cancel_;
  int all_ = 0, done_ = 0;
  Progress progress_;
  Stage stage_ = Stage::blank;
  std::vector<ManifestFile> files_;
};

}  // namespace

void write_hand_off(const ReadyBoard& ready, const HandOff& order, Folder& folder, const Cancel& cancel) {
  Writer writer(ready, order, folder, cancel);
  for (const Stage stage : order.stages) writer.write(stage);
  writer.write_papers();
  writer.write_manifest();
}

}  // namespace sagitta
