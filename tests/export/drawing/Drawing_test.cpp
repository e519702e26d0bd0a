#include "drawing/Drawing.hpp"

#include <gtest/gtest.h>

#include <set>

#include "drawing/BoardDrawing.hpp"
#include "drawing/DrawingParts.hpp"
#include "drawing/InlayOutlines.hpp"
#include "export/DrawingCopy.hpp"
#include "input/PreparedFile.hpp"
#include "input/Presets.hpp"

/// Drawings read back by programs that are not ours, against the layout that they draw.

namespace sagitta::test {
namespace {

/// A preset's drawings, exported once.
class Drawn {
 public:
  explicit Drawn(const std::string& preset, const std::string& extra = "") {
    write_file(scratch_ / "board.toml", extra + bytes_of(preset_path(preset)));
    copy_drawings(scratch_.path());
    const Outcome outcome = sagitta("export '" + (scratch_ / "board.toml").string() +
                                    "' --only dxf,svg --dowels --to '" + (scratch_ / "out").string() + "'");
    if (outcome.code != 0) throw std::runtime_error(outcome.err);
  }
  json copy(const std::string& file) {
    if (copies_.is_null()) copies_ = drawing_copies(scratch_ / "out");
    return copies_.at(file);
  }
  fs::path file(const std::string& name) const { return scratch_ / ("out/" + name); }
  PreparedBoard ready() const { return std::get<PreparedBoard>(prepare(scratch_ / "board.toml")); }

 private:
  ScratchFolder scratch_;
  json copies_;
};

class DrawingOf : public testing::TestWithParam<std::string> {};

std::vector<std::string> preset_names() {
  std::vector<std::string> names;
  for (const Preset& preset : presets()) names.emplace_back(preset.name);
  return names;
}

INSTANTIATE_TEST_SUITE_P(Drawings, DrawingOf, testing::ValuesIn(preset_names()), [](const auto& preset) {
  std::string name = preset.param;
  std::replace(name.begin(), name.end(), '-', '_');
  return name;
});

// ezdxf's audit is another program's opinion of the file; $INSUNITS 4 is millimetres (DXF reference, HEADER).
TEST_P(DrawingOf, AuditOfTheDxfFindsNothing) {
  Drawn drawn(GetParam());
  for (const char* name : {"board", "from-below", "setups/whole-job-01/setup"}) {
    const json modern = drawn.copy(std::string(name) + ".dxf"), old = drawn.copy(std::string(name) + "-r12.dxf");
    EXPECT_EQ(modern["errors"], json::array()) << name;
    EXPECT_EQ(old["errors"], json::array()) << name;
    EXPECT_EQ(modern["version"], "AC1015");
    EXPECT_EQ(old["version"], "AC1009");
    EXPECT_EQ(modern["unit"], "mm");
  }
}

TEST_P(DrawingOf, EveryOutlineIsClosedAndSingle) {
  Drawn drawn(GetParam());
  const json copy = drawn.copy("board.dxf");
  const std::set<std::string> open = {"slot-middle", "binding", "centre-line", "blank-centre"};
  for (const auto& [layer, figures] : copy["layers"].items()) {
    const std::vector<CopiedFigure> all = copied_layer(copy, layer);
    for (std::size_t i = 0; i < all.size(); ++i) {
      EXPECT_EQ(all[i].closed, !open.contains(layer)) << layer;
      EXPECT_TRUE(!all[i].closed || area_of(all[i]) > 0) << layer;
      for (std::size_t k = 0; k < i; ++k)
        EXPECT_FALSE(same(all[i], all[k]) || same(all[i], reversed(all[k]))) << layer << " draws a thing twice";
    }
  }
}

TEST_P(DrawingOf, OutlineReadsBackAsTheLayouts) {
  Drawn drawn(GetParam());
  const Layout layout = drawn.ready().layout();
  for (const char* file : {"board.dxf", "board-r12.dxf", "board.svg"}) {
    const auto outline = copied_layer(drawn.copy(file), "outline");
    ASSERT_EQ(outline.size(), 1U) << file;
    EXPECT_TRUE(same(outline[0], expected(layout.outline))) << file;
  }
}

// A through slot's middle line lies on the line between the layout's ends and runs 2 mm past each; a blind one's ends
// half a width before the tips.
TEST_P(DrawingOf, SlotsReadBackAsTheLayouts) {
  Drawn drawn(GetParam());
  const Layout layout = drawn.ready().layout();
  for (const char* file : {"board.dxf", "board-r12.dxf", "board.svg"}) {
    const json copy = drawn.copy(file);
    const auto middles = copied_layer(copy, "slot-middle"), outlines = copied_layer(copy, "slot-outline");
    ASSERT_EQ(middles.size(), layout.slots.size());
    ASSERT_EQ(outlines.size(), layout.slots.size());
    for (std::size_t i = 0; i < middles.size(); ++i) {
      const Slot& slot = layout.slots[i];
      const Point a{middles[i].corners[0][0], middles[i].corners[0][1]};
      const Point b{middles[i].corners[1][0], middles[i].corners[1][1]};
      const double past = slot.blind ? -slot.width / 2 : 2, whole = distance(slot.bass_end, slot.treble_end);
      EXPECT_NEAR(std::abs(cross(unit(b - a), slot.bass_end - a)), 0, read_back) << slot.fret;
      EXPECT_NEAR(std::abs(cross(unit(b - a), slot.treble_end - a)), 0, read_back) << slot.fret;
      EXPECT_NEAR(distance(a, slot.bass_end), std::abs(past), read_back) << slot.fret;
      EXPECT_NEAR(distance(a, b), whole + 2 * past, read_back) << slot.fret;
      const double ends = slot.blind ? std::numbers::pi * slot.width * slot.width / 4 : 0;
      EXPECT_NEAR(area_of(outlines[i]), distance(a, b) * slot.width + ends, read_back) << slot.fret;
    }
  }
}

// x of fret n on one scale: L (1 - 2^(-n/12)) (TRADE: "Fret placement").
TEST(Drawing, SlotsStandWhereTheFormulaSays) {
  Drawn drawn("heron-six");
  const auto middles = copied_layer(drawn.copy("board.dxf"), "slot-middle");
  ASSERT_EQ(middles.size(), 22U);
  for (int n = 1; n <= 22; ++n)
    for (const auto& corner : middles[n - 1].corners)
      EXPECT_NEAR(corner[0], 648 * (1 - std::exp2(-n / 12.0)), read_back) << n;
}

TEST_P(DrawingOf, SvgHoldsWhatTheDxfHolds) {
  Drawn drawn(GetParam());
  for (const std::string name : {"board", "setups/whole-job-01/setup", "from-below"}) {
    const json svg = drawn.copy(name + ".svg"), dxf = drawn.copy(name + ".dxf"), old = drawn.copy(name + "-r12.dxf");
    for (const auto& [layer, figures] : dxf["layers"].items()) {
      EXPECT_TRUE(same_layer(copied_layer(dxf, layer), copied_layer(svg, layer))) << name << " " << layer;
      EXPECT_TRUE(same_layer(copied_layer(dxf, layer), copied_layer(old, layer))) << name << " " << layer;
    }
    EXPECT_EQ(svg["layers"].size(), dxf["layers"].size());
  }
}

TEST_P(DrawingOf, SvgIsWellFormedAndAsLargeAsTheBoard) {
  Drawn drawn(GetParam());
  EXPECT_EQ(shell("xmllint --noout '" + drawn.file("board.svg").string() + "'").code, 0);
  const json copy = drawn.copy("board.svg");
  const Box box = bounds(drawn.ready().layout().outline);
  EXPECT_EQ(copy["unit"], "mm");
  EXPECT_NEAR(copy["size"][0], box.high.x - box.low.x, read_back);
  EXPECT_NEAR(copy["size"][1], box.high.y - box.low.y, read_back);
  EXPECT_NEAR(copy["box"][0], box.low.x, read_back);
  EXPECT_NEAR(copy["box"][1], -box.high.y, read_back);
  EXPECT_EQ(copy["box"][2], copy["size"][0]);
  EXPECT_EQ(copy["box"][3], copy["size"][1]);
}

TEST_P(DrawingOf, LeftHandIsTheMirrorOfRightHand) {
  std::string text = bytes_of(preset_path(GetParam()));
  const std::size_t left = text.find("\nhand = \"left\"");
  const ScratchFolder scratch;
  if (left != std::string::npos)
    text.replace(left, 14, "\nhand = \"right\"");
  else
    text.replace(text.find("format = 1"), 10, "format = 1\nhand = \"left\"");
  write_file(scratch / "other.toml", text);
  copy_drawings(scratch.path());
  const std::string to = (scratch / "out").string();
  ASSERT_EQ(
      sagitta("export '" + (scratch / "other.toml").string() + "' --only dxf,svg --dowels --to '" + to + "'").code, 0);
  Drawn drawn(GetParam());
  const json others = drawing_copies(to);
  for (const std::string name : {"board.dxf", "board-r12.dxf", "board.svg", "from-below.dxf"}) {
    const json one = drawn.copy(name), other = others.at(name);
    for (const auto& [layer, figures] : one["layers"].items()) {
      if (layer == "scale-bar") continue;
      std::vector<CopiedFigure> images;
      for (const CopiedFigure& figure : copied_layer(other, layer)) images.push_back(mirrored(figure));
      EXPECT_TRUE(same_layer(copied_layer(one, layer), images)) << name << " " << layer;
    }
  }
}

TEST(Drawing, SameBoardSameBytes) {
  const Drawn once("curlew-seven-fan"), again("curlew-seven-fan");
  const auto folder = [](const Drawn& drawn) { return drawn.file("").string(); };
  EXPECT_EQ(shell("diff -r '" + folder(once) + "' '" + folder(again) + "'").code, 0);
}

std::size_t pockets_of(const PreparedBoard& ready) {
  const Drawing drawing = drawing_of(ready, inlay_outlines(ready));
  return layer_named(drawing, "pocket")->figures.size();
}

// The same pocket from two inlays is one pocket (BOARD-FILE).
TEST(Drawing, PocketOfTwoInlaysIsDrawnOnce) {
  const PreparedBoard ready = Drawn("heron-six").ready();
  Board twice = ready.board();
  twice.inlays.push_back(twice.inlays.front());
  EXPECT_EQ(pockets_of(std::get<PreparedBoard>(prepare(twice))), pockets_of(ready));
}

TEST(Drawing, PieceIsThePocketLessTheClearance) {
  Drawn drawn("heron-six");
  const json copy = drawn.copy("board.dxf");
  const auto pockets = copied_layer(copy, "pocket"), pieces = copied_layer(copy, "piece-shell");
  ASSERT_EQ(pieces.size(), pockets.size());
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    EXPECT_NEAR(pieces[i].corners[0][2], 3, read_back) << "6 mm dots";
    EXPECT_NEAR(pockets[i].corners[0][2], 3.05, read_back) << "and 0.05 mm of clearance";
  }
}

TEST(Drawing, DowelsFitOneWayRoundOnly) {
  const Layout layout = Drawn("heron-six").ready().layout();
  const std::vector<Dowel> dowels = dowels_of(layout);
  ASSERT_EQ(dowels.size(), 2U);
  const Point middle = between(layout.blank.low, layout.blank.high, 0.5);
  const auto lands_on_one = [&](auto turned) {
    int hits = 0;
    for (const Dowel& dowel : dowels)
      for (const Dowel& other : dowels) hits += distance(turned(dowel.centre - middle), other.centre - middle) < 2;
    return hits == 2;
  };
  EXPECT_TRUE(lands_on_one([](Point p) { return p; }));
  EXPECT_FALSE(lands_on_one([](Point p) { return -1 * p; })) << "turned round";
  EXPECT_FALSE(lands_on_one([](Point p) { return Point{p.x, -p.y}; })) << "turned over, along";
  EXPECT_FALSE(lands_on_one([](Point p) { return Point{-p.x, p.y}; })) << "turned over, across";
  for (const Dowel& dowel : dowels) {
    const bool beyond =
        dowel.centre.x + dowel.radius < layout.strip.low.x || dowel.centre.x - dowel.radius > layout.strip.high.x;
    EXPECT_TRUE(beyond) << "in the waste";
  }
}

TEST(Drawing, NamesAreWhatTheNarrowestFormatAllows) {
  EXPECT_EQ(plain_name("piece-mother of pearl"), "piece-mother_of_pearl");
  EXPECT_EQ(plain_name("Perlmutt, geädert"), "Perlmutt__ge_dert");
  EXPECT_EQ(plain_name(std::string(40, 'a')).size(), 31U);
}

}  // namespace
}  // namespace sagitta::test
