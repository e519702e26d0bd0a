#include "jobsheet/JobRecord.hpp"

#include <algorithm>

#include "measured/Record.hpp"
#include "text/Measures.hpp"

namespace sagitta {

JobTable record_of(const PreparedBoard& ready) {
  const Board& board = ready.planned();
  JobTable table{{"what", "where", "planned", "was measured", "off by", "may be off by"}, {}};
  for (const MeasuredValue& value : measured_values(board, ready.inlays()))
    table.rows.push_back({value.what, value.where, value.planned ? fixed_measure(board, *value.planned) : "-",
                          fixed_measure(board, value.measured),
                          value.planned ? fixed_measure(board, value.measured - *value.planned) : "-",
                          "\u00b1 " + measure(board, value.tolerance)});
  for (const auto& [x, y, diameter] : board.measured.chips)
    table.rows.push_back({"chip", "x " + measure(board, x) + ", y " + measure(board, y), "-",
                          fixed_measure(board, diameter) + " across", "-", "-"});
  return table;
}

std::vector<std::string> notes_of(const Board& board) {
  std::vector<std::string> notes;
  for (const Note& note : board.notes)
    notes.push_back((note.finding.empty() ? "" : note.finding + ": ") + note.text +
                    (note.by.empty() ? "" : " (" + note.by + ")"));
  return notes;
}

bool is_done(const Board& board, Operation operation) {
  const std::vector<Operation>& done = board.measured.done;
  return std::find(done.begin(), done.end(), operation) != done.end();
}

}  // namespace sagitta
