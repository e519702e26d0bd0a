// What the keys of cuts, binding lines, side dots and thickness ask of each other.

#include <gtest/gtest.h>

#include "SampleBoard.hpp"
#include "board/BoardFile.hpp"
#include "board/CutSide.hpp"

namespace sagitta {
namespace {

const std::string block = "[[cuts]]\nname = \"notch\"\nshape = \"block\"\nalong = 10\nacross = 8\nat = [5, 0]\n";

/// The keys of the problems that the sample has with a text added, and their codes.
std::vector<std::pair<std::string, FaultCode>> problems_with(const std::string& added,
                                                             const std::string& whole = sample::text) {
  std::vector<std::pair<std::string, FaultCode>> found;
  for (const Problem& problem : sample::read(whole + added).problems) found.emplace_back(problem.key, problem.code);
  return found;
}

using Found = std::vector<std::pair<std::string, FaultCode>>;

TEST(CutRules, ACutIsReadWithItsDepthOrThrough) {
  const BoardFile file = sample::read(sample::text + block + "depth = 2\n" + block + "depth = \"through\"\n");
  ASSERT_EQ(file.board.cuts.size(), 2U);
  EXPECT_EQ(file.board.cuts[0].depth, 2);
  EXPECT_FALSE(is_through(file.board.cuts[0]));
  EXPECT_TRUE(is_through(file.board.cuts[1]));
  EXPECT_EQ(operation_of(file.board.cuts[1]), Operation::pockets);
  Cut below = file.board.cuts[0];
  below.from = CutFrom::below;
  EXPECT_EQ(operation_of(below), Operation::outline);
}

TEST(CutRules, NamesAreTheirOwn) {
  EXPECT_EQ(problems_with(block + "depth = 2\n"), Found{});
  EXPECT_EQ(problems_with(block + "depth = 2\n" + block + "depth = 3\n"),
            (Found{{"cuts[1].name", FaultCode::named_twice}}));
}

// The sample is 6.35 thick.
TEST(CutRules, ADepthOfTheBoardsThicknessIsNotADepth) {
  EXPECT_EQ(problems_with(block + "depth = 6.34\n"), Found{});
  EXPECT_EQ(problems_with(block + "depth = 6.35\n"), (Found{{"cuts[0].depth", FaultCode::not_allowed}}));
}

TEST(CutRules, ThroughTakesNoSide) {
  EXPECT_EQ(problems_with(block + "depth = \"through\"\n"), Found{});
  EXPECT_EQ(problems_with(block + "depth = \"through\"\nfrom = \"below\"\n"),
            (Found{{"cuts[0].from", FaultCode::not_used}}));
}

TEST(CutRules, ADrawingHasOneSize) {
  const std::string drawn =
      "[[cuts]]\nname = \"sound\"\nshape = \"drawn\"\nfile = \"wave.svg\"\nat = [5, 0]\ndepth = 2\n";
  EXPECT_EQ(problems_with(drawn + "along = 12\n"), Found{});
  EXPECT_EQ(problems_with(drawn).size(), 1U);
  EXPECT_EQ(problems_with(drawn + "along = 12\nacross = 3\n").front().second, FaultCode::given_twice);
}

TEST(BindingLines, EachHasItsMaterial) {
  const std::string binding = "[binding]\nwidth = 1.5\nheight = 3\n";
  EXPECT_EQ(problems_with(binding + "lines = [0.5, 0.25]\nline_materials = [\"maple\", \"ebony\"]\n"), Found{});
  EXPECT_EQ(problems_with(binding + "lines = [0.5, 0.25]\n"),
            (Found{{"binding.line_materials", FaultCode::missing_key}}));
  EXPECT_EQ(problems_with(binding + "lines = [0.5]\nline_materials = [\"maple\", \"ebony\"]\n"),
            (Found{{"binding.line_materials", FaultCode::wrong_count}}));
  EXPECT_EQ(problems_with(binding + "line_materials = [\"maple\"]\n"),
            (Found{{"binding.line_materials", FaultCode::not_used}}));
}

// Side dots are 3 deep where nothing is said.
TEST(DotsInBinding, DoNotGoThroughIt) {
  const auto dots = [](const std::string& depth, const std::string& binding) {
    return problems_with(binding, sample::with("[side_dots]\nfrets = [3, 5]\n",
                                               "[side_dots]\nfrets = [3, 5]\nin = \"binding\"\n" + depth));
  };
  EXPECT_EQ(dots("", ""), (Found{{"side_dots.in", FaultCode::missing_key}}));
  EXPECT_EQ(dots("", "[binding]\nwidth = 1.5\n"), (Found{{"side_dots.depth", FaultCode::not_allowed}}));
  EXPECT_EQ(dots("depth = 1.5\n", "[binding]\nwidth = 1.5\n"), Found{});
}

// A ledge of 1.5 + 0.5 + 1 = 3 takes holes 3 deep whole.
TEST(DotsInWood, ReachBehindABindingThatGoesAllTheWay) {
  const std::string lines = "lines = [0.5, 1]\nline_materials = [\"maple\", \"ebony\"]\n";
  EXPECT_EQ(problems_with("[binding]\nwidth = 1.5\n" + lines), (Found{{"side_dots.depth", FaultCode::not_allowed}}));
  EXPECT_EQ(problems_with("[binding]\nwidth = 1.49\n" + lines), Found{});
  EXPECT_EQ(problems_with("[binding]\nwidth = 1.5\nheight = 2\n" + lines), Found{});
}

TEST(Thickness, IsMilledToTheBoardOrMore) {
  const std::string first =
      "[work]\norder = [\"thickness\", \"pockets\", \"inlay\", \"radius\", \"slots\", \"outline\"]\n";
  EXPECT_EQ(problems_with(first), Found{});
  EXPECT_EQ(problems_with(first + "thickness_to = 6.35\n"), Found{});
  EXPECT_EQ(problems_with(first + "thickness_to = 6.34\n"), (Found{{"work.thickness_to", FaultCode::not_allowed}}));
  EXPECT_EQ(problems_with("[work]\nthickness_to = 7\n"), (Found{{"work.thickness_to", FaultCode::not_used}}));
  const std::string late =
      "[work]\norder = [\"pockets\", \"thickness\", \"inlay\", \"radius\", \"slots\", \"outline\"]\n";
  EXPECT_EQ(problems_with(late), (Found{{"work.order[1]", FaultCode::wrong_order}}));
}

}  // namespace
}  // namespace sagitta
