#pragma once

/// A piece as the cells of a grid that it needs for itself.

#include <cstdint>
#include <vector>

#include "inlay/Inlays.hpp"

namespace sagitta {

/// Cells of one row that stand together: from `first` up to, not including, `end`.
struct CellRun {
  int row = 0, first = 0, end = 0;
  int length() const { return end - first; }
};

/// Rows of cells, a bit each.
class CellGrid {
 public:
  CellGrid(int columns, int rows);
  int columns() const { return columns_; }
  int rows() const { return rows_; }
  bool at(int column, int row) const;
  void set(int column, int row);
  /// Whether no cell of `other`, moved by so many cells, is set here too. The part moved beyond the grid is not looked
  /// at.
  bool is_clear(const CellGrid& other, int column, int row) const;
  void add(const CellGrid& other, int column, int row);
  /// The runs of a row's cells that are set, or that are not, from left to right.
  std::vector<CellRun> runs(int row, bool is_set) const;
  /// The longest run of set cells; of several as long, the first of the lowest row. Length 0 when no cell is set.
  CellRun longest_run() const;
  friend bool operator==(const CellGrid&, const CellGrid&) = default;

 private:
  std::uint64_t word(int row, int index) const;
  int columns_, rows_, words_;
  std::vector<std::uint64_t> bits_;
};

/// Every cell that the piece grown by `margin` may reach. The grid's corner is the low corner of the grown piece's
/// bounding box.
struct Stencil {
  CellGrid cells;
  Box box;  ///< of the grown piece
};
Stencil stencil(const Loops& piece, double margin, double cell);

/// The outlines turned counter-clockwise about the origin by so many right angles: exact.
Loops quarter_turned(const Loops& loops, int quarters);
Loops moved(const Loops& loops, Point by);

}  // namespace sagitta
