#include "paper/LengthSection.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "export/CommandLine.hpp"
#include "export/PageWords.hpp"
#include "input/PreparedFile.hpp"

/// The section along the board against hand formulas. BOARD-FILE, [scallop]: the surface is moved down by
/// depth sin^2(pi s), s from 0 to 1 between two slots' middles less the lands; one depth a space, linear in x between
/// the first slot and the last, taken at the space's middle. A fret lies at d(n) = L (1 - 2^(-n/12)).

namespace sagitta::test {
namespace {

/// whimbrel-scalloped: 648 mm, 6.6 thick, 305 to 406 mm radius, spaces 13 to 22 from 0.6 to 1 deep, land 1.5, strings
/// from 35.5 to 52 mm apart with 3.5 beside them, 10 mm behind fret 22.
constexpr double scale = 648, thick = 6.6, land = 1.5;

double d(int n) { return scale * (1 - std::exp2(-n / 12.0)); }
double middle(int space) { return (d(space - 1) + d(space)) / 2; }
double depth(int space) { return 0.6 + 0.4 * (middle(space) - d(12)) / (d(22) - d(12)); }

PreparedBoard board_of(const std::string& preset, const std::string& from = "", const std::string& to = "") {
  const ScratchFolder scratch;
  std::string text = bytes_of(preset_path(preset));
  if (!from.empty()) text.replace(text.find(from), from.size(), to);
  write_file(scratch / "a.toml", text);
  return std::get<PreparedBoard>(prepare((scratch / "a.toml").string()));
}

TEST(LengthSection, TroughsAreTheFormulas) {
  const LengthSection section = length_section_of(board_of("whimbrel-scalloped"));
  ASSERT_EQ(section.troughs.size(), 10U);
  for (int i = 0; i < 10; ++i) {
    const LengthSection::Trough& trough = section.troughs[static_cast<std::size_t>(i)];
    const int space = 13 + i;
    EXPECT_EQ(trough.fret, space);
    EXPECT_NEAR(trough.x, middle(space), 1e-9);
    EXPECT_NEAR(trough.depth, depth(space), 1e-9);
    EXPECT_NEAR(trough.left, thick - depth(space), 1e-9);
    const double x = middle(space), edge = (35.5 + 16.5 * x / scale) / 2 + 3.5, r = 305 + 101 * x / (d(22) + 10);
    for (const double left : trough.left_at_edge)
      EXPECT_NEAR(left, thick - (r - std::sqrt(r * r - edge * edge)) - depth(space), 1e-9) << space;
  }
}

TEST(LengthSection, TheTopFollowsTheWave) {
  const LengthSection section = length_section_of(board_of("whimbrel-scalloped"));
  EXPECT_NEAR(section.start(), -7, 1e-12) << "the nut's 4 mm and 3";
  EXPECT_NEAR(section.end(), d(22) + 10, 1e-9);
  int in_troughs = 0;
  for (const Point& p : section.top) {
    double wanted = thick;
    for (int space = 13; space <= 22; ++space) {
      const double low = d(space - 1) + land, high = d(space) - land;
      if (p.x <= low || p.x >= high) continue;
      const double wave = std::sin(std::acos(-1.0) * (p.x - low) / (high - low));
      wanted -= depth(space) * wave * wave;
      ++in_troughs;
    }
    EXPECT_NEAR(p.y, wanted, 1e-9) << p.x;
  }
  EXPECT_GT(in_troughs, 200);
}

// Slots keep their depth from the land: 6.6 - (1.7 + 0.35). Pockets of 1.9 end at 4.7, the nut's seat of 3.2 at 3.4.
TEST(LengthSection, SlotsPocketsAndTheNutSeatAreWhereTheyAreCut) {
  const LengthSection section = length_section_of(board_of("whimbrel-scalloped"));
  ASSERT_EQ(section.slots.size(), 22U);
  for (const LengthSection::Slot& slot : section.slots) {
    EXPECT_NEAR(slot.x, d(slot.fret), 1e-9);
    EXPECT_NEAR(slot.floor, 4.55, 1e-9);
    EXPECT_NEAR(slot.width, 0.584, 1e-12);
  }
  // The nut's seat and eight dots of 6 mm with 0.05 mm round them; the pair at fret 12 lies beside the centre line.
  ASSERT_EQ(section.recesses.size(), 9U);
  EXPECT_NEAR(section.recesses[0].low, 3.4, 1e-9);
  EXPECT_NEAR(section.recesses[0].to - section.recesses[0].from, 4, 1e-9);
  for (std::size_t i = 1; i < 9; ++i) {
    EXPECT_NEAR(section.recesses[i].low, 4.7, 1e-9);
    EXPECT_NEAR(section.recesses[i].to - section.recesses[i].from, 6.1, 0.01) << "drawn, from chords";
  }
}

// bittern-baritone falls by 0.4 mm from fret 14 to the body end.
TEST(LengthSection, TheSurfaceFallsAway) {
  const PreparedBoard ready = board_of("bittern-baritone");
  EXPECT_TRUE(is_shaped_along(ready));
  const LengthSection section = length_section_of(ready);
  const double whole = ready.board().board.thickness;
  const double from = *ready.board().scale.length * (1 - std::exp2(-14 / 12.0));
  EXPECT_NEAR(section.fall, 0.4, 1e-9);
  EXPECT_NEAR(section.fall_from, from, 1e-9);
  for (const Point& p : section.top)
    EXPECT_NEAR(p.y, whole - 0.4 * std::max(0.0, p.x - from) / (section.end() - from), 1e-9) << p.x;
}

TEST(LengthSection, AFlatTopHasNone) { EXPECT_FALSE(is_shaped_along(board_of("heron-six"))); }

/// Words of the page that read as this number.
std::ptrdiff_t times(const Page& page, const std::string& number) {
  return std::ranges::count(page.words, number, &Word::text);
}

std::string decimals(double value, int places) {
  char text[32];
  std::snprintf(text, sizeof text, "%.*f", places, value);
  return text;
}

// What is left under every trough stands in the list, under the deepest one on the drawing too.
TEST(LengthSection, StandsOnTheShopDrawingInTheBoardsUnits) {
  for (const char* units : {"mm", "in"}) {
    const ScratchFolder scratch;
    const Outcome made = sagitta("export '" + preset_path("whimbrel-scalloped").string() + "' --only pdf --units " +
                                 units + " --to '" + (scratch / "out").string() + "'");
    ASSERT_EQ(made.code, 0) << made.err;
    const std::vector<Page> pages = pages_of(scratch / "out/shop-drawing.pdf");
    ASSERT_EQ(pages.size(), 2U);
    expect_readable(pages[1], units);
    const bool inches = units == std::string("in");
    for (int space = 13; space <= 22; ++space)
      EXPECT_GE(times(pages[1], decimals((thick - depth(space)) / (inches ? 25.4 : 1), inches ? 4 : 2)), 1)
          << units << ", space " << space;
    EXPECT_GE(times(pages[1], decimals((thick - depth(22)) / (inches ? 25.4 : 1), inches ? 4 : 2)), 2);
  }
}

}  // namespace
}  // namespace sagitta::test
