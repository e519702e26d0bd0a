#include "paper/Template.hpp"

#include <algorithm>
#include <cmath>

#include "drawing/Drawing.hpp"
#include "plane/Tolerance.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

using std::numbers::pi;

constexpr double margin = 8, scale_column = 24, foot_height = 26;
/// Room round the outline for numbers and distances. mm.
constexpr double room_at_ends = 4, room_below = 28, room_above = 28;
constexpr double cross_arm = 4, tick = 2.4;
constexpr double inch = 25.4;

Box window(const Paper& paper) {
  return {{margin + scale_column, margin + foot_height}, {paper.width - margin, paper.height - margin}};
}

Box shown(const Layout& layout) {
  Box box = bounds(layout.outline);
  box.low = box.low - Point{room_at_ends, room_below};
  box.high = box.high + Point{room_at_ends, room_above};
  return box;
}

int sheets_for(double length, double view) {
  return std::max(
      1, static_cast<int>(std::ceil((length - template_overlap) / (view - template_overlap) - tolerance::same)));
}

void scale(PdfBook& book, Point from, Point along, double length, int parts, const std::string& label) {
  const Point aside = left_of(along);
  book.line(from, from + length * along, Pen::line);
  for (int i = 0; i <= parts; ++i) {
    const Point at = from + length * i / parts * along;
    book.line(at, at + (i == 0 || i == parts ? tick : tick / 2) * aside, Pen::line);
  }
  const double turn = std::atan2(along.y, along.x);
  book.text(from + length / 2 * along + 3.2 * aside, label, Text::body, Align::centre, turn);
}

/// Paints one sheet.
class SheetPainter {
 public:
  SheetPainter(PdfBook& book, const PreparedBoard& ready, const TemplateSheet& sheet)
      : book_(book), board_(ready.board()), layout_(ready.layout()), sheet_(sheet) {}

  void paint(const Drawing& drawing) {
    const Box view{sheet_.part.low + sheet_.shift, sheet_.part.high + sheet_.shift};
    book_.clip(view);
    const Drawing placed = moved(drawing, sheet_.shift);
    draw_layer(placed, "pocket", Pen::faint);
    draw_layer(placed, "nut-seat", Pen::thin);
    draw_layer(placed, "slot-middle", Pen::thin);
    draw_layer(placed, "fret-places", Pen::thin);
    draw_layer(placed, "outline", Pen::outline);
    draw_centre_line();
    for (const FretLine& fret : layout_.frets) name_fret(fret);
    book_.unclip();
  }

 private:
  void draw_layer(const Drawing& placed, const char* name, Pen pen) {
    if (const Layer* layer = layer_named(placed, name))
      for (const Figure& figure : layer->figures) book_.path(figure.pieces, figure.closed, pen);
  }

  void draw_centre_line() {
    const Box box = bounds(layout_.outline);
    book_.line(Point{box.low.x - room_at_ends, 0} + sheet_.shift, Point{box.high.x + room_at_ends, 0} + sheet_.shift,
               Pen::dash);
  }

  /// Number above the upper edge, distance from the nut below the lower one; with two scales each edge has its own.
  void name_fret(const FretLine& fret) {
    const bool bass_low = fret.bass_edge.y < 0;
    const Point low = bass_low ? fret.bass_edge : fret.treble_edge, high = bass_low ? fret.treble_edge : fret.bass_edge;
    const double from_low = bass_low ? fret.bass_from_nut : fret.treble_from_nut;
    const double from_high = bass_low ? fret.treble_from_nut : fret.bass_from_nut;
    const double past = drawing_overrun + 1.2, body_middle = 1.05;
    book_.text(high + sheet_.shift + Point{0, past + 0.8}, fret.fret == 0 ? "nut" : std::to_string(fret.fret),
               Text::body, Align::centre);
    if (fret.fret == 0) return;
    const auto distance = [&](Point at, double from, Align align) {
      book_.text(at + sheet_.shift + Point{body_middle, 0}, fixed_measure(board_, from), Text::body, align, pi / 2);
    };
    distance(low + Point{0, -past}, from_low, Align::right);
    if (layout_.bass_scale != layout_.treble_scale) distance(high + Point{0, past + 5}, from_high, Align::left);
  }

  PdfBook& book_;
  const Board& board_;
  const Layout& layout_;
  const TemplateSheet& sheet_;
};

std::string sheet_words(const Board& board, std::size_t number, std::size_t all) {
  std::string place = "Sheet " + std::to_string(number) + " of " + std::to_string(all) + ". ";
  if (all > 1) place += "Lay the crosses over each other. ";
  return place + "Distances from the nut line in " + unit_word(board) + ".";
}

void cross_at(PdfBook& book, Point p) {
  book.line(p - Point{cross_arm, 0}, p + Point{cross_arm, 0}, Pen::thin);
  book.line(p - Point{0, cross_arm}, p + Point{0, cross_arm}, Pen::thin);
  book.path(circle(p, cross_arm / 2), true, Pen::thin);
}

}  // namespace

CheckScales check_scales(const Paper&) {
  return {{margin + scale_column, margin + 12}, {margin + 5, margin + foot_height}};
}

std::vector<TemplateSheet> template_sheets(const Layout& layout, const Paper& paper) {
  const Box view = window(paper), all = shown(layout);
  const Point size = view.high - view.low, whole = all.high - all.low;
  const int columns = sheets_for(whole.x, size.x), rows = sheets_for(whole.y, size.y);
  std::vector<TemplateSheet> sheets;
  for (int row = 0; row < rows; ++row)
    for (int column = 0; column < columns; ++column) {
      const Point low = all.low + Point{column * (size.x - template_overlap), row * (size.y - template_overlap)};
      const Point high{std::min(low.x + size.x, all.high.x), std::min(low.y + size.y, all.high.y)};
      // A board lower than the window stands in its middle.
      const double lift = rows == 1 ? (size.y - whole.y) / 2 : 0;
      sheets.push_back({column, row, {low, high}, view.low - low + Point{0, lift}});
    }
  return sheets;
}

void draw_check_scales(PdfBook& book, const Paper& paper) {
  const auto [along, up] = check_scales(paper);
  scale(book, along, {1, 0}, 100, 10, "100 mm");
  scale(book, along + Point{0, -9}, {1, 0}, 4 * inch, 16, "4 in");
  scale(book, up, {0, 1}, 100, 10, "100 mm");
  scale(book, up + Point{9, 0}, {0, 1}, 4 * inch, 16, "4 in");
}

void mark_overlap(PdfBook& book, const TemplateSheet& sheet, const TemplateSheet& next) {
  const Box both{{std::max(sheet.part.low.x, next.part.low.x), std::max(sheet.part.low.y, next.part.low.y)},
                 {std::min(sheet.part.high.x, next.part.high.x), std::min(sheet.part.high.y, next.part.high.y)}};
  const bool beside = next.row == sheet.row;
  const Point m = between(both.low, both.high, 0.5);
  const Box inner{both.low + Point{cross_arm + 3, cross_arm + 3}, both.high - Point{cross_arm + 3, cross_arm + 3}};
  cross_at(book, (beside ? Point{m.x, inner.low.y} : Point{inner.low.x, m.y}) + sheet.shift);
  cross_at(book, (beside ? Point{m.x, inner.high.y} : Point{inner.high.x, m.y}) + sheet.shift);
}

void draw_sheet_foot(PdfBook& book, const Paper& paper, const std::string& head, const std::string& place) {
  const double right = paper.width - margin;
  book.text({right, margin + 15}, head, Text::head, Align::right);
  book.text({right, margin + 9}, place, Text::body, Align::right);
  book.text({right, margin + 4}, "Print at 100 %, then measure the scales before you use it.", Text::body,
            Align::right);
}

PdfBook template_book(const PreparedBoard& ready, const Drawing& drawing, const Paper& paper) {
  const Board& board = ready.board();
  PdfBook book(shown_name(board) + ", slotting template");
  const std::vector<TemplateSheet> sheets = template_sheets(ready.layout(), paper);
  for (const TemplateSheet& sheet : sheets) {
    book.page(paper);
    SheetPainter painter(book, ready, sheet);
    painter.paint(drawing);
    for (const TemplateSheet& other : sheets)
      if (std::abs(other.row - sheet.row) + std::abs(other.column - sheet.column) == 1)
        mark_overlap(book, sheet, other);
    draw_check_scales(book, paper);
    draw_sheet_foot(book, paper, shown_name(board) + ", slotting template 1:1",
                    sheet_words(board, static_cast<std::size_t>(&sheet - sheets.data()) + 1, sheets.size()));
  }
  return book;
}

}  // namespace sagitta
