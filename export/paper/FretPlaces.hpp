#pragma once

/// The frets' distances from the nut as a block of columns on a page of the shop drawing. Lengths in mm of paper.

#include <string>
#include <vector>

#include "paper/PdfFigures.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

class FretPlaces {
 public:
  /// In the board's own units, as fixed_measure() writes them. `book` has a page.
  FretPlaces(PdfBook& book, const PreparedBoard& ready);

  bool empty() const { return rows_.empty(); }
  /// The least height over this width: as many columns beside each other as stand there.
  double least_height(double width) const;
  /// Downward from `top`, in no more columns beside each other than the height asks for and at least two. What there is
  /// room for stands beside each fret: its distance from the nut, the next fret's from it, the board's width.
  void paint(Point top, double width, double height);
  /// What paint() takes of the height.
  double used_height(double width, double height) const { return empty() ? 0 : height_in(groups_in(width, height)); }

 private:
  double height_in(std::size_t groups) const;
  std::size_t most_groups(double width) const;
  std::size_t groups_in(double width, double height) const;
  double group_width(std::size_t cells) const;

  PdfBook& book_;
  std::string caption_;
  std::vector<std::string> heads_;
  std::vector<std::vector<std::string>> rows_;
  std::vector<double> widths_;  ///< of the cells' columns
  std::size_t least_cells_ = 2;
};

}  // namespace sagitta
