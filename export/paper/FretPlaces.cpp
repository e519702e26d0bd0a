#include "paper/FretPlaces.hpp"

#include <algorithm>

#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Between cells, between columns beside each other, and of the line under the headings below its words.
constexpr double cell_gap = 3.5, group_gap = 8, under_heads = 1.4;
/// Lines of the caption and the headings, and what stands between them and the first row.
constexpr double head_height = 2 * line_step + 1;

}  // namespace

FretPlaces::FretPlaces(PdfBook& book, const PreparedBoard& ready) : book_(book) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  const bool fan = layout.bass_scale != layout.treble_scale;
  caption_ = fan ? "Frets from the nut, along the board at the outer bass string and at the outer treble string"
                 : "Frets from the nut";
  heads_ = fan ? std::vector<std::string>{"fret", "bass", "treble"} : std::vector<std::string>{"fret", "from nut"};
  least_cells_ = heads_.size();
  if (!fan) heads_.emplace_back("to next");
  heads_.emplace_back("width");
  const auto shown = [&](double mm) { return fixed_measure(board, mm); };
  for (std::size_t i = 1; i < layout.frets.size(); ++i) {
    const FretLine& fret = layout.frets[i];
    std::vector<std::string> row{std::to_string(fret.fret), shown(fret.bass_from_nut)};
    if (fan)
      row.push_back(shown(fret.treble_from_nut));
    else
      row.push_back(i + 1 < layout.frets.size() ? shown(layout.frets[i + 1].bass_from_nut - fret.bass_from_nut) : "");
    row.push_back(shown(2 * layout.half_width(fret.middle.x)));
    rows_.push_back(std::move(row));
  }
  for (std::size_t i = 0; i < heads_.size(); ++i) {
    widths_.push_back(book.width_of(heads_[i]));
    for (const auto& row : rows_) widths_.back() = std::max(widths_.back(), book.width_of(row[i]));
  }
}

double FretPlaces::group_width(std::size_t cells) const {
  double width = -cell_gap;
  for (std::size_t i = 0; i < cells; ++i) width += widths_[i] + cell_gap;
  return width;
}

std::size_t FretPlaces::most_groups(double width) const {
  const double each = group_width(least_cells_) + group_gap;
  return std::clamp<std::size_t>(static_cast<std::size_t>((width + group_gap) / each), 1, rows_.size());
}

double FretPlaces::height_in(std::size_t groups) const {
  return head_height + line_step * static_cast<double>((rows_.size() + groups - 1) / groups);
}

double FretPlaces::least_height(double width) const { return empty() ? 0 : height_in(most_groups(width)); }

std::size_t FretPlaces::groups_in(double width, double height) const {
  const std::size_t most = most_groups(width);
  std::size_t groups = std::min<std::size_t>(2, most);
  while (groups < most && height_in(groups) > height) ++groups;
  return groups;
}

void FretPlaces::paint(Point top, double width, double height) {
  if (empty()) return;
  const std::size_t groups = groups_in(width, height), lines = (rows_.size() + groups - 1) / groups;
  const double count = static_cast<double>(groups);
  std::size_t cells = heads_.size();
  while (cells > least_cells_ && count * (group_width(cells) + group_gap) - group_gap > width) --cells;
  book_.text(top, caption_);
  const double step = (width + group_gap) / count, heads_at = top.y - line_step;
  for (std::size_t group = 0; group < groups && group * lines < rows_.size(); ++group) {
    const double left = top.x + step * static_cast<double>(group), spare = step - group_gap - group_width(cells);
    double right = left;
    book_.line({left, heads_at - under_heads}, {left + step - group_gap, heads_at - under_heads}, Pen::thin);
    for (std::size_t cell = 0; cell < cells; ++cell) {
      right += widths_[cell] + (cell > 0 ? cell_gap + spare / static_cast<double>(cells - 1) : 0);
      book_.text({right, heads_at}, heads_[cell], Text::body, Align::right);
      for (std::size_t k = 0; k < lines && group * lines + k < rows_.size(); ++k)
        book_.text({right, heads_at - 1 - line_step * static_cast<double>(k + 1)}, rows_[group * lines + k][cell],
                   Text::body, Align::right);
    }
  }
}

}  // namespace sagitta
