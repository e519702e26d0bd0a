#include "paper/Template.hpp"

#include <gtest/gtest.h>

#include <set>

#include "drawing/Paper.hpp"
#include "export/PagePicture.hpp"
#include "input/PreparedFile.hpp"

/// The slotting template as it comes out of a printer, measured on the picture that poppler makes of it.

namespace sagitta::test {
namespace {

/// What a line may be off on paper. A pixel is 0.042 mm.
constexpr double on_paper = 0.1;

struct Sheets {
  ScratchFolder scratch;
  PreparedBoard ready;
  fs::path pdf;

  Sheets(const std::string& preset, const std::string& paper)
      : ready(std::get<PreparedBoard>(prepare(preset_path(preset)))), pdf(scratch / "out/template.pdf") {
    const Outcome made = sagitta("export '" + preset_path(preset).string() + "' --only pdf --paper " + paper +
                                 " --to '" + (scratch / "out").string() + "'");
    if (made.code != 0) throw std::runtime_error(made.err);
  }
};

class TemplateOn : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Papers, TemplateOn, testing::Values("A4", "A3", "Letter", "Tabloid"));

TEST_P(TemplateOn, CheckScalesAreTrueBothWays) {
  const Sheets sheets("heron-six", GetParam());
  const PagePicture page(sheets.pdf, 1);
  const auto [along, up] = check_scales(*paper_named(GetParam()));
  // The long end marks alone reach this far from the scale's line.
  const double reach = 1.8;
  const auto span = [](const std::vector<double>& runs) { return runs.size() < 2 ? 0 : runs.back() - runs.front(); };
  EXPECT_NEAR(span(page.runs_along(along.y + reach, along.x - 5, along.x + 110)), 100, on_paper);
  EXPECT_NEAR(span(page.runs_along(along.y - 9 + reach, along.x - 5, along.x + 110)), 101.6, on_paper) << "4 in";
  EXPECT_NEAR(span(page.runs_up(up.x - reach, up.y - 5, up.y + 110)), 100, on_paper);
  EXPECT_NEAR(span(page.runs_up(up.x + 9 - reach, up.y - 5, up.y + 110)), 101.6, on_paper) << "4 in";
}

// Fret n of 648 mm stands at 648 (1 - 2^(-n/12)) (TRADE: "Fret placement").
TEST_P(TemplateOn, FretsStandAtTheirDistances) {
  const Sheets sheets("heron-six", GetParam());
  const Paper paper = *paper_named(GetParam());
  const std::vector<TemplateSheet> parts = template_sheets(sheets.ready.layout(), paper);
  std::set<int> seen;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const PagePicture page(sheets.pdf, static_cast<int>(i) + 1);
    EXPECT_NEAR(page.width(), paper.width, 0.1);
    EXPECT_NEAR(page.height(), paper.height, 0.1);
    double first = 0, first_found = 0;
    for (int n = 1; n <= 22; ++n) {
      const double x = 648 * (1 - std::exp2(-n / 12.0)), wanted = x + parts[i].shift.x;
      if (x < parts[i].part.low.x + 2 || x > parts[i].part.high.x - 2) continue;
      const std::vector<double> runs = page.runs_along(8 + parts[i].shift.y, wanted - 2, wanted + 2);
      ASSERT_EQ(runs.size(), 1U) << "fret " << n << " on sheet " << i + 1;
      if (first == 0) first = x, first_found = runs[0];
      EXPECT_NEAR(runs[0] - first_found, x - first, on_paper) << "fret " << n << " on sheet " << i + 1;
      seen.insert(n);
    }
  }
  EXPECT_EQ(seen.size(), 22U) << "every fret is on some sheet";
}

// Sheets laid cross over cross: the crosses of a joint stand at one place of the board on both.
TEST(Template, CrossesOfNeighboursMeet) {
  const Sheets sheets("heron-six", "A4");
  const std::vector<TemplateSheet> parts = template_sheets(sheets.ready.layout(), *paper_named("A4"));
  ASSERT_EQ(parts.size(), 2U);
  const double y = parts[0].part.high.y - 7 + 1;  // through the upper cross, above its horizontal arm
  const double middle = (parts[1].part.low.x + parts[0].part.high.x) / 2;
  for (std::size_t i = 0; i < 2; ++i) {
    const PagePicture page(sheets.pdf, static_cast<int>(i) + 1);
    const double wanted = middle + parts[i].shift.x;
    const std::vector<double> runs = page.runs_along(y + parts[i].shift.y, wanted - 3, wanted + 3);
    ASSERT_EQ(runs.size(), 3U) << "the circle, the arm, the circle";
    EXPECT_NEAR(runs[1], wanted, on_paper);
  }
  EXPECT_NEAR(parts[0].part.high.x - parts[1].part.low.x, template_overlap, 1e-9);
}

// A fan's frets lean; the left-handed board's lean the other way. On one sheet of the two hands the fret lines cross
// the row at y of the one where they cross the row at -y of the other.
TEST(Template, LeftHandIsTheMirrorOfRightHand) {
  const ScratchFolder scratch;
  std::string text = bytes_of(preset_path("curlew-seven-fan"));
  text.replace(text.find("format = 1"), 10, "format = 1\nhand = \"left\"");
  write_file(scratch / "left.toml", text);
  const Sheets right("curlew-seven-fan", "A4");
  ASSERT_EQ(
      sagitta("export '" + (scratch / "left.toml").string() + "' --only pdf --to '" + (scratch / "out").string() + "'")
          .code,
      0);
  const PagePicture one(right.pdf, 1), other(scratch / "out/template.pdf", 1);
  const double axis = template_sheets(right.ready.layout(), *paper_named("A4")).front().shift.y;
  for (const double y : {-15.0, 9.0, 15.0}) {
    const std::vector<double> here = one.runs_along(axis + y, 40, 280), there = other.runs_along(axis - y, 40, 280);
    ASSERT_EQ(here.size(), there.size()) << y;
    EXPECT_GT(here.size(), 6U) << y;
    for (std::size_t i = 0; i < here.size(); ++i) EXPECT_NEAR(here[i], there[i], on_paper) << y;
  }
}

TEST(Template, SameBoardSameBytesInAnotherProcess) {
  const Sheets once("curlew-seven-fan", "A4"), again("curlew-seven-fan", "A4");
  EXPECT_EQ(shell("diff -r '" + (once.scratch / "out").string() + "' '" + (again.scratch / "out").string() + "'").code,
            0);
}

TEST(Template, WideBoardTakesRowsOfSheetsToo) {
  Layout layout = std::get<PreparedBoard>(prepare(preset_path("heron-six"))).layout();
  layout.outline = rectangle({0, -200}, {400, 200});
  const std::vector<TemplateSheet> parts = template_sheets(layout, *paper_named("A4"));
  Box covered;
  for (const TemplateSheet& sheet : parts) covered.add(sheet.part.low), covered.add(sheet.part.high);
  EXPECT_LE(covered.low.y, -200);
  EXPECT_GE(covered.high.y, 200);
  EXPECT_GT(parts.back().row, 1);
}

TEST(Template, UnknownPaperIsRefused) {
  const ScratchFolder scratch;
  const Outcome made = sagitta("export '" + preset_path("heron-six").string() + "' --only pdf --paper foolscap --to '" +
                               (scratch / "out").string() + "'");
  EXPECT_EQ(made.code, 2);
  EXPECT_NE(made.err.find("choose from A4, A3, Letter and Tabloid"), std::string::npos) << made.err;
}

}  // namespace
}  // namespace sagitta::test
