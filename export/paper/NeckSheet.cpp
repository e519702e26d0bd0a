#include "paper/NeckSheet.hpp"

#include <algorithm>
#include <cmath>

#include "paper/NeckLabels.hpp"
#include "paper/PdfFigures.hpp"
#include "paper/PdfTable.hpp"
#include "paper/Template.hpp"
#include "plane/Tolerance.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;

/// What the sheet says of the board's place on the neck.
std::vector<std::string> place_sentences(const PreparedBoard& ready, const NeckPlan& plan) {
  const Board& board = ready.board();
  const auto length = [&](double mm) { return measured_length(board.units, mm); };
  std::vector<std::string> said{
      "x runs from the nut line toward the bridge; widths are square to the centre line. neck-face is drawn as the "
      "neck "
      "lies with its glue face up, neck-face-down as it lies face down. The gauge plate may be turned over for either.",
      "Bare is the board's wood alone, over binding the finished board. The neck is " +
          (board.neck && board.neck->allowance > 0 ? length(board.neck->allowance) + " wider on each side."
                                                   : std::string("as wide as the finished board."))};
  const double low = plan.ledge.a.x, high = plan.ledge.b.x;
  said.push_back("The board's nut end lies at x = " + length(low) +
                 (std::abs(low - high) > tolerance::same ? " on the lower side and " + length(high) + " on the upper"
                                                         : std::string()) +
                 ". A ledge or the headstock may stand up behind it, not before it.");
  const double end = ready.layout().heel_end, over = end - plan.joint_x;
  if (plan.face.joint)
    said.push_back("The joint lies at x = " + length(plan.joint_x) + ", the board's end at x = " + length(end) +
                   (over > tolerance::same ? ": it lies " + length(over) + " over the body." : "."));
  if (plan.end_room)
    said.push_back(*plan.end_room < 0 ? "The body's top stands " + length(-*plan.end_room) +
                                            " above the glue face under the board's end: cut it down there."
                                      : "Between the board's end and the body's top is room of " +
                                            length(*plan.end_room) + " at the least.");
  return said;
}

/// What it says of the rod channel, the pins and the cuts under which nothing may rise.
std::vector<std::string> cut_sentences(const Board& board, const NeckPlan& plan) {
  const auto length = [&](double mm) { return measured_length(board.units, mm); };
  std::vector<std::string> said;
  if (plan.face.channel) {
    const Box box = bounds(*plan.face.channel);
    said.push_back("The rod channel is " + length(box.high.y - box.low.y) +
                   " wide and runs from x = " + length(box.low.x) + " to " + length(box.high.x) +
                   (board.neck->channel_depth ? ", " + length(*board.neck->channel_depth) + " deep." : "."));
    if (plan.over_channel)
      said.push_back("Over it the board is " + fine_length(board.units, plan.over_channel->left) +
                     " thick at its thinnest, under " + plan.over_channel->feature +
                     " at x = " + length(plan.over_channel->at.x) + ".");
  }
  for (const Pin& pin : plan.face.pins)
    said.push_back("A pin of " + length(2 * pin.radius) + " at x = " + length(pin.centre.x) +
                   ", y = " + length(pin.centre.y) + ", " + length(pin.depth) + " deep in the board.");
  if (!plan.deep_cuts.empty())
    said.push_back("Under a cut that leaves less than " + length(deep_cut_floor) +
                   " of the board no screw, pin or rod's end of the neck may rise:");
  return said;
}

PaperTable deep_table(const Board& board, const NeckPlan& plan) {
  PaperTable table{{"nothing may rise under", "from x", "to x", "from y", "to y", "wood left"}, {}, ""};
  for (const DeepCut& cut : plan.deep_cuts) {
    Box box;
    for (const Loop& loop : cut.outlines) {
      const Box own = bounds(loop);
      box.add(own.low), box.add(own.high);
    }
    table.rows.push_back({cut.name, fixed_measure(board, box.low.x), fixed_measure(board, box.high.x),
                          fixed_measure(board, box.low.y), fixed_measure(board, box.high.y),
                          fixed_measure(board, cut.left)});
  }
  return table;
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

/// A table with room above it.
void add_table(PdfBook& book, double width, const PaperTable& table, std::vector<FlowBlock>& blocks) {
  if (table.rows.empty()) return;
  const std::size_t first = blocks.size();
  for (FlowBlock& block : table_blocks(book, width, table)) blocks.push_back(std::move(block));
  if (first < blocks.size()) blocks[first].before = std::max(blocks[first].before, 4.0);
}

void add_figures(PdfBook& book, const PreparedBoard& ready, const NeckPlan& plan, const Paper& paper) {
  const Board& board = ready.board();
  constexpr double head = 14;
  const Box box{{paper_margin, paper_margin}, {paper.width - paper_margin, paper.height - paper_margin - head}};
  const FlowArea area{paper, box};
  const double width = area.column();
  std::vector<FlowBlock> blocks;
  add_table(book, width, width_table(board, plan), blocks);
  add_table(book, width, depth_table(board, plan), blocks);
  const std::size_t tables = blocks.size();
  for (const std::string& text : place_sentences(ready, plan)) blocks.push_back(sentence_block(book, width, text));
  blocks[tables].before = 4;
  for (const std::string& text : cut_sentences(board, plan)) blocks.push_back(sentence_block(book, width, text));
  add_table(book, width, deep_table(board, plan), blocks);
  print_flow(book, area, blocks, [&](PdfBook& page, int, int, const std::string&) {
    title(page, shown_name(board), "The neck for this board; lengths in " + unit_word(board));
  });
}

void add_layer(PdfBook& book, const Drawing& drawing, const char* name, Pen pen) {
  if (const Layer* layer = layer_named(drawing, name))
    for (const Figure& figure : layer->figures) book.path(figure.pieces, figure.closed, pen);
}

/// The point of a side at x.
Point on_side(const LineSegment& side, double x) {
  return between(side.a, side.b, (x - side.a.x) / (side.b.x - side.a.x));
}

/// One sheet of the neck at 1:1.
class NeckSheetPainter {
 public:
  NeckSheetPainter(PdfBook& book, const Board& board, const NeckPlan& plan, const Drawing& drawing)
      : book_(book), board_(board), plan_(plan), drawing_(drawing) {}

  void paint(const TemplateSheet& sheet) {
    shift_ = sheet.shift;
    low_ = sheet.part.low.x + shift_.x, high_ = sheet.part.high.x + shift_.x;
    const Drawing placed = moved(drawing_, shift_);
    book_.clip({sheet.part.low + shift_, sheet.part.high + shift_});
    add_layer(book_, placed, "deep-cuts", Pen::dash);
    add_layer(book_, placed, "channel", Pen::thin);
    add_layer(book_, placed, "pins", Pen::line);
    add_layer(book_, placed, "outline", Pen::thin);
    add_layer(book_, placed, "nut-line", Pen::line);
    add_layer(book_, placed, "nut-end", Pen::thin);
    add_layer(book_, placed, "joint", Pen::line);
    add_layer(book_, placed, "neck-sides", Pen::outline);
    book_.line(Point{plan_.ledge.a.x - 4, 0} + shift_, Point{plan_.sides[0].b.x + 4, 0} + shift_, Pen::dash);
    name_widths();
    name_lines();
    name_cuts();
    book_.unclip();
  }

 private:
  /// Of places that lie as near to each other as their letters are high the first is named.
  void name_widths() {
    constexpr double near = 3;
    for (std::size_t i = 0; i < plan_.widths.size(); ++i) {
      const NeckWidthAt& at = plan_.widths[i];
      while (i + 1 < plan_.widths.size() && plan_.widths[i + 1].x - at.x < near) ++i;
      const Point foot = on_side(plan_.sides[0], at.x) + shift_;
      book_.line(foot - Point{0, 3}, foot, Pen::thin);
      book_.text(foot - Point{-1, 4}, at.place + ": " + measure(board_, at.neck), Text::body, Align::right, pi / 2);
    }
  }

  /// Upright, above the upper side.
  void name_line(double x, const std::string& text) {
    const Point head = on_side(plan_.sides[1], x) + shift_;
    book_.line(head, head + Point{0, 3}, Pen::thin);
    book_.text(head + Point{1, 4}, text, Text::body, Align::left, pi / 2);
  }

  void name_lines() {
    name_line(0, "nut line");
    if (plan_.ledge.b.x < -4) name_line(plan_.ledge.b.x, "board's nut end");
    if (plan_.face.joint) name_line(plan_.joint_x, "joint");
    name_line(plan_.sides[1].b.x, "board's end");
  }

  /// A name that begins at a place of the neck, moved so that all of it is on this sheet; nothing where the place is
  /// far from it.
  void name_at(Point place, const std::string& text) {
    const double wide = book_.width_of(text) + 1;
    const Point at = place + shift_;
    if (at.x + wide < low_ || at.x > high_) return;
    book_.text({std::clamp(at.x, low_ + 1, std::max(low_ + 1, high_ - wide)), at.y}, text);
  }

  void name_cuts() {
    for (const NeckLabel& label : neck_labels(book_, board_, plan_)) name_at(label.at, label.text);
  }

  PdfBook& book_;
  const Board& board_;
  const NeckPlan& plan_;
  const Drawing& drawing_;
  Point shift_;
  double low_ = 0, high_ = 0;  ///< of the neck's part on this sheet, on paper
};

/// One sheet of the strip to lay on a neck that exists: the board's outline to cut along, the nut and joint lines right
/// across, and a scale from the nut line.
void add_strip(PdfBook& book, const Board& board, const NeckPlan& plan, const TemplateSheet& sheet) {
  const auto at = [&](double x, double y) { return Point{x, y} + sheet.shift; };
  book.clip({sheet.part.low + sheet.shift, sheet.part.high + sheet.shift});
  book.path(placed(plan.face.outline, 1, sheet.shift), true, Pen::outline);
  const auto across = [&](const LineSegment& line, const std::string& name) {
    book.line(line.a + sheet.shift, line.b + sheet.shift, Pen::line);
    const Point low = line.a.y < line.b.y ? line.a : line.b;
    book.text(low + Point{-1, 2} + sheet.shift, name, Text::body, Align::left, pi / 2);
  };
  across(plan.face.nut_line, "nut line");
  if (plan.face.joint) across(*plan.face.joint, "joint");
  const double end = plan.sides[0].b.x, step = board.units == Units::inch ? 25.4 / 8 : 1;
  const int marks = board.units == Units::inch ? 8 : 10;
  book.line(at(0, 0), at(end, 0), Pen::thin);
  for (int i = 0; i * step <= end; ++i) {
    const bool whole = i % marks == 0, half = 2 * i % marks == 0;
    book.line(at(i * step, 0), at(i * step, whole ? 5 : half ? 3.5 : 2), Pen::thin);
    if (whole)
      book.text(at(i * step, -3.6), std::to_string(board.units == Units::inch ? i / marks : i), Text::body,
                Align::centre);
  }
  book.unclip();
}

void add_foot(PdfBook& book, const Board& board, const Paper& paper, const std::vector<TemplateSheet>& sheets,
              std::size_t number, const std::string& name, const std::string& words) {
  for (const TemplateSheet& other : sheets)
    if (std::abs(other.row - sheets[number].row) + std::abs(other.column - sheets[number].column) == 1)
      mark_overlap(book, sheets[number], other);
  draw_check_scales(book, paper);
  draw_sheet_foot(book, paper, shown_name(board) + ", " + name + " 1:1",
                  "Sheet " + std::to_string(number + 1) + " of " + std::to_string(sheets.size()) + ". " + words);
}

}  // namespace

PdfBook neck_book(const PreparedBoard& ready, const NeckPlan& plan, const Drawing& drawing, const Paper& paper) {
  const Board& board = ready.board();
  PdfBook book(shown_name(board) + ", neck");
  add_figures(book, ready, plan, paper);
  const std::vector<TemplateSheet> sheets = template_sheets(ready.layout(), paper);
  NeckSheetPainter painter(book, board, plan, drawing);
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    book.page(paper);
    painter.paint(sheets[i]);
    add_foot(book, board, paper, sheets, i, "neck", "Widths of the neck in " + unit_word(board) + ".");
  }
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    book.page(paper);
    add_strip(book, board, plan, sheets[i]);
    add_foot(book, board, paper, sheets, i, "strip to lay on a neck",
             std::string(sheets.size() > 1 ? "Glue the sheets cross on cross, cut along the outline. "
                                           : "Cut along the outline. ") +
                 "Scale from the nut line in " + unit_word(board) + ".");
  }
  return book;
}

}  // namespace sagitta
