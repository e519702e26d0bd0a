#include "inlay/Nesting.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "board/Cutters.hpp"
#include "inlay/Stencil.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Cells along a sheet of middling proportions: fine enough to waste little, coarse enough to be quick.
constexpr double cells_a_side = 400;
constexpr double least_cell = 0.1;

double area_of(const Loops& loops) {
  double sum = 0;
  for (const Loop& loop : loops) sum += area(loop);
  return sum;
}

struct Spot {
  int column = 0, row = 0;
};

/// From a sheet's edge to the nearest place of a piece's stencil, which is half a spacing larger than the piece: the
/// piece itself keeps the margin, clear of the clamps at the ends, and never less than the spacing.
Point low_of(const Sheet& sheet, const NestRules& rules) {
  const double spacing = rules.spacing();
  const double across = std::max(spacing, sheet.margin), along = std::max({spacing, sheet.margin, sheet.clamp});
  return {along - spacing / 2, across - spacing / 2};
}

/// A sheet while it fills.
class Table {
 public:
  Table(const Sheet& sheet, int index, const NestRules& rules)
      : rules_(rules),
        cell_(std::max(least_cell, std::sqrt(sheet.length * sheet.width) / cells_a_side)),
        low_(low_of(sheet, rules)),
        room_{sheet.length - 2 * low_.x, sheet.width - 2 * low_.y},
        taken_(cells(room_.x), cells(room_.y)),
        turns_(rules.turns == NestTurns::free && sheet.pattern == Pattern::along ? NestTurns::half : rules.turns) {
    out_.material = sheet.material;
    out_.sheet = index;
    out_.length = sheet.length;
    out_.width = sheet.width;
    out_.thickness = sheet.thickness;
    out_.along = {{0, sheet.width / 2}, {sheet.length, sheet.width / 2}};
    out_.across = {{sheet.length / 2, 0}, {sheet.length / 2, sheet.width}};
  }

  /// Puts the piece where its top comes lowest, then as far left as it goes.
  bool place(const InlayPiece& piece, const Cancel& cancel) {
    struct Choice {
      int quarters;
      Stencil stencil;
      Spot spot;
      double top;
    };
    std::optional<Choice> best;
    for (const int quarters : allowed()) {
      Stencil one = stencil(quarter_turned(piece.piece, quarters), rules_.spacing() / 2, cell_);
      const auto spot = first_room(one, cancel);
      if (!spot) continue;
      const double top = spot->row * cell_ + one.box.high.y - one.box.low.y;
      const bool better = !best || top < best->top - tolerance::same ||
                          (top < best->top + tolerance::same && spot->column < best->spot.column);
      if (better) best = Choice{quarters, std::move(one), *spot, top};
    }
    if (!best || cancel.wanted()) return false;
    taken_.add(best->stencil.cells, best->spot.column, best->spot.row);
    for (int row = 0; row < best->stencil.cells.rows(); ++row) free_.erase(best->spot.row + row);
    const Point move = low_ + cell_ * Point{1.0 * best->spot.column, 1.0 * best->spot.row} - best->stencil.box.low;
    NestedPiece nested{piece.name, best->quarters * std::numbers::pi / 2, move,
                       moved(quarter_turned(piece.piece, best->quarters), move)};
    if (piece.ellipse) nested.ellipse = piece.ellipse->turned(nested.turn).moved(move);
    out_.used += area_of(nested.outline);
    out_.pieces.push_back(std::move(nested));
    return true;
  }

  const NestedSheet& out() const { return out_; }

 private:
  int cells(double size) const { return std::max(1, static_cast<int>(std::ceil(size / cell_))); }

  std::vector<int> allowed() const {
    if (turns_ == NestTurns::none) return {0};
    if (turns_ == NestTurns::half) return {0, 2};
    return {0, 1, 2, 3};
  }

  std::optional<Spot> first_room(const Stencil& piece, const Cancel& cancel) {
    const auto last = [&](double room, double size) {
      return room - size < -tolerance::same ? -1
                                            : static_cast<int>(std::floor((room - size) / cell_ + tolerance::same));
    };
    const int columns = last(room_.x, piece.box.high.x - piece.box.low.x);
    const int rows = last(room_.y, piece.box.high.y - piece.box.low.y);
    if (columns < 0) return std::nullopt;
    const CellRun longest = piece.cells.longest_run();
    for (int row = 0; row <= rows && !cancel.wanted(); ++row)
      for (const CellRun& free : free_runs(row + longest.row)) {
        const int from = std::max(0, free.first - longest.first), to = std::min(columns, free.end - longest.end);
        for (int column = from; column <= to; ++column)
          if (taken_.is_clear(piece.cells, column, row)) return Spot{column, row};
      }
    return std::nullopt;
  }

  /// Where a row has room: only there can the longest run of a piece lie. Beyond the grid nothing is taken.
  const std::vector<CellRun>& free_runs(int row) {
    constexpr int endless = std::numeric_limits<int>::max() / 2;
    const auto known = free_.find(row);
    if (known != free_.end()) return known->second;
    std::vector<CellRun> runs{{row, 0, endless}};
    if (row < taken_.rows()) {
      runs = taken_.runs(row, false);
      if (!runs.empty() && runs.back().end == taken_.columns()) runs.back().end = endless;
      if (runs.empty() || runs.back().end != endless) runs.push_back({row, taken_.columns(), endless});
    }
    return free_.emplace(row, std::move(runs)).first->second;
  }

  NestRules rules_;
  double cell_;
  Point low_, room_;
  CellGrid taken_;
  std::map<int, std::vector<CellRun>> free_;  ///< of rows that were asked for since they changed
  NestTurns turns_;
  NestedSheet out_;
};

}  // namespace

NestRules nest_rules(const Board& board) {
  NestRules rules;
  rules.cutter = std::max(rules.cutter, widest_cut(board, CutterUse::piece).value_or(0));
  return rules;
}

std::optional<Nesting> nest(const std::vector<InlayPiece>& pieces, const std::vector<Sheet>& sheets,
                            const NestRules& rules, const Cancel& cancel) {
  std::vector<Table> tables;
  for (std::size_t i = 0; i < sheets.size(); ++i) tables.emplace_back(sheets[i], static_cast<int>(i), rules);
  std::vector<const InlayPiece*> order;
  for (const InlayPiece& piece : pieces) order.push_back(&piece);
  std::stable_sort(order.begin(), order.end(), [](const InlayPiece* a, const InlayPiece* b) {
    return std::abs(area_of(a->piece)) > std::abs(area_of(b->piece));
  });
  Nesting out;
  for (const InlayPiece* piece : order) {
    bool placed = false;
    for (std::size_t i = 0; i < sheets.size() && !placed && !cancel.wanted(); ++i)
      placed = sheets[i].material == piece->material && sheets[i].thickness >= piece->thickness - tolerance::same &&
               tables[i].place(*piece, cancel);
    if (cancel.wanted()) return std::nullopt;
    if (!placed) out.no_room.push_back(piece->name);
  }
  for (const Table& table : tables)
    if (!table.out().pieces.empty()) out.sheets.push_back(table.out());
  std::sort(out.no_room.begin(), out.no_room.end());
  return out;
}

}  // namespace sagitta
