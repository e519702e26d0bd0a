// Pictures of the stages, read by a decoder that is not ours, and looked at where the cuts are. Where a place of the
// board is in the picture follows from what Picture.hpp promises: without perspective, the blank three hundredths of
// the width from both sides.

#include "paper/ShadedPicture.hpp"

#include <gtest/gtest.h>

#define STB_IMAGE_IMPLEMENTATION
#define STBI_ONLY_PNG
#include <stb/stb_image.h>

#include <cmath>
#include <numbers>

#include "export/CommandLine.hpp"
#include "input/PreparedFile.hpp"
#include "jobsheet/JobHtml.hpp"

namespace sagitta::test {
namespace {

struct Pixels {
  int width = 0, height = 0, parts = 0;
  std::vector<unsigned char> bytes;  ///< three a pixel, rows from the top
  std::array<int, 3> at(int x, int y) const {
    const std::size_t i = 3 * (static_cast<std::size_t>(y) * width + x);
    return {bytes[i], bytes[i + 1], bytes[i + 2]};
  }
  bool white(int x, int y) const { return at(x, y) == std::array<int, 3>{255, 255, 255}; }
};

Pixels decoded(const std::string& png) {
  Pixels found;
  unsigned char* bytes =
      stbi_load_from_memory(reinterpret_cast<const unsigned char*>(png.data()), static_cast<int>(png.size()),
                            &found.width, &found.height, &found.parts, 3);
  if (!bytes) throw std::runtime_error(stbi_failure_reason());
  found.bytes.assign(bytes, bytes + std::size_t{3} * found.width * found.height);
  stbi_image_free(bytes);
  return found;
}

/// heron-six at every stage; slots, pockets and blank as its file has them.
class StagePictures : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    scratch_ = new ScratchFolder;
    const Outcome made = sagitta("export '" + preset_path("heron-six").string() + "' --only png --to '" +
                                 (*scratch_ / "out").string() + "'");
    if (made.code != 0) throw std::runtime_error(made.err);
  }
  static void TearDownTestSuite() { delete scratch_; }

  static std::string bytes(const std::string& stage) { return bytes_of(*scratch_ / ("out/" + stage + ".png")); }
  static Pixels picture(const std::string& stage) { return decoded(bytes(stage)); }

  const PreparedBoard ready = std::get<PreparedBoard>(prepare(preset_path("heron-six").string()));

  struct Spot {
    double x = 0, y = 0;
  };
  /// The eye stands 38 degrees above the board and is turned 22 degrees toward the nut.
  Spot seen(double x, double y, double z, const Pixels& in) const {
    constexpr double t = -22 * std::numbers::pi / 180, r = 38 * std::numbers::pi / 180;
    const auto across = [&](double a, double b) { return a * std::cos(t) + b * std::sin(t); };
    const auto up = [&](double a, double b, double c) {
      return -a * std::sin(t) * std::sin(r) + b * std::cos(t) * std::sin(r) + c * std::cos(r);
    };
    const Box& blank = ready.layout().blank;
    const double left = across(blank.low.x, blank.high.y), right = across(blank.high.x, blank.low.y);
    const double low = up(blank.low.x, blank.low.y, 0);
    const double border = 0.03 * in.width, scale = (in.width - 2 * border) / (right - left);
    return {border + scale * (across(x, y) - left), in.height - border - scale * (up(x, y, z) - low)};
  }
  double scale(const Pixels& in) const {
    const Spot a = seen(0, 0, 0, in), b = seen(100, 0, 0, in);
    return std::hypot(b.x - a.x, b.y - a.y) / 100;
  }

  /// Pixels within `reach` of the spot that differ between the pictures.
  static int changed(const Pixels& a, const Pixels& b, Spot spot, double reach) {
    int count = 0;
    for (int y = 0; y < a.height; ++y)
      for (int x = 0; x < a.width; ++x)
        count += std::hypot(x + 0.5 - spot.x, y + 0.5 - spot.y) <= reach && a.at(x, y) != b.at(x, y);
    return count;
  }

 private:
  static ScratchFolder* scratch_;
};
ScratchFolder* StagePictures::scratch_ = nullptr;

TEST_F(StagePictures, AreAsLargeAsTheySayAndNotBlank) {
  for (const char* stage : {"blank", "pocketed", "radiused", "slotted", "board", "pieces", "inlaid", "job"}) {
    const Pixels picture = this->picture(stage);
    EXPECT_EQ(picture.width, 1600) << stage;
    EXPECT_GT(picture.height, 160) << stage;
    EXPECT_LT(picture.height, 1600) << stage;
    EXPECT_EQ(picture.parts, 3) << stage;
    int ink = 0;
    for (int y = 0; y < picture.height; ++y)
      for (int x = 0; x < picture.width; ++x) ink += !picture.white(x, y);
    // A board lying aslant takes a tenth to a half of its picture; ten dots on an empty sheet less.
    const double share = static_cast<double>(ink) / (picture.width * picture.height);
    EXPECT_GT(share, std::string(stage) == "pieces" ? 0.02 : 0.1) << stage;
    EXPECT_LT(share, 0.6) << stage;
    for (const int x : {0, picture.width - 1})
      for (const int y : {0, picture.height - 1}) EXPECT_TRUE(picture.white(x, y)) << stage;
  }
}

TEST_F(StagePictures, ShowTheBlankWhereItIsAndNothingBeside) {
  const Pixels picture = this->picture("blank");
  const Box& blank = ready.layout().blank;
  const double top = ready.layout().blank_thickness;
  // A millimetre inside of each upper corner there is wood; three pixels outside of the picture's ends there is none.
  for (const double x : {blank.low.x + 2, blank.high.x - 2})
    for (const double y : {blank.low.y + 2, blank.high.y - 2}) {
      const Spot spot = seen(x, y, top, picture);
      EXPECT_FALSE(picture.white(static_cast<int>(spot.x), static_cast<int>(spot.y))) << x << " " << y;
    }
  const Spot left = seen(blank.low.x, blank.high.y, top, picture), right = seen(blank.high.x, blank.low.y, 0, picture);
  for (int y = 0; y < picture.height; ++y) {
    for (int x = 0; x < static_cast<int>(left.x) - 3; ++x) ASSERT_TRUE(picture.white(x, y)) << x << " " << y;
    for (int x = static_cast<int>(right.x) + 4; x < picture.width; ++x) ASSERT_TRUE(picture.white(x, y));
  }
}

TEST_F(StagePictures, DifferAtEachPocketAndNowhereElse) {
  const Pixels before = picture("blank"), after = picture("pocketed");
  ASSERT_EQ(before.height, after.height);
  const double radius = 3.05 * scale(before) * 1.1 + 2;  // dots of 6 mm and their room; two pixels for their lines
  int all = 0, at_pockets = 0;
  for (int y = 0; y < before.height; ++y)
    for (int x = 0; x < before.width; ++x) all += before.at(x, y) != after.at(x, y);
  ASSERT_EQ(ready.layout().markers.size(), 10U);
  for (const Marker& marker : ready.layout().markers) {
    const int here =
        changed(before, after, seen(marker.centre.x, marker.centre.y, ready.layout().blank_thickness, before), radius);
    EXPECT_GT(here, 20) << "fret " << marker.fret;
    at_pockets += here;
  }
  EXPECT_EQ(at_pockets, all);
}

TEST_F(StagePictures, DifferAtEachSlotAndNotBetweenThem) {
  const Pixels before = picture("radiused"), after = picture("slotted");
  ASSERT_EQ(before.height, after.height);
  for (int fret = 1; fret <= 22; ++fret) {
    // d(n) = L (1 - 2^(-n/12)); 648 mm. On the centre line, 6.3 mm up; the middle of the space before it.
    const double x = 648 * (1 - std::exp2(-fret / 12.0)), space = 648 * (1 - std::exp2(-(fret - 0.5) / 12.0));
    EXPECT_GT(changed(before, after, seen(x, 0, 6.3, before), 3), 3) << "fret " << fret;
    EXPECT_EQ(changed(before, after, seen(space, 0, 6.3, before), 3), 0) << "fret " << fret;
  }
}

TEST_F(StagePictures, DifferByTheRadiusAndTheOutline) {
  const Pixels flat = picture("pocketed"), round = picture("radiused");
  // At the strip's long edges the wood is 2 mm lower; on the blank's ends nothing was cut.
  const Box& strip = ready.layout().strip;
  EXPECT_GT(changed(flat, round, seen(250, strip.low.y, 6.3, flat), 8), 10);
  EXPECT_EQ(changed(flat, round, seen(ready.layout().blank.low.x + 10, 0, ready.layout().blank_thickness, flat), 10),
            0);
  EXPECT_NE(bytes("board"), bytes("slotted"));
  EXPECT_NE(bytes("job"), bytes("board")) << "the pieces are in";
}

TEST_F(StagePictures, AreTheSameBytesEveryTime) {
  const ScratchFolder scratch;
  const std::string to = (scratch / "again").string();
  ASSERT_EQ(sagitta("export '" + preset_path("heron-six").string() + "' --only png --to '" + to + "'").code, 0);
  for (const char* stage : {"blank", "pocketed", "radiused", "slotted", "board", "pieces", "inlaid", "job"})
    EXPECT_TRUE(bytes(stage) == bytes_of(to + "/" + stage + ".png")) << stage;
}

// Relative luminance of a wood as dark as ebony: under a tenth of white's on screen, more than 0.45 on paper (a grey
// that toner covers by less than half); a light colour stays light.
TEST(PaperColour, IsLightEnoughForCutsToBeSeen) {
  const auto luminance = [](const std::string& colour) {
    double sum = 0;
    const double weights[] = {0.2126, 0.7152, 0.0722};  // ITU-R BT.709
    for (std::size_t i = 0; i < 3; ++i)
      sum += weights[i] * std::pow(std::stoi(colour.substr(1 + 2 * i, 2), nullptr, 16) / 255.0, 2.2);
    return sum;
  };
  EXPECT_LT(luminance("#2b221e"), 0.1);
  EXPECT_GT(luminance(on_paper("#2b221e")), 0.45);
  EXPECT_LT(luminance(on_paper("#2b221e")), luminance(on_paper("#c0a080")));
  EXPECT_EQ(on_paper("#ffffff"), "#ffffff");
}

}  // namespace
}  // namespace sagitta::test
