#pragma once

/// A piece as the cells of a grid that it needs for itself.

#include <cstdint>
#include <vector>

#include "inlay/Inlays.hpp"

namespace sagitta {

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
