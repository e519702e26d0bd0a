#include "paper/SetupSheet.hpp"

#include <algorithm>

#include "paper/HoldDown.hpp"
#include "paper/PdfFigures.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Room for dimensions round the blank. mm of paper.
constexpr double side_room = hold_down_side, foot_room = hold_down_foot + 2, title_height = 14;
constexpr double note_gap = 1.4;

}  // namespace

PdfBook setup_book(const PreparedBoard& ready, const ResolvedSetup& setup, const Drawing& drawing, const Paper& paper) {
  const Board& board = ready.board();
  const std::vector<std::string> notes = setup_notes(ready, setup, ready.board().units);
  PdfBook book(drawing.title);
  book.page(paper);
  const double room = paper.width - 2 * paper_margin - 2 * side_room;
  const double tall = paper.height - 2 * paper_margin - title_height;
  const Point blank = drawing.page.high - drawing.page.low;
  const double notes_room = line_step * 2 * static_cast<double>(notes.size());
  const double height = std::max(tall - notes_room - foot_room, tall / 4);
  const DrawingScale scale = scale_for(blank.x, std::min(room, height / blank.y * blank.x), 1);
  title(book, shown_name(board) + ", set-up " + std::to_string(setup.number) + ": " + setup.name,
        "The blank from above " + scale.name + ", dimensions in " + unit_word(board) +
            ". The cross in the circle is the zero.");
  const double top = paper.height - paper_margin - title_height - 2;
  paint_hold_down(book, {drawing, setup.from_board({0, 0}).x, board.units}, scale.factor,
                  {paper.width / 2, top - scale.factor * blank.y / 2});
  double y = top - scale.factor * blank.y - foot_room - 4;
  for (const std::string& note : notes)
    y -= paragraph(book, {paper_margin, y}, paper.width - 2 * paper_margin, note) + note_gap;
  return book;
}

}  // namespace sagitta
