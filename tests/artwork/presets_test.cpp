// The drawings of our own: each is read with nothing to say about it.

#include <filesystem>

#include "Drawing.hpp"
#include "Places.hpp"
#include "artwork/ColourMaterials.hpp"
#include "board/BoardFile.hpp"
#include "board/InputPath.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;

std::vector<fs::path> presets(const std::string& ending) {
  std::vector<fs::path> all;
  for (const auto& entry : fs::directory_iterator(fs::path(places::tests()) / "../presets"))
    if (entry.path().extension() == ending) all.push_back(entry.path());
  return all;
}

TEST(PresetDrawings, AreReadWithoutARemark) {
  const auto drawings = presets(".svg");
  EXPECT_GE(drawings.size(), 11U);
  for (const fs::path& path : drawings) {
    const Artwork art = good(read_artwork(path), path.filename());
    expect_sound(art, path.filename());
    EXPECT_EQ(words(art.notes), "") << path.filename();
    EXPECT_FALSE(art.regions.empty()) << path.filename();
  }
}

TEST(PresetDrawings, KeepTheirCurves) {
  const Artwork egret = good(read_artwork(fs::path(places::tests()) / "../presets/egret-figure.svg"), "egret");
  std::size_t strokes = 0;
  for (const DrawnRegion& region : egret.regions)
    for (const PathLoop& loop : region.outlines) strokes += loop.size();
  EXPECT_LT(strokes, 60U) << "polygons have many more";
}

TEST(PresetDrawings, HaveAMaterialAndASheetForEachColour) {
  int seen = 0;
  for (const fs::path& path : presets(".toml")) {
    const BoardFile read = read_board(path);
    ASSERT_TRUE(read.sound()) << path.filename() << ": " << read.problems.front().message;
    for (std::size_t i = 0; i < read.board.inlays.size(); ++i) {
      const Inlay& inlay = read.board.inlays[i];
      if (inlay.shape != InlayShape::artwork) continue;
      ++seen;
      const auto where = input_path({"drawing", read.board.folder, inlay.file, read.board.folder}, Outside::refused);
      ASSERT_TRUE(std::holds_alternative<std::string>(where)) << std::get<Fault>(where).message;
      const Artwork art = good(read_artwork(std::get<std::string>(where)), inlay.file);
      EXPECT_EQ(words(material_faults(read.board, i, art)), "") << path.filename();
    }
  }
  EXPECT_GE(seen, 9);
}

}  // namespace
}  // namespace sagitta::test
