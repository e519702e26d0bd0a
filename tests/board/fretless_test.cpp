// Boards without frets, and boards whose places are lines or not cut: which keys they use.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "board/SampleBoard.hpp"
#include "board/SlotCut.hpp"

namespace sagitta {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

/// A board without frets, sound as it stands.
const std::string fretless = R"(format = 1
[scale]
length = 648
frets = 0
[strings]
count = 4
nut_spread = 36
saddle_spread = 52
[board]
thickness = 6.35
edge_margin = 3.2
past_last_fret = 480
[surface]
profile = "compound"
radius_at_nut = 254
radius_at_heel = 406.4
)";

std::vector<std::string> problem_keys(const BoardFile& file) {
  std::vector<std::string> keys;
  for (const Problem& problem : file.problems) keys.push_back(problem.key);
  return keys;
}

TEST(Fretless, IsSoundAndCutsNothing) {
  const BoardFile file = sample::read(fretless);
  EXPECT_THAT(problem_keys(file), IsEmpty()) << sample::told(file.problems);
  EXPECT_EQ(slot_cut(file.board), SlotCut::none);
}

TEST(Fretless, NeedsItsLength) {
  const BoardFile file = sample::read(sample::with("past_last_fret = 480\n", "", fretless));
  ASSERT_THAT(problem_keys(file), ElementsAre("board.past_last_fret"));
  EXPECT_EQ(file.problems[0].code, FaultCode::missing_key);
}

TEST(Fretless, MayBeUpToThreeMetresLong) {
  EXPECT_TRUE(sample::read(sample::with("= 480", "= 3000", fretless)).sound());
  EXPECT_THAT(problem_keys(sample::read(sample::with("= 480", "= 3001", fretless))),
              ElementsAre("board.past_last_fret"));
}

struct Named {
  const char *part, *by, *key;
};

TEST(Fretless, EveryKeyThatNamesAFretIsAProblem) {
  const Named all[] = {
      {"frets = 0", "frets = 0\nzero_fret = true", "scale.zero_fret"},
      {"length = 648", "bass = 680\ntreble = 648\nsquare_fret = 7", "scale.square_fret"},
      {"past_last_fret = 480", "past_last_fret = 480\nheel = \"fret\"", "board.heel"},
      {"edge_margin = 3.2", "nut_width = 43\nwidth_at_fret = [12, 52]", "board.width_at_fret"},
      {"radius_at_heel = 406.4", "radius_at_heel = 406.4\nheel_at = \"last-fret\"", "surface.heel_at"},
      {"radius_at_heel = 406.4", "radius_at_heel = 406.4\nfall_from_fret = 5\nfall = 0.3", "surface.fall_from_fret"},
      {"[surface]", "[slots]\nwidth = 0.6\n[surface]", "slots.width"},
      {"[surface]", "[wire]\ncrown_width = 2\n[surface]", "wire.crown_width"},
      {"[surface]", "[neck]\njoint_fret = 14\n[surface]", "neck.joint_fret"},
      {"[surface]", "[[inlays]]\nshape = \"dot\"\nfrets = [3, 5]\ndepth = 1.5\n[surface]", "inlays"},
      {"[surface]", "[side_dots]\nfrets = [3]\n[surface]", "side_dots"},
  };
  for (const Named& one : all) {
    const BoardFile file = sample::read(sample::with(one.part, one.by, fretless));
    ASSERT_THAT(problem_keys(file), ElementsAre(one.key)) << sample::told(file.problems);
    EXPECT_EQ(file.problems[0].code, FaultCode::not_used) << one.key;
  }
}

TEST(SlotCut, KeysOfOtherKindsOfSlotsAreProblems) {
  const std::string with_wire = sample::with("[slots]", "[wire]\ncrown_width = 2\n[slots]");
  EXPECT_THAT(problem_keys(sample::read(sample::with("width = 0.584", "cut = \"none\""))), IsEmpty());
  EXPECT_THAT(problem_keys(sample::read(sample::with("width = 0.584", "width = 0.584\ncut = \"lines\""))), IsEmpty());
  EXPECT_THAT(problem_keys(sample::read(sample::with("width = 0.584", "width = 0.584\ncut = \"none\""))),
              ElementsAre("slots.width"));
  EXPECT_THAT(problem_keys(sample::read(sample::with("width = 0.584", "width = 0.584\ncut = \"lines\"", with_wire))),
              ElementsAre("wire.crown_width"));
  EXPECT_THAT(problem_keys(sample::read(sample::with("width = 0.584", "line_material = \"maple\""))),
              ElementsAre("slots.line_material"));
  EXPECT_THAT(
      problem_keys(sample::read(sample::with("width = 0.584", "cut = \"none\"\nends = \"blind\"\nedge_left = 2"))),
      ElementsAre("slots.ends", "slots.edge_left"));
}

TEST(SlotCut, AnEndMayMeetAPlaceThatIsNotCut) {
  const std::string uncut = sample::with("width = 0.584", "cut = \"none\"");
  EXPECT_TRUE(sample::read(sample::with("edge_margin = 3.2", "edge_margin = 3.2\npast_last_fret = 0", uncut)).sound());
  EXPECT_THAT(problem_keys(sample::read(sample::with("edge_margin = 3.2", "edge_margin = 3.2\npast_last_fret = 0"))),
              ElementsAre("board.past_last_fret"));
}

}  // namespace
}  // namespace sagitta
