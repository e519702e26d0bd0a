/// A board without frets has no key that names a fret or a space.

#include "board/Reading.hpp"

namespace sagitta {
namespace {

/// Keys of a single table that name a fret, and when they do.
struct NamesFret {
  std::string_view key;
  bool (*does)(const Board& board);
};

constexpr NamesFret keys[] = {
    {"scale.square_fret", [](const Board& b) { return b.scale.square_fret > 0; }},
    {"scale.zero_fret", [](const Board& b) { return b.scale.zero_fret; }},
    {"board.width_at_fret", [](const Board& b) { return b.board.width_at_fret.has_value(); }},
    {"board.heel", [](const Board& b) { return b.board.heel == Heel::fret; }},
    {"surface.fall_from_fret", [](const Board& b) { return b.surface.fall_from_fret.has_value(); }},
    {"surface.heel_at", [](const Board& b) { return b.surface.heel_at == HeelAt::last_fret; }},
    {"neck.joint_fret", [](const Board& b) { return b.neck && b.neck->joint_fret; }},
    {"height.action_fret", [](const Board& b) { return b.height.has_value(); }},
    {"height.relief_fret", [](const Board& b) { return b.height.has_value(); }},
    {"measured.slots", [](const Board& b) { return !b.measured.slots.empty(); }},
};
/// Tables of which every row stands at a fret or in a space.
constexpr std::string_view fret_tables[] = {"inlays", "side_dots", "scallop", "tongue"};

class FretlessCheck {
 public:
  explicit FretlessCheck(Reading& reading) : reading_(reading), level_(reading.level("scale.frets")) {}

  void run() {
    for (const NamesFret& each : keys)
      if (const std::string key(each.key); reading_.given(key) && each.does(reading_.out.board)) judge_key(key);
    for (const std::string_view table : fret_tables) judge_table(std::string(table));
    if (!reading_.given("board.past_last_fret") && reading_.chain.whole)
      reading_.report_value(FaultCode::missing_key, "board.past_last_fret",
                            "\"past_last_fret\" is missing: a board without frets needs it",
                            "give the distance from x = 0 to the heel end");
  }

 private:
  void judge_key(const std::string& key) {
    find_field(key)->access.set(&reading_.out.board, {});
    if (reading_.level(key) <= level_)
      return reading_.report_key(FaultCode::not_used, key, "\"" + key + "\" names a fret, and the board has no frets",
                                 "take the line out");
    if (key == "surface.fall_from_fret") forget("surface.fall");
    forget(key);
  }

  void judge_table(const std::string& table) {
    if (!reading_.given(table)) return;
    if (reading_.level(table) <= level_)
      return reading_.report_key(FaultCode::not_used, table,
                                 "[" + table + "] names frets or spaces, and the board has no frets",
                                 "take the table out");
    set_row_count(reading_.out.board, *find_table(table), 0);
    std::erase_if(reading_.out.places, [&](const auto& place) {
      const std::string& key = place.first;
      return key.starts_with(table) &&
             (key.size() == table.size() || key[table.size()] == '.' || key[table.size()] == '[');
    });
  }

  /// As if no file gave it.
  void forget(const std::string& key) {
    find_field(key)->access.set(&reading_.out.board, {});
    reading_.out.places.erase(key);
  }

  Reading& reading_;
  int level_;  ///< the file that says frets = 0
};

}  // namespace

void check_fretless(Reading& reading) {
  if (reading.given("scale.frets") && reading.good("scale.frets") && reading.out.board.scale.frets == 0)
    FretlessCheck(reading).run();
}

}  // namespace sagitta
