#include "paper/NeckSheet.hpp"

#include <algorithm>
#include <cmath>

#include "paper/PdfFigures.hpp"
#include "paper/PdfTable.hpp"
#include "paper/Template.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;

/// What the sheet says in sentences. The neck's wood is board file's depth less the board.
std::vector<std::string> sentences(const Board& board, const NeckPlan& plan) {
  std::vector<std::string> said{
      "neck-face is drawn as the neck lies with its glue face up, neck-face-down as it lies face down; the gauge plate "
      "may be turned over for either.",
      "x runs from the nut line toward the bridge; widths are square to the centre line.",
      "Bare is the board's wood alone, over binding the finished board; the neck has " +
          measured_length(board.units, board.neck ? board.neck->allowance : 0) + " more on each side."};
  const auto length = [&](double mm) { return measured_length(board.units, mm); };
  said.push_back("The board's nut end lies at x = " + length(plan.ledge.a.x) + " on the lower side and " +
                 length(plan.ledge.b.x) + " on the upper: a ledge for the headstock may stand behind it.");
  if (plan.face.channel) {
    const Box box = bounds(*plan.face.channel);
    said.push_back("The rod channel is " + length(box.high.y - box.low.y) +
                   " wide and runs from x = " + length(box.low.x) + " to " + length(box.high.x) +
                   (board.neck->channel_depth ? ", " + length(*board.neck->channel_depth) + " deep." : "."));
  }
  for (const Pin& pin : plan.face.pins)
    said.push_back("A pin of " + length(2 * pin.radius) + " at x = " + length(pin.centre.x) +
                   ", y = " + length(pin.centre.y) + ", " + length(pin.depth) + " deep in the board.");
  if (!plan.deep_cuts.empty())
    said.push_back(std::to_string(plan.deep_cuts.size()) + " cuts leave less than " + length(deep_cut_floor) +
                   " of the board: no screw, pin or rod's end may rise under them.");
  return said;
}

PaperTable width_table(const Board& board, const NeckPlan& plan) {
  PaperTable table{{"at", "x", "bare", "over binding", "neck"}, {}, ""};
  for (const NeckWidthAt& at : plan.widths)
    table.rows.push_back({at.place, fixed_measure(board, at.x), fixed_measure(board, at.bare),
                          fixed_measure(board, at.over_binding), fixed_measure(board, at.neck)});
  return table;
}

PaperTable depth_table(const Board& board, const NeckPlan& plan) {
  PaperTable table{{"at", "whole depth", "board", "neck's wood", "left under the rod"}, {}, ""};
  for (const NeckDepthAt& at : plan.depths)
    table.rows.push_back({"fret " + std::to_string(at.fret), fixed_measure(board, at.whole),
                          fixed_measure(board, at.board), fixed_measure(board, at.wood),
                          at.under_rod ? fixed_measure(board, *at.under_rod) : ""});
  return table;
}

FlowBlock sentence_block(PdfBook& ruler, double width, const std::string& text) {
  const double height = line_step * static_cast<double>(lines_of(ruler, width, text).size());
  return {height, [text](PdfBook& book, Point corner, double wide) { paragraph(book, corner, wide, text); }, 1.5};
}

void add_figures(PdfBook& book, const Board& board, const NeckPlan& plan, const Paper& paper) {
  constexpr double head = 14;
  const Box box{{paper_margin, paper_margin}, {paper.width - paper_margin, paper.height - paper_margin - head}};
  const FlowArea area{paper, box, box.high.x - box.low.x};
  std::vector<FlowBlock> blocks;
  for (FlowBlock& block : table_blocks(book, area.column(), width_table(board, plan)))
    blocks.push_back(std::move(block));
  if (!plan.depths.empty())
    for (FlowBlock& block : table_blocks(book, area.column(), depth_table(board, plan)))
      blocks.push_back(std::move(block));
  for (const std::string& text : sentences(board, plan)) blocks.push_back(sentence_block(book, area.column(), text));
  print_flow(book, area, blocks, [&](PdfBook& page, int, int, const std::string&) {
    title(page, shown_name(board), "The neck for this board; lengths in " + unit_word(board));
  });
}

void add_layer(PdfBook& book, const Drawing& drawing, const char* name, Pen pen) {
  if (const Layer* layer = layer_named(drawing, name))
    for (const Figure& figure : layer->figures) book.path(figure.pieces, figure.closed, pen);
}

/// One sheet at 1:1.
void add_sheet(PdfBook& book, const Board& board, const NeckPlan& plan, const Drawing& drawing,
               const TemplateSheet& sheet) {
  const Drawing placed = moved(drawing, sheet.shift);
  book.clip({sheet.part.low + sheet.shift, sheet.part.high + sheet.shift});
  add_layer(book, placed, "deep-cuts", Pen::faint);
  add_layer(book, placed, "channel", Pen::thin);
  add_layer(book, placed, "pins", Pen::line);
  add_layer(book, placed, "outline", Pen::thin);
  add_layer(book, placed, "nut-line", Pen::line);
  add_layer(book, placed, "nut-end", Pen::thin);
  add_layer(book, placed, "joint", Pen::line);
  add_layer(book, placed, "neck-sides", Pen::outline);
  book.line(Point{plan.ledge.a.x - 4, 0} + sheet.shift, Point{plan.sides[0].b.x + 4, 0} + sheet.shift, Pen::dash);
  for (const NeckWidthAt& at : plan.widths) {
    const double low = plan.sides[0].a.y + (plan.sides[0].b.y - plan.sides[0].a.y) * (at.x - plan.sides[0].a.x) /
                                               (plan.sides[0].b.x - plan.sides[0].a.x);
    const Point foot = Point{at.x, low} + sheet.shift;
    book.line(foot - Point{0, 3}, foot, Pen::thin);
    book.text(foot - Point{-1, 4}, at.place + ": " + measure(board, at.neck), Text::body, Align::right, pi / 2);
  }
  book.unclip();
}

}  // namespace

PdfBook neck_book(const PreparedBoard& ready, const NeckPlan& plan, const Drawing& drawing, const Paper& paper) {
  const Board& board = ready.board();
  PdfBook book(shown_name(board) + ", neck");
  add_figures(book, board, plan, paper);
  const std::vector<TemplateSheet> sheets = template_sheets(ready.layout(), paper);
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    book.page(paper);
    add_sheet(book, board, plan, drawing, sheets[i]);
    for (const TemplateSheet& other : sheets)
      if (std::abs(other.row - sheets[i].row) + std::abs(other.column - sheets[i].column) == 1)
        mark_overlap(book, sheets[i], other);
    draw_check_scales(book, paper);
    draw_sheet_foot(book, paper, shown_name(board) + ", neck 1:1",
                    "Sheet " + std::to_string(i + 1) + " of " + std::to_string(sheets.size()) +
                        ". Widths of the neck in " + unit_word(board) + ".");
  }
  return book;
}

}  // namespace sagitta
