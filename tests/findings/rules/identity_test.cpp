// What a finding, a fault and a face belong to is typed: it lies in a table of the board, its row is there, and nothing
// of it is read from words.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <set>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "findings/Findings.hpp"
#include "inlay/Inlays.hpp"
#include "lift/Shell.hpp"
#include "rules/Finding.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

/// How many rows the table of a kind has on this board; 1 for a table that is no list.
std::size_t rows(const Board& board, FeatureId::Kind kind) {
  switch (kind) {
    case FeatureId::Kind::inlay:
    case FeatureId::Kind::piece:
      return board.inlays.size();
    case FeatureId::Kind::pin:
      return board.pins->at.size();
    case FeatureId::Kind::cutter:
      return board.cutters.size();
    case FeatureId::Kind::setup:
      return board.setups.size();
    case FeatureId::Kind::cut:
      return board.cuts.size();
    case FeatureId::Kind::operation:
      return 6;
    case FeatureId::Kind::string:
      return static_cast<std::size_t>(board.strings.count);
    default:
      return 0;
  }
}

void expect_on(const Board& board, const FeatureId& id) {
  EXPECT_NE(id.kind, FeatureId::Kind::none);
  EXPECT_FALSE(table_of(id.kind).empty()) << kind_word(id.kind);
  EXPECT_FALSE(feature_name(id).empty()) << kind_word(id.kind);
  if (id.index >= 0) {
    EXPECT_LT(static_cast<std::size_t>(id.index), rows(board, id.kind)) << kind_word(id.kind);
  }
  EXPECT_LE(id.fret, board.scale.frets + (board.tongue ? board.tongue->frets : 0)) << kind_word(id.kind);
}

class Identity : public testing::TestWithParam<std::string> {};

TEST_P(Identity, IsTypedAndOnTheBoard) {
  const BoardFile file = read_board(GetParam());
  ASSERT_TRUE(file.sound());
  const Board& board = file.board;
  const PreparedBoard ready = std::get<PreparedBoard>(prepare(board));
  for (const Finding& finding : findings_of(ready)) expect_on(board, finding.where);
  std::set<FeatureId> pieces;
  for (const InlayPiece& piece : ready.pieces()) EXPECT_TRUE(pieces.insert(id_of(piece)).second) << piece.name;
  for (const Stage stage : stages_of(board)) {
    const Shell& shell = ready.shell(stage);
    std::set<FeatureId> features;
    for (const PlanFeature& feature : shell.plan.features)
      EXPECT_TRUE(features.insert(feature.id).second) << feature.name;
    for (const ShellFace& face : shell.faces) expect_on(board, id_of(shell, face));
  }
}

std::vector<std::string> presets() {
  std::vector<std::string> found;
  for (const auto& entry : fs::directory_iterator(places::source() + "/presets"))
    if (entry.path().extension() == ".toml") found.push_back(entry.path().string());
  std::ranges::sort(found);
  return found;
}

INSTANTIATE_TEST_SUITE_P(Presets, Identity, testing::ValuesIn(presets()), [](const auto& preset) {
  std::string name = fs::path(preset.param).stem().string();
  std::erase(name, '-');
  return name;
});

TEST(FeatureIds, HaveWordsAndKeysOfTheirOwn) {
  using Kind = FeatureId::Kind;
  EXPECT_EQ(feature_key({Kind::inlay, 1, 12}), "inlays[1].depth");
  EXPECT_EQ(feature_key({.kind = Kind::slot, .fret = 7}), "slots.width");
  EXPECT_EQ(feature_key({Kind::pin, 1}), "pins.diameter");  // all pins have one diameter
  EXPECT_EQ(feature_key({Kind::cutter, 2}), "cutters[2].diameter");
  EXPECT_EQ(feature_key({}), "");
  std::set<std::string_view> words;
  for (int kind = 0; kind <= static_cast<int>(Kind::note); ++kind)
    EXPECT_TRUE(words.insert(kind_word(static_cast<Kind>(kind))).second);
}

}  // namespace
}  // namespace sagitta
