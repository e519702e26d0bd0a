#include "paper/PdfTable.hpp"

#include <algorithm>
#include <cstdlib>

#include "paper/PdfFigures.hpp"

namespace sagitta {
namespace {

/// Between columns; under the baseline of a row's last line; room to write into. mm.
constexpr double cell_gap = 4, below_line = 1.1, written_width = 24;
constexpr double tick_box = 2.6, tick_gap = 1.6, tick_step = 5;
constexpr std::size_t most_tick_rows = 6, least_part = 6, most_parts = 3;

bool is_figure(const std::string& text) {
  char* end = nullptr;
  std::strtod(text.c_str(), &end);
  return !text.empty() && *end == '\0';
}

struct Column {
  double left = 0, width = 0;
  bool figures = false, written = false;
};

using Columns = std::vector<Column>;
using Cells = std::vector<std::vector<std::string>>;  ///< lines of each cell

Columns columns_of(PdfBook& ruler, double width, const PaperTable& table) {
  Columns columns(table.heads.size());
  double all = -cell_gap;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    Column& column = columns[i];
    column.written = !table.written.empty() && table.heads[i] == table.written;
    column.width = std::max(ruler.width_of(table.heads[i]), column.written ? written_width : 0.0);
    for (const auto& row : table.rows) {
      column.width = std::max(column.width, ruler.width_of(row[i]));
      column.figures = column.figures || is_figure(row[i]);
    }
    all += column.width + cell_gap;
  }
  const auto widest = std::max_element(columns.begin(), columns.end(),
                                       [](const Column& a, const Column& b) { return a.width < b.width; });
  if (widest != columns.end() && all > width) widest->width = std::max(widest->width - (all - width), width / 6);
  const double spare = std::max(0.0, width - all), gaps = std::max(1.0, static_cast<double>(columns.size()) - 1);
  const auto hand = std::find_if(columns.begin(), columns.end(), [](const Column& column) { return column.written; });
  if (hand != columns.end()) hand->width += spare;
  double left = 0;
  for (Column& column : columns) {
    column.left = left;
    left += column.width + cell_gap + (hand == columns.end() ? spare / gaps : 0);
  }
  return columns;
}

/// Of the table as it is, with no column broken.
double natural_width(PdfBook& ruler, const PaperTable& table) {
  double all = 0;
  for (std::size_t i = 0; i < table.heads.size(); ++i) {
    double widest = ruler.width_of(table.heads[i]);
    for (const auto& row : table.rows) widest = std::max(widest, ruler.width_of(row[i]));
    all += widest + cell_gap;
  }
  return all;
}

FlowBlock row_block(PdfBook& ruler, const Columns& columns, const std::vector<std::string>& row, Pen below) {
  Cells cells;
  std::size_t lines = 1;
  for (std::size_t i = 0; i < row.size(); ++i) {
    cells.push_back(lines_of(ruler, columns[i].width + 0.01, row[i]));
    lines = std::max(lines, cells.back().size());
  }
  FlowBlock block;
  block.height = line_step * static_cast<double>(lines) + 0.4;
  block.paint = [columns, cells, below, height = block.height](PdfBook& book, Point corner, double) {
    const double foot = corner.y - height;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      const Column& column = columns[i];
      const double x = corner.x + column.left + (column.figures ? column.width : 0);
      for (std::size_t k = 0; k < cells[i].size(); ++k)
        book.text({x, corner.y - line_step * static_cast<double>(k + 1) + below_line}, cells[i][k], Text::body,
                  column.figures ? Align::right : Align::left);
    }
    const double right = corner.x + columns.back().left + columns.back().width;
    book.line({corner.x, foot}, {right, foot}, below);
    for (const Column& column : columns)
      if (column.written && below == Pen::faint)
        book.line({corner.x + column.left, foot}, {corner.x + column.left + column.width, foot}, Pen::line);
  };
  return block;
}

void paint_tick(PdfBook& book, Point foot, const std::string& words) {
  book.path(rectangle(foot - Point{0, 0.3}, foot + Point{tick_box, tick_box - 0.3}), true, Pen::thin);
  book.text(foot + Point{tick_box + tick_gap, 0}, words);
}

}  // namespace

std::vector<FlowBlock> table_blocks(PdfBook& ruler, double width, const PaperTable& table) {
  std::vector<FlowBlock> blocks;
  if (table.rows.empty()) return blocks;
  const Columns columns = columns_of(ruler, width, table);
  blocks.push_back(row_block(ruler, columns, table.heads, Pen::line));
  blocks.back().with_next = true;
  const auto heading = std::make_shared<const FlowBlock>(blocks.back());
  for (const auto& row : table.rows) {
    blocks.push_back(row_block(ruler, columns, row, Pen::faint));
    blocks.back().heading = heading;
  }
  blocks[1].heading = nullptr;
  // No row stands alone, neither below the headings nor at the top of the next column.
  const std::size_t last = blocks.size() - 1;
  for (const std::size_t each : {std::size_t{1}, std::size_t{2}, last - 1})
    if (each >= 1 && each < last) blocks[each].with_next = true;
  return blocks;
}

PaperTable folded(PdfBook& ruler, double width, const PaperTable& table) {
  const double each = natural_width(ruler, table) + cell_gap;
  std::size_t parts = std::min({most_parts, table.rows.size() / least_part, static_cast<std::size_t>(width / each)});
  if (parts < 2) return table;
  const std::size_t rows = (table.rows.size() + parts - 1) / parts;
  PaperTable side_by_side;
  side_by_side.rows.resize(rows);
  for (std::size_t part = 0; part < parts; ++part) {
    if (part > 0) side_by_side.heads.emplace_back();  // a gap
    side_by_side.heads.insert(side_by_side.heads.end(), table.heads.begin(), table.heads.end());
    for (std::size_t i = 0; i < rows; ++i) {
      std::vector<std::string>& row = side_by_side.rows[i];
      const std::size_t at = part * rows + i;
      const auto own = at < table.rows.size() ? table.rows[at] : std::vector<std::string>(table.heads.size());
      if (part > 0) row.emplace_back();
      row.insert(row.end(), own.begin(), own.end());
    }
  }
  return side_by_side;
}

std::vector<FlowBlock> tick_blocks(PdfBook& ruler, double width, const std::vector<std::string>& ticks) {
  double widest = 0;
  for (const std::string& tick : ticks) widest = std::max(widest, ruler.width_of(tick));
  const double wanted = tick_box + tick_gap + widest + cell_gap;
  const std::size_t columns = std::max<std::size_t>(1, static_cast<std::size_t>((width + cell_gap) / wanted));
  const std::size_t in_all = columns * most_tick_rows;
  std::vector<FlowBlock> blocks;
  for (std::size_t from = 0; from < ticks.size(); from += in_all) {
    const std::vector<std::string> own(
        ticks.begin() + static_cast<std::ptrdiff_t>(from),
        ticks.begin() + static_cast<std::ptrdiff_t>(std::min(ticks.size(), from + in_all)));
    const std::size_t rows = (own.size() + columns - 1) / columns;
    FlowBlock block;
    block.height = tick_step * static_cast<double>(rows);
    block.paint = [own, rows, columns](PdfBook& book, Point corner, double all) {
      const double step = (all + cell_gap) / static_cast<double>(columns);
      for (std::size_t i = 0; i < own.size(); ++i)
        paint_tick(
            book,
            corner + Point{step * static_cast<double>(i / rows), -tick_step * static_cast<double>(i % rows + 1) + 1.2},
            cut_to(book, all - tick_box - tick_gap, own[i]));
    };
    blocks.push_back(std::move(block));
  }
  return blocks;
}

}  // namespace sagitta
