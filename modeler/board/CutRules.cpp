/// Rules between the keys of [[cuts]].

#include <set>

#include "board/CutSide.hpp"
#include "board/Length.hpp"
#include "board/Reading.hpp"

namespace sagitta {
namespace {

void check_name(Reading& reading, const std::string& prefix, const Cut& cut, std::set<std::string>& names) {
  const std::string key = prefix + "name";
  if (!reading.given(key) || !reading.good(key)) return;
  if (cut.name.empty())
    reading.report_value(FaultCode::not_allowed, key, "a cut needs a name", "give it one of its own");
  else if (!names.insert(cut.name).second)
    reading.report_value(FaultCode::named_twice, key, "there is another cut called \"" + cut.name + "\"",
                         "give each cut a name of its own");
}

void check_depth(Reading& reading, const std::string& prefix, const Cut& cut) {
  const std::string key = prefix + "depth";
  if (!reading.given(key) || !reading.good(key)) return;
  const Board& board = reading.out.board;
  if (is_through(cut)) {
    if (reading.given(prefix + "from"))
      reading.report_key(FaultCode::not_used, prefix + "from", "\"from\" is not used here: the cut goes right through",
                         "take the line out");
    return;
  }
  if (!reading.given("board.thickness") || !reading.good("board.thickness") || cut.depth < board.board.thickness)
    return;
  reading.report_value(FaultCode::not_allowed, key,
                       "a cut " + shown_length(cut.depth, board.units) + " deep goes through a board " +
                           shown_length(board.board.thickness, board.units) + " thick",
                       "write depth = \"through\", or make it less deep");
}

}  // namespace

void check_cuts(Reading& reading) {
  const Board& board = reading.out.board;
  std::set<std::string> names;
  for (std::size_t i = 0; i < board.cuts.size(); ++i) {
    const std::string prefix = "cuts[" + std::to_string(i) + "].";
    check_name(reading, prefix, board.cuts[i], names);
    check_depth(reading, prefix, board.cuts[i]);
  }
}

}  // namespace sagitta
