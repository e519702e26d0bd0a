#include "random/RandomBoard.hpp"

#include "board/BoardFile.hpp"
#include "board/Fields.hpp"
#include "board/Writer.hpp"
#include "random/Draw.hpp"

namespace sagitta::random_boards {
namespace {

/// As it comes back from a file, so that nothing is tested that no file can hold.
std::optional<Board> through_a_file(const Board& board) {
  const BoardFile file = read_board_text(write_board(tidy(board)), "random.toml", ".");
  if (!file.sound()) return std::nullopt;
  return file.board;
}

std::optional<Sample> draw_near_sample(Dice& dice) {
  Board board = draw_plain(dice, Space::near);
  draw_near_board(dice, board);
  if (dice.chance(0.2)) {
    const auto plain = lay_out(board);
    if (!std::holds_alternative<Layout>(plain)) return std::nullopt;
    draw_inlays(dice, Space::near, std::get<Layout>(plain), board);
  }
  draw_near(dice, board);
  draw_near_extras(dice, board);
  return sound(board);
}

std::optional<Sample> draw(Dice& dice, Space space) {
  if (space == Space::near) return draw_near_sample(dice);
  Board board = draw_plain(dice, space);
  if (space == Space::ends) draw_ends(dice, board);
  const auto plain = lay_out(board);
  if (!std::holds_alternative<Layout>(plain)) return std::nullopt;
  draw_inlays(dice, space, std::get<Layout>(plain), board);
  if (space == Space::whole || space == Space::ends) {
    const auto inlaid = lay_out(board);
    if (!std::holds_alternative<Layout>(inlaid)) return std::nullopt;
    draw_extras(dice, std::get<Layout>(inlaid), board);
  }
  return sound(board);
}

}  // namespace

std::optional<Sample> sound(const Board& board) {
  const auto filed = through_a_file(board);
  if (!filed) return std::nullopt;
  auto layout = lay_out(*filed);
  if (!std::holds_alternative<Layout>(layout)) return std::nullopt;
  Sample sample{*filed, std::get<Layout>(std::move(layout)), {}, 1};
  sample.surface = surface_of(sample.board, sample.layout);
  if (!surface_faults(sample.board, sample.layout, sample.surface).empty()) return std::nullopt;
  return sample;
}

Sample random_board(std::uint64_t number, Space space) {
  constexpr std::uint64_t near = 1ULL << 62, ends = 1ULL << 61;  // where the numbers of these begin
  Dice dice(number * 2 + (space == Space::whole ? 1 : space == Space::near ? near : space == Space::ends ? ends : 0));
  for (int draws = 1;; ++draws) {
    auto sample = draw(dice, space);
    if (!sample) continue;
    sample->draws = draws;
    return *std::move(sample);
  }
}

std::vector<std::string> categories(const Board& board) {
  std::vector<std::string> names;
  const auto note = [&](bool is, const char* name) {
    if (is) names.push_back(name);
  };
  const Profile profile = board.surface.profile;
  note(profile == Profile::flat, "flat");
  note(profile == Profile::single, "single");
  note(profile == Profile::compound, "compound");
  note(profile == Profile::string_line, "string-line");
  note(profile == Profile::even_edge, "even-edge");
  note(board.scale.bass.has_value(), "fan");
  note(board.surface.fall.has_value(), "fall");
  note(board.scale.zero_fret, "zero fret");
  note(board.hand == Hand::left, "left-handed");
  note(board.slots.floor == SlotFloor::level, "level floors");
  note(board.slots.ends == SlotEnds::blind, "blind slots");
  note(board.nut.seat == NutSeat::slot, "nut slot");
  note(board.nut.seat == NutSeat::shelf, "nut shelf");
  note(board.board.heel != Heel::square, "shaped heel");
  note(board.board.ends_cut_slots, "slots cut by the end");
  note(board.tongue.has_value(), "tongue");
  note(board.board.corner_radius > 0, "round corners");
  note(!board.inlays.empty(), "inlays");
  note(board.side_dots.has_value(), "side dots");
  note(board.binding.has_value(), "binding");
  note(board.pins.has_value(), "pins");
  note(board.sanding > 0, "sanding");
  note(!board.cutters.empty(), "cutters");
  return names;
}

}  // namespace sagitta::random_boards
