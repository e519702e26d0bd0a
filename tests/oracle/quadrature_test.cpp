#include "oracle/Quadrature.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "oracle/Boolean.hpp"
#include "oracle/Catalogue.hpp"
#include "oracle/Gauss.hpp"
#include "oracle/HeightVolume.hpp"
#include "oracle/Section.hpp"
#include "prepared/Drawn.hpp"

namespace sagitta::oracle {
namespace {

struct Laid {
  Board board;
  Layout layout;
  Surface surface;
};

Laid laid_out(const std::string& name) {
  const BoardFile file = read_board(places::tests() + "/cases/" + name + ".toml");
  EXPECT_TRUE(file.sound()) << name;
  Laid laid{file.board, std::get<Layout>(lay_out(file.board)), {}};
  laid.surface = surface_of(laid.board, laid.layout);
  return laid;
}

TEST(Gauss, IntegratesSmoothAndRootEnds) {
  EXPECT_NEAR(integral([](double x) { return std::exp(x); }, 0, 1, 1e-12).value, std::numbers::e - 1, 1e-14);
  const auto half_circle = [](double x) { return std::sqrt((1 - x) * (1 + x)); };
  EXPECT_NEAR(integral(half_circle, -1, 1, 1e-12).value, std::numbers::pi / 2, 1e-13);
}

/// It ends where no halving helps, and says how far it came: noise of 1e-6 about 1, and a step that it was not told of.
TEST(Gauss, EndsWhateverIsIntegrated) {
  int calls = 0;
  std::uint64_t state = 1;
  const auto noisy = [&](double) {
    ++calls;
    state = state * 6364136223846793005ULL + 1442695040888963407ULL;
    return 1 + 1e-6 * (static_cast<double>(state >> 11) * 0x1p-53 - 0.5);
  };
  const Integral noise = integral(noisy, 0, 3, 1e-12);
  EXPECT_NEAR(noise.value, 3, 3e-6);
  EXPECT_GT(noise.change, 1e-12);
  EXPECT_LT(calls, 100 * most_parts);
  calls = 0;
  const auto step = [&](double x) { return ++calls, x < 0.7310585786 ? 2.0 : 5.0; };
  EXPECT_NEAR(integral(step, 0, 1, 1e-9).value, 2 * 0.7310585786 + 5 * (1 - 0.7310585786), 1e-8);
  EXPECT_LT(calls, 100 * most_parts);
}

/// The same closed form in long double, which carries three more digits.
TEST(Section, DropIntegralLosesNoDigits) {
  for (const double radius : {115.0, 240.0, 2234.3, 1e5})
    for (const double y : {0.5, 11.0, 57.0, 114.9}) {
      const long double r = radius, a = std::asin(static_cast<long double>(y) / r);
      long double sum = 0, term = a;  // (sin a - a) as its series
      for (int k = 1; k < 30; ++k) sum += term *= -a * a / ((2 * k) * (2 * k + 1));
      const long double half = std::sin(a / 2), exact = r * r * (sum / 2 + std::sin(a) * half * half);
      EXPECT_NEAR(drop_integral(radius, y) / static_cast<double>(exact), 1, 4e-15) << radius << " " << y;
    }
}

TEST(Section, DropIntegralIsTheSegmentOfTheCircle) {
  // Segment of half angle a: R^2 (a - sin a cos a) under the chord, Machinery's Handbook, 31st ed., p. 79; over the
  // arc the drop's integral is 2 R^2 sin a less chord height times chord, less the segment.
  for (const double radius : {30.0, 240.0, 559.0, 561.0}) {
    const double y = 28, angle = std::asin(y / radius);
    const double chord_drop = radius * (1 - std::cos(angle));
    const double segment = radius * radius * (angle - std::sin(angle) * std::cos(angle));
    EXPECT_NEAR(2 * drop_integral(radius, y), 2 * y * chord_drop - segment, 1e-9);
  }
  EXPECT_NEAR(drop_integral(1e6, 28), 28.0 * 28 * 28 / 6e6, 1e-11);  // y^3/6R, next term 1e-13
}

/// S00 of the catalogue has a closed form: a cylinder's segment less four slots of constant depth.
TEST(Quadrature, PlainCylinderBoard) {
  const Laid s00 = laid_out("singles/S00");
  const double r = 240, b = 28, t = 6.5;
  const double section = r * r * std::asin(b / r) + b * std::sqrt(r * r - b * b) + 2 * b * (t - r);
  EXPECT_NEAR(quadrature(s00.board, s00.layout, s00.surface).value, 392 * section - 4 * 0.5 * 2 * 56, 1e-6);
}

/// Every stage of S00 by hand: block, block, strip of 398 by 62 with its arc, slots to the strip's sides.
TEST(Quadrature, StagesOfThePlainBoard) {
  const Laid s00 = laid_out("singles/S00");
  const Box blank = s00.layout.blank;
  const double block = (blank.high.x - blank.low.x) * (blank.high.y - blank.low.y) * s00.layout.blank_thickness;
  const double r = 240, b = 31, t = 6.5;
  const double under = r * r * std::asin(b / r) + b * std::sqrt(r * r - b * b) + 2 * b * (t - r);
  const double radiused = block - 398 * (2 * b * s00.layout.blank_thickness - under);
  const auto volume = [&](Stage stage) { return quadrature(s00.board, s00.layout, s00.surface, stage).value; };
  EXPECT_NEAR(volume(Stage::blank), block, 1e-6);
  EXPECT_NEAR(volume(Stage::pocketed), block, 1e-6);
  EXPECT_NEAR(volume(Stage::radiused), radiused, 1e-6);
  EXPECT_NEAR(volume(Stage::slotted), radiused - 4 * 0.5 * 2 * 62, 1e-6);
}

/// Sections that carry more rounding than was asked of each stretch; the kernel's booleans say what is right.
TEST(Quadrature, EndsOnALargeBoard) {
  const Laid large = laid_out("large-board");
  const Work work = work_at(large.board, large.layout, large.surface, Stage::board);
  const Booleans solid = booleans(work);
  EXPECT_TRUE(solid.sound);
  const Volume volume = quadrature(work);
  EXPECT_NEAR(volume.value / solid.volume, 1, 1e-8);
  EXPECT_LT(volume.change / volume.value, 1e-10);
}

/// The oracle takes an ellipse for arcs.
bool has_ovals(const Board& board) {
  return std::any_of(board.inlays.begin(), board.inlays.end(),
                     [](const Inlay& inlay) { return inlay.shape == InlayShape::oval; }) ||
         std::any_of(board.cuts.begin(), board.cuts.end(),
                     [](const sagitta::Cut& cut) { return cut.shape == CutShape::oval; });
}

class CaseVolume : public testing::TestWithParam<Case> {};

/// The references are printed to 1e-6 mm^3.
TEST_P(CaseVolume, AgreesWithTheReference) {
  const Case& one = GetParam();
  const BoardFile file = read_board(one.path);
  if (one.refused) {
    if (!file.sound()) return;
    const auto layout = lay_out(file.board);
    if (!std::holds_alternative<Layout>(layout)) return;
    const Layout& sound = std::get<Layout>(layout);
    EXPECT_FALSE(surface_faults(file.board, sound, surface_of(file.board, sound)).empty());
    return;
  }
  ASSERT_TRUE(file.sound()) << file.problems.front().message;
  const auto drawn = draw(file.board);
  ASSERT_TRUE(std::holds_alternative<Drawn>(drawn)) << std::get<Faults>(drawn).front().message;
  const auto& [board, layout, surface, planned] = std::get<Drawn>(drawn);
  EXPECT_TRUE(surface_faults(board, layout, surface).empty());
  const bool forms = board.scallop || board.edges;
  const double volume =
      forms ? height_volume(board, layout, surface, Stage::board) : quadrature(board, layout, surface).value;
  EXPECT_NEAR(volume, one.volume, forms || has_ovals(board) ? 1e-9 * one.volume : 2e-6);
}

std::string plain_name(const testing::TestParamInfo<Case>& info) {
  std::string name = info.param.name;
  std::erase(name, '-');
  return name;
}

INSTANTIATE_TEST_SUITE_P(Catalogue, CaseVolume, testing::ValuesIn(catalogue(places::tests() + "/cases")), plain_name);

/// Two ways that share nothing but the list of cuts. Boards whose booleans take a second or less.
class TwoWays : public testing::TestWithParam<const char*> {};

TEST_P(TwoWays, BooleansAgreeWithQuadrature) {
  const Laid one = laid_out(GetParam());
  for (const Stage stage : {Stage::blank, Stage::pocketed, Stage::radiused, Stage::slotted, Stage::board}) {
    const Work work = work_at(one.board, one.layout, one.surface, stage);
    const Booleans solid = booleans(work);
    const double volume = quadrature(work).value;
    EXPECT_EQ(solid.trouble, "");
    EXPECT_TRUE(solid.sound);
    EXPECT_EQ(solid.solids, 1);
    EXPECT_NEAR(solid.volume / volume, 1, 1e-8) << "stage " << static_cast<int>(stage);
  }
}

INSTANTIATE_TEST_SUITE_P(Some, TwoWays,
                         testing::Values("c04-fall", "c09-break-through", "singles/S34", "singles/S61", "singles/S84",
                                         "singles/S88"));

}  // namespace
}  // namespace sagitta::oracle
