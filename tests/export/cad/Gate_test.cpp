// What is not sound is not written: a plan is spoilt on purpose, and the export of it leaves no folder, says which body
// is wrong, and keeps the board, from which the same export can be run again.

#include "cad/Gate.hpp"

#include <gtest/gtest.h>

#include <Standard_Failure.hxx>
#include <nlohmann/json.hpp>

#include "drawing/Paper.hpp"
#include "export/CommandLine.hpp"
#include "export/Gmsh.hpp"
#include "folder/Folder.hpp"
#include "made/Growing.hpp"
#include "package/FaultReport.hpp"
#include "package/HandOff.hpp"
#include "program/Command.hpp"
#include "program/KernelGuarded.hpp"
#include "trial/Trial.hpp"
#include "trial/TrialFiles.hpp"

namespace sagitta::test {
namespace {

PreparedBoard ready(const std::string& preset) {
  return std::get<PreparedBoard>(prepare(preset_path(preset).string()));
}

/// Swaps the ends of a wall of a slot: the slot's floor crosses itself.
void spoil(Plan& plan) {
  for (const PlanEdge& edge : plan.map.edges)
    if (edge.source.kind == Source::Kind::slot && distance(plan.map.vertices[static_cast<std::size_t>(edge.from)],
                                                           plan.map.vertices[static_cast<std::size_t>(edge.to)]) > 10) {
      std::swap(plan.map.vertices[static_cast<std::size_t>(edge.from)],
                plan.map.vertices[static_cast<std::size_t>(edge.to)]);
      return;
    }
  FAIL() << "no slot";
}

/// What the program never does to a prepared board.
void spoil(const PreparedBoard& board, Stage stage) { spoil(const_cast<Plan&>(board.plan(stage))); }

class Gate : public testing::Test {
 protected:
  void expect_refused(const PreparedBoard& board, ExportOrder order) {
    Folder folder(scratch / "job", false);
    EXPECT_THROW(write_hand_off(board, {}, order, folder, {}), ProgramFault);
  }
  void expect_kept(const std::string& name) {
    EXPECT_TRUE(fs::exists(scratch / (name + "/fault.txt"))) << name;
    EXPECT_TRUE(fs::exists(scratch / (name + "/manifest.json"))) << name;
  }
  std::size_t entries() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(scratch.path()), fs::directory_iterator()));
  }

  ScratchFolder scratch;
};

TEST_F(Gate, WritesNothingOfASpoiltPlanAndKeepsTheBoard) {
  const PreparedBoard board = ready("heron-six");
  spoil(board, Stage::slotted);
  ExportOrder step{{Stage::slotted}, {}, {}}, stl = step, three_mf = step;
  step.kinds.step = stl.kinds.stl = three_mf.kinds.three_mf = true;
  expect_refused(board, step);
  expect_kept("job-fault");
  expect_refused(board, stl);
  expect_kept("job-fault-2");
  expect_refused(board, three_mf);
  expect_kept("job-fault-3");
  EXPECT_EQ(entries(), 3U);
  const Outcome again =
      sagitta("export " + (scratch / "job-fault/manifest.json").string() + " --to " + (scratch / "again").string());
  EXPECT_EQ(again.code, 0) << again.err << "the board itself is sound";
}

TEST_F(Gate, JudgesTheWoodInAssembliesToo) {
  const PreparedBoard board = ready("heron-six");
  spoil(board, Stage::board);
  ExportOrder job{{}, {Assembly::job}, {}};
  job.kinds.step = true;
  expect_refused(board, job);
  expect_kept("job-fault");
}

TEST_F(Gate, JudgesTheTrialStrip) {
  const PreparedBoard board = ready("heron-six");
  const Trial trial = std::get<Trial>(trial_of(board));
  spoil(trial.strip, Stage::board);
  Folder folder(scratch / "strip", false);
  EXPECT_THROW(write_trial(board, {}, trial, *paper_named("A4"), folder, {}), ProgramFault);
  expect_kept("strip-fault");
}

TEST_F(Gate, SaysWhichBodyAndWhere) {
  const PreparedBoard board = ready("heron-six");
  Plan plan = board.plan(Stage::slotted);
  spoil(plan);
  try {
    sound_solid(lift(plan), {"slotted", "board"});
    FAIL() << "it came through";
  } catch (const Unsound& error) {
    EXPECT_EQ(error.place.stage, "slotted");
    EXPECT_EQ(error.place.body, "board");
    EXPECT_GT(error.flaw.at[0], -100);
    EXPECT_LT(error.flaw.at[0], 700);
  }
}

/// The board's volume is the plan's: another plan's is refused although the solid is sound.
TEST_F(Gate, JudgesTheVolumeByThePlan) {
  const PreparedBoard board = ready("heron-six");
  Shell shell = lift(board.plan(Stage::slotted));
  EXPECT_NO_THROW(sound_solid(shell, {"slotted", "board"}));
  shell.plan = board.plan(Stage::radiused);
  try {
    sound_solid(shell, {"slotted", "board"});
    FAIL() << "it came through";
  } catch (const Unsound& error) {
    EXPECT_EQ(error.flaw.kind, Flaw::Kind::volume);
  }
}

/// A solid can be the plan's and the plan not the board's: cells that do not cover what a cut's outline encloses.
TEST_F(Gate, JudgesThePlanByTheOutlines) {
  const PreparedBoard board = ready("heron-six");
  Shell shell = lift(board.plan(Stage::slotted));
  for (PlanFeature& cut : shell.plan.features) EXPECT_NEAR(cut.covered, cut.area, 1e-9 * (1 + cut.area)) << cut.name;
  PlanFeature& cut = shell.plan.features.back();
  cut.covered -= 4 * shell.plan.snap * cut.length;
  for (const bool mesh : {true, false}) try {
      if (mesh) sound_mesh(shell, 0.01, {"slotted", "board"}, {});
      if (!mesh) sound_solid(shell, {"slotted", "board"});
      FAIL() << "it came through";
    } catch (const Unsound& error) {
      EXPECT_EQ(error.flaw.kind, Flaw::Kind::coverage);
    }
}

TEST(Guarded, TellsAFaultOfTheProgramFromAFailedWrite) {
  // In a process of its own: the output is closed at its end.
  EXPECT_EXIT(std::exit(kernel_guarded([] { return 0; })), testing::ExitedWithCode(exit_good), "");
  EXPECT_EQ(kernel_guarded([]() -> int { throw ProgramFault("x"); }), 4);
  EXPECT_EQ(kernel_guarded([]() -> int { throw Standard_Failure("x"); }), 4);
  EXPECT_EQ(kernel_guarded([]() -> int { throw std::logic_error("x"); }), 4);
  EXPECT_EQ(kernel_guarded([]() -> int { throw FolderError("x"); }), 3);
  EXPECT_EQ(kernel_guarded([]() -> int { throw UsageError("x"); }), 2);
}

/// A hundred leaves lie between the lines along which faces are cut into bands; lines of their own came so close
/// together that points where they end at the rim were one in a file.
TEST(Leaves, AreWrittenAtEveryStage) {
  const ScratchFolder scratch;
  const std::string path = write_growing(Growing::leaves, 100, (scratch / "board").string());
  const PreparedBoard board = std::get<PreparedBoard>(prepare(path));
  ExportOrder order{stages_of(board.board()), {Assembly::job, Assembly::pieces}, {}};
  order.kinds.stl = order.kinds.three_mf = true;
  Folder folder(scratch / "out", false);
  EXPECT_NO_THROW(write_hand_off(board, {}, order, folder, {}));
}

/// gmsh weighs by the kernel's default integrals.
TEST(DefaultReader, GmshWeighsDrawnPiecesRight) {
  const ScratchFolder scratch;
  for (const char* preset : {"egret-figure", "wave-border", "numerals"}) {
    const PreparedBoard board = ready(preset);
    ExportOrder order{{Stage::board}, {Assembly::pieces}, {}};
    order.kinds.step = true;
    Folder folder(scratch / preset, false);
    write_hand_off(board, {}, order, folder, {});
    folder.keep();
    for (const char* stage : {"board", "pieces"}) {
      double planned = 0;
      const auto manifest = nlohmann::json::parse(bytes_of(scratch / (std::string(preset) + "/manifest.json")));
      for (const auto& file : manifest["files"])
        if (file["file"] == std::string(stage) + ".step")
          for (const auto& body : file["bodies"]) planned += body["volume"].get<double>();
      const GmshReading read = read_by_gmsh(scratch / (std::string(preset) + "/" + stage + ".step"));
      EXPECT_NEAR(read.volume / planned, 1, 1e-4) << preset << " " << stage;
    }
  }
}

}  // namespace
}  // namespace sagitta::test
