#include "random/Trial.hpp"

#include <Standard_Failure.hxx>
#include <algorithm>
#include <cmath>
#include <numbers>
#include <sstream>

#include "inlay/Inlays.hpp"
#include "made/Made.hpp"
#include "made/WorkshopTime.hpp"
#include "oracle/Boolean.hpp"
#include "oracle/HeightVolume.hpp"
#include "oracle/Quadrature.hpp"
#include "plane/Tolerance.hpp"
#include "random/Judge.hpp"
#include "random/PieceTrial.hpp"

namespace sagitta::random_boards {
namespace {

/// Lift and quadrature are both exact to about 1e-9; this is the promise.
constexpr double agreement = 1e-6;

/// What deciding contacts and heights may change, mm^3: the plan tells how far it moved the outline of each cut, which
/// counts for the largest wall of any, how far it lowered floors, and how far it raised side holes. Nothing for plans
/// in which nothing nearly touches.
double decided(const Plan& plan, const oracle::Work& work) {
  double top = work.top;  // of what the cuts begin in: before the radius the blank stands higher
  for (const oracle::Cut& cut : work.cuts)
    if (cut.name == "radius") top = work.surface.thickness - cut.value;
  double wall = 0, hole = 0, sum = plan.lowered * area(work.outline);
  for (const oracle::Cut& cut : work.cuts) {
    if (cut.name == "radius") continue;
    const double floor = cut.floor == oracle::Cut::Floor::arc ? work.surface.thickness - cut.value : cut.value;
    wall = std::max(wall, perimeter(cut.region) * (top - floor));
  }
  for (const oracle::Cut& hollow : work.hollows) wall = std::max(wall, perimeter(hollow.region) * hollow.value);
  for (const Pin& pin : work.pins) wall = std::max(wall, 2 * std::numbers::pi * pin.radius * pin.depth);
  for (const auto& [dot, z] : work.holes) {
    wall = std::max(wall, 2 * std::numbers::pi * dot.radius * dot.depth);
    hole = std::max(hole, 2 * dot.radius * dot.depth);
  }
  for (const PlanFeature& feature : plan.features) sum += feature.moved * wall + feature.raised * hole;
  return sum;
}

std::string without_indices(const std::string& key) {
  std::string plain;
  bool inside = false;
  for (const char c : key) {
    if (c == '[') inside = true;
    if (!inside) plain += c;
    if (c == ']') inside = false;
  }
  return plain;
}

struct Stagewise {
  const Board& board;
  const Layout& layout;
  const Surface& surface;
  const Asked& asked;
  Verdict& verdict;

  bool through_step(Stage stage) const {
    return std::find(asked.step.begin(), asked.step.end(), stage) != asked.step.end();
  }

  /// What the booleans do not know.
  bool has_forms(Stage stage) const {
    const oracle::Forms forms = oracle::forms_at(board, layout, stage);
    return forms.edges || !forms.troughs.empty();
  }

  void complain(Stage stage, const std::string& what) const {
    verdict.trouble += std::string(name(stage)) + ": " + what + "\n";
    if (std::find(verdict.failed.begin(), verdict.failed.end(), stage) == verdict.failed.end())
      verdict.failed.push_back(stage);
  }

  /// Quadrature rules against booleans that are unsound or do not come to its volume.
  void check_oracle(Stage stage, const oracle::Work& work, double volume_of_solid, double exact, double allowed) const {
    const oracle::Booleans other = oracle::booleans(work);
    const double off = other.volume / exact - 1;
    if (other.sound && std::abs(off) < agreement) {
      if (std::abs(volume_of_solid / other.volume - 1) > allowed) complain(stage, "solid and 3D booleans differ");
      return;
    }
    ++verdict.overruled;
    std::ostringstream text;
    text << name(stage) << ": " << other.trouble << (other.sound ? "" : " unsound") << ", off by " << off << "\n";
    verdict.overruled_why += text.str();
  }

  /// Wood that comes loose is refused only where the kernel's own cuts leave several bodies too.
  void check_refusal(Stage stage, const Faults& faults) const {
    if (!asked.confirm) return verdict.refusals.push_back({stage, without_indices(faults.front().key), false});
    const oracle::Booleans cut = oracle::booleans(oracle::work_at(board, layout, surface, stage), {.check = false});
    verdict.refusals.push_back({stage, without_indices(faults.front().key), cut.solids > 1});
    if (cut.solids < 2) verdict.unconfirmed += std::string(name(stage)) + ": refused: " + made::told(faults);
  }

  void check(Stage stage) const {
    ++verdict.stages;
    const std::clock_t begin = std::clock();
    auto plan = make_plan(board, layout, surface, stage);
    if (const auto* faults = std::get_if<Faults>(&plan)) return check_refusal(stage, *faults);
    const Shell shell = lift(std::get<Plan>(std::move(plan)));
    const double took = test::processor_seconds(begin);
    const Body body = judged(shell, {asked.mesh, through_step(stage), asked.vertices, asked.figures});
    verdict.seconds = std::max(verdict.seconds, took + body.seconds);
    if (!body.wrong.empty()) complain(stage, body.wrong);
    if (body.volume == 0) return;
    const oracle::Work work = oracle::work_at(board, layout, surface, stage);
    const bool forms = has_forms(stage);
    const double exact = forms ? oracle::height_volume(board, layout, surface, stage) : oracle::quadrature(work).value;
    const double off = std::abs(body.volume / exact - 1);
    verdict.worst = std::max(verdict.worst, off);
    const double allowed = agreement + decided(shell.plan, work) / exact;
    if (!(off < allowed)) {
      std::ostringstream text;
      text.precision(12);
      text << "the solid's volume is " << body.volume << ", quadrature gives " << exact << ", off by " << off;
      if (!forms && asked.booleans) text << ", booleans " << oracle::booleans(work).volume;
      complain(stage, text.str());
    }
    if (asked.booleans && !forms) check_oracle(stage, work, body.volume, exact, allowed);
  }

  /// What is thrown is trouble of the stage.
  template <class Step>
  void guarded(Stage stage, const Step& step) const {
    std::string what;
    try {
      return step();
    } catch (const std::exception& error) {
      what = std::string("threw: ") + error.what();
    } catch (const Standard_Failure& failure) {
      what = std::string("the kernel threw: ") + failure.GetMessageString();
    }
    verdict.threw = true;
    complain(stage, what);
  }

  void check_pieces() const {
    const Stage last = stages_of(board).back();
    guarded(last, [&] {
      const auto inlays = fit_inlays(board, layout);
      if (const auto* faults = std::get_if<Faults>(&inlays)) return complain(last, "pieces: " + made::told(*faults));
      for (const InlayPiece& piece : std::get<Inlays>(inlays).pieces)
        guarded(last, [&] {
          const std::string wrong = piece_trouble(board, layout, surface, piece,
                                                  {asked.mesh, through_step(last), asked.vertices, asked.figures});
          if (!wrong.empty()) complain(last, piece.name + " " + wrong);
        });
    });
  }
};

}  // namespace

Asked everything(const Board& board) {
  Asked asked;
  asked.step = stages_of(board);
  asked.pieces = asked.vertices = true;
  return asked;
}

Verdict tried(const Board& board, const Asked& asked) {
  Verdict verdict;
  const auto layout = lay_out(board);
  if (const auto* faults = std::get_if<Faults>(&layout)) {
    verdict.trouble = made::told(*faults);
    return verdict;
  }
  const Layout& sound = std::get<Layout>(layout);
  const Surface surface = surface_of(board, sound);
  const Stagewise stagewise{board, sound, surface, asked, verdict};
  const std::vector<Stage> stages = asked.stages.empty() ? stages_of(board) : asked.stages;
  for (const Stage stage : stages) stagewise.guarded(stage, [&] { stagewise.check(stage); });
  const bool last = std::find(stages.begin(), stages.end(), stages_of(board).back()) != stages.end();
  if (last && asked.pieces && !board.inlays.empty()) stagewise.check_pieces();
  return verdict;
}

}  // namespace sagitta::random_boards
