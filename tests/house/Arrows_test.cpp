#include <gtest/gtest.h>

#include "Boxes.hpp"

namespace sagitta::test {
namespace {

// The rule is the house's own: DEVELOPERS.md draws the floors.

TEST(Arrows, PointDown) {
  const auto all = boxes();
  ASSERT_GE(all.size(), 9U);
  for (const auto& [name, box] : all) {
    ASSERT_GE(floor_of(name), 0) << name << " stands on no floor";
    for (const std::string& arrow : box.arrows)
      EXPECT_LT(floor_of(arrow), floor_of(name)) << "the build lets " << name << " use " << arrow;
  }
}

TEST(Arrows, AreTheOnlyWayToInclude) {
  const auto all = boxes();
  int seen = 0;
  for (const auto& [name, box] : all) {
    const std::set<std::string> reached = reach(all, name);
    for (const fs::path& file : files_of(all, name))
      for (const std::string& line : lines_of(file)) {
        const std::string used = included_box(line);
        if (used.empty()) continue;
        ++seen;
        EXPECT_TRUE(reached.count(used)) << shown(file) << ": " << line << ": no arrow leads from " << name << " there";
      }
  }
  EXPECT_GT(seen, 30) << "the test no longer sees the includes";
}

TEST(Arrows, NoFolderIsOutsideTheHouse) {
  const auto all = boxes();
  const std::set<std::string> no_boxes{"viewer/program", "viewer/pictures", "viewer/panels", "export/program"};
  for (const char* floor : {"modeler", "modeler/findings", "export", "viewer", "viewer/panels"})
    for (const auto& entry : fs::directory_iterator(source() / floor)) {
      const std::string folder = shown(entry.path()), name = entry.path().filename();
      if (!entry.is_directory() || no_boxes.contains(folder)) continue;
      EXPECT_TRUE(all.count(name) && all.at(name).folder == folder) << folder << " is no box of the build";
    }
}

// Rooms hold files, what is above them does not: a file beside the rooms would be compiled into no box.
TEST(Arrows, NoFileLiesBesideTheRooms) {
  for (const char* folder : {"modeler", "export", "viewer", "viewer/panels"})
    for (const auto& entry : fs::directory_iterator(source() / folder))
      EXPECT_TRUE(entry.path().extension() != ".cpp" && entry.path().extension() != ".hpp") << shown(entry.path());
}

TEST(Arrows, AFileBelongsToTheBoxNextAboveIt) {
  const auto all = boxes();
  for (const fs::path& file : files_of(all, "findings"))
    EXPECT_EQ(shown(file.parent_path()), "modeler/findings") << shown(file);
  EXPECT_FALSE(files_of(all, "rules").empty());
}

// The geometry kernel's headers end in .hxx.
TEST(Arrows, TheKernelStaysInSolidAndTheStepWriter) {
  int seen = 0;
  for (const char* folder : {"modeler", "export", "viewer"})
    for (const fs::path& file : code_below(folder)) {
      const std::string name = shown(file);
      const bool allowed = name.starts_with("modeler/solid/") || name.starts_with("export/cad/StepFile") ||
                           name == "export/cad/Gate.cpp" || name == "export/program/KernelGuarded.cpp";
      for (const std::string& line : lines_of(file)) {
        const bool kernel = line.starts_with("#include <") && line.find(".hxx>") != std::string::npos;
        seen += kernel;
        EXPECT_FALSE(kernel && !allowed) << name << ": " << line;
      }
    }
  EXPECT_GT(seen, 10) << "the test no longer sees the kernel";
}

TEST(Arrows, OneFileSeesTheLibraryThatClips) {
  int seen = 0;
  for (const char* folder : {"modeler", "export", "viewer"})
    for (const fs::path& file : code_below(folder))
      for (const std::string& line : lines_of(file)) {
        if (!line.starts_with("#include <polyclipping/")) continue;
        ++seen;
        EXPECT_EQ(shown(file), "modeler/polygon/Clip.cpp") << line;
      }
  EXPECT_GT(seen, 0) << "the test no longer sees the library";
}

TEST(Arrows, TheTestSeesAnArrowThatPointsBack) {
  const auto all =
      boxes_in("box(plan modeler/plan ARROWS surface\n    LIBS x)\nbox(surface modeler/surface ARROWS layout plane)\n");
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all.at("plan").arrows, std::set<std::string>{"surface"});
  EXPECT_EQ(reach(all, "plan"), (std::set<std::string>{"plan", "surface", "layout", "plane"}));
  EXPECT_EQ(included_box("#include \"plan/Plan.hpp\""), "plan");
  EXPECT_EQ(included_box("#include <vector>"), "");
  EXPECT_EQ(reach(all, "surface").count("plan"), 0U);
}

}  // namespace
}  // namespace sagitta::test
