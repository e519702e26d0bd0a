// A part of the job beside the whole: what is exported again lies where it lay, read back by ezdxf; what is left out is
// not there. heron-six: slots 1 to 22, ten shell dots of 6 mm, clearance 0.05.

#include "drawing/JobPart.hpp"

#include <gtest/gtest.h>

#include <regex>
#include <set>

#include "export/DrawingCopy.hpp"
#include "export/StepReading.hpp"

namespace sagitta::test {
namespace {

std::string exported(const ScratchFolder& scratch, const std::string& folder, const std::string& options) {
  const std::string to = scratch / folder;
  const Outcome made = sagitta("export '" + preset_path("heron-six").string() + "' --to '" + to + "' " + options);
  EXPECT_EQ(made.code, 0) << made.err;
  return to;
}

std::string refused(const std::string& options) {
  const ScratchFolder scratch;
  const std::string to = scratch / "part";
  const Outcome made = sagitta("export '" + preset_path("heron-six").string() + "' --to '" + to + "' " + options);
  EXPECT_EQ(made.code, 2);
  EXPECT_FALSE(fs::exists(to));
  return made.err;
}

TEST(JobPart, FretsAreReadAsTheyAreTyped) {
  EXPECT_EQ(frets_in("9-12"), (std::set<int>{9, 10, 11, 12}));
  EXPECT_EQ(frets_in("1,3,9-10"), (std::set<int>{1, 3, 9, 10}));
  EXPECT_EQ(words_of(frets_in("3,1,9-12")), "1,3,9-12");
  for (const char* wrong : {"", "9-", "-3", "x", "12-9", "1,,2", "1.5"})
    EXPECT_THROW(frets_in(wrong), PartError) << wrong;
}

TEST(JobPart, SlotsOfSomeFretsStayWhereTheyAre) {
  const ScratchFolder scratch;
  const std::string all = exported(scratch, "all", "--only dxf"),
                    part = exported(scratch, "part", "--only dxf --frets 9-22 --operation slots");
  for (const char* file : {"board.dxf", "setups/whole-job-01/setup.dxf"}) {
    const json whole = drawing_copies(all).at(file), some = drawing_copies(part).at(file);
    const std::vector<CopiedFigure> before = copied_layer(whole, "slot-middle"),
                                    after = copied_layer(some, "slot-middle");
    ASSERT_EQ(before.size(), 22U);
    ASSERT_EQ(after.size(), 14U);
    EXPECT_TRUE(same_layer(after, {before.begin() + 8, before.end()})) << file;
    EXPECT_TRUE(same_layer(copied_layer(some, "blank"), copied_layer(whole, "blank")));
    for (const char* other : {"pocket", "outline", "radius-area", "piece-shell"})
      EXPECT_TRUE(copied_layer(some, other).empty()) << file << " " << other;
  }
}

/// Every finding that the job sheet tells, of the whole board or at one of its steps.
std::multiset<std::string> findings_told(const std::string& folder) {
  const std::string sheet = bytes_of(folder + "/job-sheet.html");
  const std::regex finding("[>](note|look|stop), [^<]*");
  std::multiset<std::string> told;
  for (std::sregex_iterator at(sheet.begin(), sheet.end(), finding), end; at != end; ++at) told.insert(at->str());
  EXPECT_GT(told.size(), 3U);
  return told;
}

// Marks at frets 3 to 21 and a set-up for all work: the part has neither fewer marks nor fewer operations on the board.
TEST(JobPart, HasTheFindingsOfTheWholeBoard) {
  const ScratchFolder scratch;
  const std::multiset<std::string> whole = findings_told(exported(scratch, "all", "--only html"));
  for (const char* part : {"--frets 3-9", "--frets 9-22 --operation slots", "--operation outline"})
    EXPECT_EQ(findings_told(exported(scratch, std::to_string(std::hash<std::string>()(part)),
                                     std::string("--only html ") + part)),
              whole)
        << part;
}

// Tabs keep clear of all side dots of the board, those of another part too.
TEST(JobPart, TabsStayWhereTheyAre) {
  const ScratchFolder scratch;
  write_file(scratch / "board.toml",
             bytes_of(preset_path("reed-tenor")) + "\n[side_dots]\nfrets = [6, 8, 9, 10, 11, 12, 13, 14]\n");
  const std::string board = "export '" + (scratch / "board.toml").string() + "' --only dxf --to '";
  ASSERT_EQ(sagitta(board + (scratch / "all").string() + "'").code, 0);
  ASSERT_EQ(sagitta(board + (scratch / "part").string() + "' --frets 1-2").code, 0);
  const auto tabs = [&](const char* folder) {
    return copied_layer(drawing_copies(scratch / folder).at("board.dxf"), "tabs");
  };
  EXPECT_EQ(tabs("all").size(), 6U);
  EXPECT_TRUE(same_layer(tabs("part"), tabs("all")));
}

TEST(JobPart, SolidLacksTheFretsLeftOut) {
  const ScratchFolder scratch;
  const std::string part = exported(scratch, "part", "--only step --frets 1-2 --operation slots");
  EXPECT_EQ(listing(part), "manifest.json\nslotted.step\n");
  const ReadStep step = read_step(bytes_of(part + "/slotted.step"));
  std::size_t slots = 0;
  for (const ReadPart& each : step.parts) slots += each.layer == "slot middle lines";
  EXPECT_EQ(slots, 2U);
}

TEST(JobPart, PiecesGrowByTheRoomTheyLose) {
  const ScratchFolder scratch;
  const std::string part = exported(scratch, "part", "--only dxf,csv --pieces shell-03,shell-05 --clearance 0.03");
  const std::vector<CopiedFigure> pieces = copied_layer(drawing_copies(part).at("board.dxf"), "piece-shell");
  ASSERT_EQ(pieces.size(), 2U);
  // A 6 mm dot is the pocket less 0.05 mm all round; with 0.03 mm of room it is 0.02 mm larger in radius.
  const std::vector<CopiedFigure> whole =
      copied_layer(drawing_copies(exported(scratch, "all", "--only dxf")).at("board.dxf"), "piece-shell");
  for (const CopiedFigure& piece : pieces) {
    ASSERT_TRUE(piece.circle);
    EXPECT_NEAR(piece.corners[0][2], whole.front().corners[0][2] + 0.02, read_back);
  }
  const std::string list = bytes_of(part + "/pieces.csv");
  EXPECT_NE(list.find("shell-03"), std::string::npos);
  EXPECT_EQ(list.find("shell-04"), std::string::npos);
}

/// Points along an outline, at most `apart` from each other; arcs by their bulges.
std::vector<Point> points_along(const CopiedFigure& figure, double apart) {
  std::vector<Point> points;
  if (figure.circle) {
    const auto& [x, y, r] = figure.corners[0];
    const int count = static_cast<int>(2 * M_PI * r / apart) + 1;
    for (int i = 0; i < count; ++i)
      points.push_back({x + r * std::cos(2 * M_PI * i / count), y + r * std::sin(2 * M_PI * i / count)});
    return points;
  }
  for (std::size_t i = 0; i < figure.corners.size(); ++i) {
    const auto& a = figure.corners[i];
    const auto& b = figure.corners[(i + 1) % figure.corners.size()];
    const double angle = 4 * std::atan(a[2]), chord = std::hypot(b[0] - a[0], b[1] - a[1]);
    const int count = static_cast<int>(chord * (1 + std::abs(angle)) / apart) + 1;
    for (int k = 0; k < count; ++k) {
      const double t = static_cast<double>(k) / count;
      Point p{a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])};
      if (a[2] != 0) {
        // Along the arc: its middle lies chord / 2 / tan(angle / 2) to the left of the chord's.
        const double off = chord / 2 / std::tan(angle / 2), r = chord / 2 / std::sin(angle / 2);
        const Point m{(a[0] + b[0]) / 2 - off * (b[1] - a[1]) / chord, (a[1] + b[1]) / 2 + off * (b[0] - a[0]) / chord};
        const double from = std::atan2(a[1] - m.y, a[0] - m.x) + t * angle;
        p = {m.x + std::abs(r) * std::cos(from), m.y + std::abs(r) * std::sin(from)};
      }
      points.push_back(p);
    }
  }
  return points;
}

std::vector<Point> points_along(const std::vector<CopiedFigure>& figures, double apart) {
  std::vector<Point> points;
  for (const CopiedFigure& figure : figures)
    for (const Point p : points_along(figure, apart)) points.push_back(p);
  return points;
}

/// From each point of an outline to the nearest of another.
std::vector<double> gaps(const std::vector<Point>& from, const std::vector<Point>& to) {
  std::vector<double> all;
  for (const Point p : from) {
    double least = 1e300;
    for (const Point q : to)
      if (std::abs(p.x - q.x) < least) least = std::min(least, distance(p, q));
    all.push_back(least);
  }
  std::sort(all.begin(), all.end());
  return all;
}

/// Whether p lies in an odd number of the outlines: in the pocket, and on none of its islands.
bool inside(const std::vector<CopiedFigure>& figures, Point p) {
  bool odd = false;
  for (const CopiedFigure& figure : figures) {
    const std::vector<Point> corners = points_along(figure, 0.02);
    for (std::size_t i = 0; i < corners.size(); ++i) {
      const Point a = corners[i], b = corners[(i + 1) % corners.size()];
      if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) odd = !odd;
    }
  }
  return odd;
}

/// The least radius of an inner corner; those that turn by less than 45 degrees are no corner.
double tightest(const std::vector<CopiedFigure>& figures) {
  double least = 1e300;
  for (const CopiedFigure& figure : figures)
    for (std::size_t i = 0; i < figure.corners.size(); ++i) {
      const auto& a = figure.corners[i];
      const auto& b = figure.corners[(i + 1) % figure.corners.size()];
      const double angle = 4 * std::atan(a[2]);
      if (angle < -M_PI / 4) least = std::min(least, std::hypot(b[0] - a[0], b[1] - a[1]) / 2 / std::sin(-angle / 2));
    }
  return least;
}

// A drawn piece for a pocket that is cut: numerals, room 0.05 before. Outlines are within 0.0012 mm of what was fitted
// and chords within 0.0005 (see the fit of drawings), points of the pocket 0.01 mm apart. An arc that strays by 0.0012
// from one of 0.3 and turns by 45 degrees has a radius of 0.3 - 0.0012 / (1 / cos 22.5 - 1) = 0.285 at least.
TEST(JobPart, DrawnPiecesGrowByTheRoomTheyLose) {
  const ScratchFolder scratch;
  const std::string board = "export '" + preset_path("numerals").string() + "' --only dxf --to '";
  ASSERT_EQ(sagitta(board + (scratch / "all").string() + "'").code, 0);
  const std::vector<CopiedFigure> all = copied_layer(drawing_copies(scratch / "all").at("board.dxf"), "pocket");
  const std::vector<Point> pockets = points_along(all, 0.01);
  constexpr double off = 0.004;
  for (const double room : {0.01, 0.05, 0.09}) {
    const std::string to = scratch / std::to_string(room);
    const Outcome made = sagitta(board + to + "' --pieces bone-04,bone-05,bone-10 --clearance " + std::to_string(room));
    ASSERT_EQ(made.code, 0) << made.err;
    const std::vector<CopiedFigure> pieces = copied_layer(drawing_copies(to).at("board.dxf"), "piece-bone");
    EXPECT_GE(pieces.size(), 3U);
    const std::vector<Point> along = points_along(pieces, 0.05);
    const std::vector<double> found = gaps(along, pockets);
    EXPECT_GT(found.front(), room - off) << room;
    EXPECT_LT(found.back(), std::max(room, 0.05) + off) << room << ": nowhere is more wood taken off than has to be";
    EXPECT_NEAR(found[found.size() / 2], room, off) << room;
    for (std::size_t i = 0; i < along.size(); i += 7) EXPECT_TRUE(inside(all, along[i])) << room;
    EXPECT_GT(tightest(pieces), 0.285) << room << ": the cutter is 0.6 wide";
  }
}

/// Exports pieces of a board with one drawing again; red is bone, blue pearl.
Outcome drawn_again(const ScratchFolder& scratch, const std::string& shapes, const std::string& options) {
  write_file(
      scratch / "knot.svg",
      "<svg xmlns='http://www.w3.org/2000/svg' width='12mm' height='12mm' viewBox='0 0 12 12'>" + shapes + "</svg>");
  write_file(scratch / "board.toml",
             bytes_of(preset_path("reed-tenor")) +
                 "\n[[inlays]]\nshape = \"artwork\"\nfile = \"knot.svg\"\nfrets = [4]\nalong = 8\ndepth = 1.2\n"
                 "colours = { \"#c02020\" = \"bone\", \"#2020c0\" = \"pearl\" }\n");
  return sagitta("export '" + (scratch / "board.toml").string() + "' --only dxf --to '" + (scratch / "part").string() +
                 "' " + options);
}

TEST(JobPart, PiecesOfOneFigureKeepApartWhenTheyAreMadeAgain) {
  const ScratchFolder scratch;
  const Outcome made = drawn_again(
      scratch, "<rect width='6' height='12' fill='#c02020'/><rect x='6' width='6' height='12' fill='#2020c0'/>",
      "--pieces bone-01,pearl-01 --clearance 0.02");
  ASSERT_EQ(made.code, 0) << made.err;
  const json drawing = drawing_copies(scratch / "part").at("board.dxf");
  const std::vector<double> found = gaps(points_along(copied_layer(drawing, "piece-bone"), 0.01),
                                         points_along(copied_layer(drawing, "piece-pearl"), 0.01));
  EXPECT_NEAR(found.front(), 0.02, 0.004);
}

// Two squares of 4 mm on a bar of 1 mm, drawn 12 mm and made 8 mm long: with 0.6 mm of room the bar is gone.
TEST(JobPart, APieceOfWhichNothingWholeIsLeftIsNamed) {
  const ScratchFolder scratch;
  const Outcome made = drawn_again(scratch,
                                   "<path fill='#c02020' d='M0 4h4v1.5h4v-1.5h4v4h-4v-1.5h-4v1.5h-4z'/>"
                                   "<rect y='10' width='4' height='2' fill='#2020c0'/>",
                                   "--pieces bone-01 --clearance 0.6");
  EXPECT_EQ(made.code, 2);
  EXPECT_NE(made.err.find("left of bone-01"), std::string::npos) << made.err;
  EXPECT_FALSE(fs::exists(scratch / "part"));
}

TEST(JobPart, ManifestMakesThePartAgain) {
  const ScratchFolder scratch;
  const std::string first = exported(scratch, "first", "--only dxf,step --frets 3,5 --operation pockets");
  const std::string again = scratch / "again";
  const Outcome made = sagitta("export '" + first + "/manifest.json' --to '" + again + "'");
  ASSERT_EQ(made.code, 0) << made.err;
  EXPECT_EQ(listing(first), listing(again));
  for (const char* file : {"board.dxf", "pocketed.step", "manifest.json"})
    EXPECT_EQ(bytes_of(first + "/" + file), bytes_of(fs::path(again) / file)) << file;
}

TEST(JobPart, SaysWhatTheBoardHas) {
  EXPECT_NE(refused("--frets 9-30").find("the board has 22 frets"), std::string::npos);
  EXPECT_NE(refused("--pieces bone-01").find("shell-01 to shell-10"), std::string::npos);
  EXPECT_NE(refused("--operation sanding").find("pockets, inlay, radius, slots and outline"), std::string::npos);
  EXPECT_NE(refused("--clearance 0.03").find("--pieces"), std::string::npos);
}

}  // namespace
}  // namespace sagitta::test
