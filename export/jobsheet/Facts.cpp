#include "jobsheet/Facts.hpp"

#include "text/Measures.hpp"

namespace sagitta {

JobTable board_facts(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  const auto length = [&](double mm) { return stock_length(board.units, mm); };
  const bool left = board.hand == Hand::left;
  const bool fan = layout.bass_scale != layout.treble_scale;
  JobTable table{{"what", "on this board"}, {}};
  const auto row = [&](const std::string& what, const std::string& value) { table.rows.push_back({what, value}); };
  row("hand", std::string(left ? "left" : "right") + "-handed; nut to the left, the bass side is the " +
                  (left ? "upper" : "lower") + " edge of every drawing from above");
  row("scale", fan ? length(layout.bass_scale) + " bass, " + length(layout.treble_scale) + " treble"
                   : length(layout.bass_scale));
  row("frets and strings",
      std::to_string(board.scale.frets) + " frets, " + std::to_string(board.strings.count) + " strings");
  row("width", length(2 * layout.half_width(0)) + " at the nut line, " +
                   length(2 * layout.half_width(layout.heel_end)) + " at the body end");
  row("thickness",
      length(board.board.thickness) + " at the middle" +
          (board.sanding > 0 ? ", and " + fine_length(board.units, board.sanding) + " for the sanding" : ""));
  if (!ready.surface().flat) {
    const double nut = ready.surface().radius(0), heel = ready.surface().radius(layout.heel_end);
    row("radius",
        length(nut) == length(heel) ? length(nut) : length(nut) + " at the nut, " + length(heel) + " at the body end");
  }
  row("material", board.blank.material);
  return table;
}

}  // namespace sagitta
