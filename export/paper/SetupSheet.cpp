#include "paper/SetupSheet.hpp"

#include <algorithm>

#include "drawing/SetupPlaces.hpp"
#include "paper/HoldDown.hpp"
#include "paper/PdfFigures.hpp"
#include "paper/PdfFlow.hpp"
#include "paper/PdfTable.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Room for dimensions round the blank. mm of paper.
constexpr double side_room = hold_down_side, foot_room = hold_down_foot + 4, title_height = 16;
constexpr double note_gap = 1.4, before_places = 3, places_column = 60;
/// The least of the paper's height, less margins and title, that the blank gets.
constexpr double least_share = 0.25;

/// The sheet as blocks over all of its width, and the places in columns below.
class SetupBlocks {
 public:
  SetupBlocks(const PreparedBoard& ready, const ResolvedSetup& setup, const Paper& paper)
      : ready_(ready), setup_(setup), paper_(paper), ruler_("") {
    ruler_.page(paper);
  }

  double width() const { return paper_.width - 2 * paper_margin; }
  double tall() const { return paper_.height - 2 * paper_margin - title_height; }

  std::vector<FlowBlock> blocks(const Drawing& drawing, const DrawingScale& scale,
                                const std::vector<std::string>& notes, double column) {
    hold_down(drawing, scale);
    for (const std::string& each : notes) note(each);
    places(column);
    return std::move(blocks_);
  }

 private:
  void hold_down(const Drawing& drawing, const DrawingScale& scale) {
    const double height = scale.factor * (drawing.page.high.y - drawing.page.low.y);
    const double to_nut = setup_.from_board({0, 0}).x;
    FlowBlock block;
    block.height = height + foot_room;
    block.wide = true;
    block.paint = [drawing, to_nut, units = ready_.board().units, scale, height](PdfBook& book, Point corner,
                                                                                 double wide) {
      paint_hold_down(book, {drawing, to_nut, units}, scale.factor, corner + Point{wide / 2, -height / 2});
    };
    blocks_.push_back(std::move(block));
  }

  void note(const std::string& words) {
    FlowBlock block;
    block.height = line_step * static_cast<double>(lines_of(ruler_, width(), words).size());
    block.before = note_gap;
    block.wide = true;
    block.paint = [words](PdfBook& book, Point corner, double wide) {
      paragraph(book, corner - Point{0, line_step - 1.2}, wide, words);
    };
    blocks_.push_back(std::move(block));
  }

  void places(double column) {
    const Board& board = ready_.board();
    PaperTable table{{"drive there to check", "x", "y"}, {}, ""};
    for (const auto& [what, at] : setup_places(ready_, setup_))
      table.rows.push_back({what, fixed_measure(board, at.x), fixed_measure(board, at.y)});
    for (FlowBlock& block : table_blocks(ruler_, column, table)) {
      if (!blocks_.empty() && blocks_.back().wide) block.before = before_places;
      blocks_.push_back(std::move(block));
    }
  }

  const PreparedBoard& ready_;
  const ResolvedSetup& setup_;
  Paper paper_;
  PdfBook ruler_;  ///< text is measured on it; it is never finished
  std::vector<FlowBlock> blocks_;
};

}  // namespace

PdfBook setup_book(const PreparedBoard& ready, const ResolvedSetup& setup, const Drawing& drawing, const Paper& paper) {
  const Board& board = ready.board();
  const std::vector<std::string> notes = setup_notes(ready, setup, board.units);
  SetupBlocks sheet(ready, setup, paper);
  const Point blank = drawing.page.high - drawing.page.low;
  const double notes_room = line_step * 2 * static_cast<double>(notes.size());
  const double height = std::max(sheet.tall() - notes_room - foot_room, least_share * sheet.tall());
  const DrawingScale scale = scale_for(blank.x, std::min(sheet.width() - 2 * side_room, height / blank.y * blank.x), 1);
  const FlowArea area{
      paper, {{paper_margin, paper_margin}, {paper.width - paper_margin, paper_margin + sheet.tall()}}, places_column};
  const std::vector<FlowBlock> blocks = sheet.blocks(drawing, scale, notes, area.column());
  PdfBook book(drawing.title);
  print_flow(book, area, blocks, [&](PdfBook& on, int page, int pages, const std::string&) {
    const std::string number =
        pages == 1 ? std::string() : ", page " + std::to_string(page) + " of " + std::to_string(pages);
    title(on, shown_name(board) + ", set-up " + std::to_string(setup.number) + ": " + setup.name + number,
          "The blank from above " + scale.name + ", dimensions in " + unit_word(board) +
              ". The cross in the circle is the zero.");
  });
  return book;
}

}  // namespace sagitta
