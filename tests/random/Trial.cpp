#include "random/Trial.hpp"

#include <Standard_Failure.hxx>
#include <chrono>
#include <cmath>
#include <sstream>

#include "made/Made.hpp"
#include "mesh/Mesh.hpp"
#include "mesh/MeshCheck.hpp"
#include "oracle/Boolean.hpp"
#include "oracle/Quadrature.hpp"
#include "plane/Tolerance.hpp"
#include "solid/Solid.hpp"

namespace sagitta::random_boards {
namespace {

/// Lift and quadrature are both exact to about 1e-9; this is the promise.
constexpr double agreement = 1e-6;

/// What drawing back cuts that only touch may change, mm^3: each moves a cut's edge by at most twice the snap, for the
/// cut's whole length and depth, or a side hole up by tolerance::graze. Nothing for plans without such notes.
double drawn_back(const Plan& plan, const oracle::Work& work) {
  double largest = 0;
  for (const oracle::Cut& cut : work.cuts) {
    if (cut.name == "radius") continue;
    const double depth = cut.floor == oracle::Cut::Floor::arc ? cut.value : work.surface.thickness - cut.value;
    largest = std::max(largest, perimeter(cut.region) * depth);
  }
  double hole = 0;
  for (const oracle::SideHole& side : work.holes) hole = std::max(hole, 2 * side.dot.radius * side.dot.depth);
  return static_cast<double>(plan.notes.size()) * (2 * tolerance::snap * largest + tolerance::graze * hole);
}

struct Stagewise {
  const Board& board;
  const Layout& layout;
  const Surface& surface;
  Asked asked;
  Verdict& verdict;

  void complain(Stage stage, const std::string& what) const {
    verdict.trouble += std::string(name(stage)) + ": " + what + "\n";
  }

  void check_mesh(Stage stage, const Shell& shell, int handles, double volume_of_solid, double seconds_so_far) const {
    const auto begin = std::chrono::steady_clock::now();
    const Mesh mesh = make_mesh(shell);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
    verdict.seconds = std::max(verdict.seconds, seconds_so_far + took.count());
    if (const std::string wrong = unsound(mesh, handles); !wrong.empty()) return complain(stage, "mesh: " + wrong);
    if (std::abs(volume(mesh) - volume_of_solid) > volume_allowance(mesh, shell))
      complain(stage, "the mesh's volume is off");
    if (mesh.deviation > default_deviation) complain(stage, "the mesh deviates too far");
  }

  void check_oracle(Stage stage, const oracle::Work& work, double volume_of_solid, double exact, double allowed) const {
    const oracle::Booleans other = oracle::booleans(work);
    const bool fit = other.sound && std::abs(other.volume / exact - 1) < agreement;
    if (!fit) {
      std::ostringstream text;
      text << name(stage) << ": " << other.trouble << (other.sound ? "" : " unsound") << ", off by "
           << other.volume / exact - 1;
      verdict.oracle_trouble += text.str() + "\n";
    } else if (std::abs(volume_of_solid / other.volume - 1) > allowed) {
      complain(stage, "solid and 3D booleans differ");
    }
  }

  /// Only wood that comes loose is refused, and only where the kernel's own cuts leave several bodies too.
  void check_refusal(Stage stage, const Faults& faults) const {
    verdict.refused = true;
    const bool loose = faults.size() == 1 && faults[0].message.find("comes loose") != std::string::npos;
    const int bodies = loose ? oracle::booleans(oracle::work_at(board, layout, surface, stage)).solids : 0;
    if (bodies < 2) complain(stage, "refused: " + made::told(faults));
  }

  void check(Stage stage) const {
    const auto begin = std::chrono::steady_clock::now();
    auto plan = make_plan(board, layout, surface, stage);
    if (const auto* faults = std::get_if<Faults>(&plan)) {
      return check_refusal(stage, *faults);
    }
    const Shell shell = lift(std::get<Plan>(std::move(plan)));
    if (const std::string wrong = unsound(shell); !wrong.empty()) return complain(stage, "shell: " + wrong);
    const TopoDS_Solid solid = make_solid(shell);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begin;
    verdict.seconds = std::max(verdict.seconds, took.count());
    const int handles = genus(shell);
    if (const std::string wrong = unsound(solid, handles); !wrong.empty()) return complain(stage, "solid: " + wrong);
    const double volume_of_solid = figures(solid).volume;
    const oracle::Work work = oracle::work_at(board, layout, surface, stage);
    const double exact = oracle::quadrature(work).value;
    const double off = std::abs(volume_of_solid / exact - 1);
    verdict.worst = std::max(verdict.worst, off);
    std::ostringstream text;
    text.precision(12);
    text << "the solid's volume is " << volume_of_solid << ", quadrature gives " << exact << ", off by " << off;
    const double allowed = agreement + drawn_back(shell.plan, work) / exact;
    if (!(off < allowed)) complain(stage, text.str());
    if (asked.booleans) check_oracle(stage, work, volume_of_solid, exact, allowed);
    if (asked.mesh) check_mesh(stage, shell, handles, volume_of_solid, took.count());
  }
};

}  // namespace

Verdict tried(const Board& board, Asked asked) {
  Verdict verdict;
  const auto layout = lay_out(board);
  if (const auto* faults = std::get_if<Faults>(&layout)) {
    verdict.trouble = made::told(*faults);
    return verdict;
  }
  const Layout& sound = std::get<Layout>(layout);
  const Surface surface = surface_of(board, sound);
  const Stagewise stagewise{board, sound, surface, asked, verdict};
  for (const Stage stage : stages_of(board)) {
    if (!asked.all_stages && stage != Stage::board) continue;
    try {
      stagewise.check(stage);
    } catch (const std::exception& error) {
      stagewise.complain(stage, std::string("threw: ") + error.what());
    } catch (const Standard_Failure& failure) {
      stagewise.complain(stage, std::string("the kernel threw: ") + failure.GetMessageString());
    }
  }
  return verdict;
}

}  // namespace sagitta::random_boards
