#include <algorithm>
#include <cmath>

#include "drawing/Drawing.hpp"
#include "drawing/Paper.hpp"
#include "paper/PdfFigures.hpp"
#include "paper/ShopDrawing.hpp"
#include "tables/PieceList.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

constexpr double title_height = 14, heading_height = 6, number_lift = 1.2, body_height = 2.1;
/// The list's columns, from the left edge of one block: number, piece, fret, along x across, pocket, thickness. mm.
constexpr double stops[] = {0, 10, 40, 50, 82, 105};
constexpr double block_width = 122, block_gap = 14;

std::string size_of(const Board& board, const Box& box) {
  return measure(board, box.high.x - box.low.x) + " x " + measure(board, box.high.y - box.low.y);
}

void list_heading(PdfBook& book, Point at) {
  const char* names[] = {"No.", "Piece", "Fret", "Along x across", "Pocket depth", "Thickness"};
  for (int i = 0; i < 6; ++i) book.text(at + Point{stops[i], 0}, names[i]);
  book.line(at - Point{0, 1.4}, at + Point{block_width, -1.4}, Pen::thin);
}

void list_row(PdfBook& book, const Board& board, Point at, const ListedPiece& listed) {
  const std::string cells[] = {std::to_string(listed.number),      listed.piece.name,
                               std::to_string(listed.piece.fret),  size_of(board, listed.box),
                               measure(board, listed.piece.depth), measure(board, listed.piece.thickness)};
  for (int i = 0; i < 6; ++i) book.text(at + Point{stops[i], 0}, cells[i]);
}

/// The board with its numbered pieces, the middle of its length at `centre`.
void plan(PdfBook& book, const PreparedBoard& ready, const std::vector<ListedPiece>& pieces, double factor,
          Point centre) {
  const Layout& layout = ready.layout();
  const Box box = bounds(layout.outline);
  const Point origin = centre - factor * Point{(box.low.x + box.high.x) / 2, 0};
  const auto at = [&](Point p) { return origin + factor * p; };
  for (const Slot& slot : ready.slots()) book.line(at(slot.bass_end), at(slot.treble_end), Pen::faint);
  book.path(placed(layout.outline, factor, origin), true, Pen::outline);
  std::vector<Box> words;  // the numbers that stand outside of their pieces
  for (const ListedPiece& listed : pieces) {
    for (const Loop& loop : listed.piece.piece) book.path(placed(loop, factor, origin), true, Pen::line);
    const Box& own = listed.box;
    const Point middle = at(between(own.low, own.high, 0.5));
    const std::string number = std::to_string(listed.number);
    const double width = book.width_of(number);
    const double room = factor * std::min(own.high.x - own.low.x, own.high.y - own.low.y);
    if (room > width + 1.5 && room > body_height + 1.5) {
      book.text(middle - Point{0, body_height / 2}, number, Text::body, Align::centre);
      continue;
    }
    // Too small to be written into: over the piece, higher where another number stands there already.
    Point low{middle.x - width / 2, at(own.high).y + number_lift};
    const auto taken = [&] {
      const Box word{low - Point{0.5, 0.2}, low + Point{width + 0.5, body_height + 0.2}};
      return std::any_of(words.begin(), words.end(), [&](const Box& other) { return other.overlaps(word); });
    };
    while (taken()) low.y += line_step;
    words.push_back({low, low + Point{width, body_height}});
    book.text({middle.x, low.y}, number, Text::body, Align::centre);
  }
}

/// How many list rows fit on a page below `top`.
int rows_below(double top) { return std::max(1, static_cast<int>((top - heading_height - paper_margin) / line_step)); }

}  // namespace

PdfBook inlay_book(const PreparedBoard& ready, const InlayOutlines& inlays, const Paper& paper) {
  const Board& board = ready.board();
  const std::vector<ListedPiece> pieces = piece_list(inlays.pieces);
  const Box box = bounds(ready.layout().outline);
  PdfBook book(shown_name(board) + ", inlay drawing");
  const double room = paper.width - 2 * paper_margin, tall = (paper.height - 2 * paper_margin - title_height) / 2;
  const DrawingScale scale =
      scale_for(box.high.x - box.low.x, std::min(room, tall / (box.high.y - box.low.y) * (box.high.x - box.low.x)), 1);
  const int blocks = std::max(1, static_cast<int>((room + block_gap) / (block_width + block_gap)));
  std::size_t next = 0;
  for (int page = 1; page == 1 || next < pieces.size(); ++page) {
    book.page(paper);
    title(book, shown_name(board),
          "Inlay drawing" + std::string(page > 1 ? ", continued" : ". Board from above " + scale.name) +
              ", dimensions in " + unit_word(board) + ".");
    double top = paper.height - paper_margin - title_height;
    if (page == 1) {
      const double height = scale.factor * (box.high.y - box.low.y);
      plan(book, ready, pieces, scale.factor, {paper.width / 2, top - 6 - height / 2});
      top -= height + 18;
    }
    const int rows = rows_below(top);
    for (int block = 0; block < blocks && next < pieces.size(); ++block) {
      const Point corner{paper_margin + block * (block_width + block_gap), top};
      list_heading(book, corner);
      for (int row = 0; row < rows && next < pieces.size(); ++row, ++next)
        list_row(book, board, corner - Point{0, heading_height + row * line_step}, pieces[next]);
    }
  }
  return book;
}

}  // namespace sagitta
