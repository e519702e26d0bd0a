#include "random/RandomBoard.hpp"

#include <algorithm>

#include "board/BoardFile.hpp"
#include "board/Fields.hpp"
#include "board/Writer.hpp"
#include "inlay/CutFit.hpp"
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
  if (space == Space::kinds) draw_kinds(dice, board);
  const auto plain = lay_out(board);
  if (!std::holds_alternative<Layout>(plain)) return std::nullopt;
  if (board.scale.frets > 0) draw_inlays(dice, space, std::get<Layout>(plain), board);
  if (space != Space::core) {
    const auto inlaid = lay_out(board);
    if (!std::holds_alternative<Layout>(inlaid)) return std::nullopt;
    draw_extras(dice, std::get<Layout>(inlaid), board);
  }
  if (space == Space::kinds) {
    const auto extended = lay_out(board);
    if (!std::holds_alternative<Layout>(extended)) return std::nullopt;
    draw_forms(dice, std::get<Layout>(extended), board);
    if (dice.chance(0.4)) draw_cuts(dice, std::get<Layout>(extended), board);
  }
  return sound(board);
}

/// Where the numbers of a space begin.
std::uint64_t first_of(Space space) {
  switch (space) {
    case Space::whole:
      return 1;
    case Space::near:
      return 1ULL << 62;
    case Space::ends:
      return 1ULL << 61;
    case Space::kinds:
      return 1ULL << 60;
    default:
      return 0;
  }
}

}  // namespace

std::optional<Sample> sound(const Board& board) {
  const auto filed = through_a_file(board);
  if (!filed) return std::nullopt;
  auto layout = lay_out(*filed);
  if (!std::holds_alternative<Layout>(layout)) return std::nullopt;
  if (!filed->cuts.empty() && std::holds_alternative<Faults>(fit_cuts(*filed, std::get<Layout>(layout), {})))
    return std::nullopt;
  Sample sample{*filed, std::get<Layout>(std::move(layout)), {}, 1};
  sample.surface = surface_of(sample.board, sample.layout);
  if (!surface_faults(sample.board, sample.layout, sample.surface).empty()) return std::nullopt;
  return sample;
}

Sample random_board(std::uint64_t number, Space space) {
  Dice dice(number * 2 + first_of(space));
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
  note(!board.cuts.empty(), "cuts");
  note(board.scallop.has_value(), "scallop");
  note(board.edges && board.edges->roll > 0, "roll");
  note(board.edges && board.edges->bevel > 0, "bevel");
  note(board.strings.course > 1, "courses");
  note(board.scale.frets == 0, "no frets");
  note(board.slots.cut == SlotCut::lines, "lines");
  note(board.binding && !board.binding->lines.empty(), "purfling");
  note(std::any_of(board.inlays.begin(), board.inlays.end(),
                   [](const Inlay& inlay) { return inlay.shape == InlayShape::oval; }),
       "ovals");
  return names;
}

}  // namespace sagitta::random_boards
