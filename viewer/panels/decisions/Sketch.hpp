#pragma once

/// What the dimensions of a decision are worked out from, and the strokes that they are made of.

#include <string>
#include <utility>
#include <vector>

#include "decisions/Dimensions.hpp"

namespace sagitta::viewer {

/// Everything that a dimension is worked out from. Lengths in mm.
struct Sketch {
  const PreparedBoard& prepared;
  const Board& board;
  const Layout& layout;
  const Surface& surface;
  const Manner& manner;
  std::vector<Dimension> out;

  double top(double x, double y) const { return surface.exists(x, y) ? surface.height(x, y) : surface.thickness; }
  Vec at(double x, double y, double z) const {
    return {static_cast<float>(x), static_cast<float>(y), static_cast<float>(z)};
  }
  /// A point `lift` above the playing surface.
  Vec on(double x, double y, double lift = 0.3) const { return at(x, y, top(x, y) + lift); }
  void between(Vec a, Vec b, const std::string& text) { out.push_back({a, b, text}); }
  void note(Vec a, const std::string& text) { out.push_back({a, a, text}); }
  std::string mm(double v) const { return shown(v, manner); }
  /// The decision's name with its value as the board file has it: "Tang depth: 1.7 mm". A key of a list says its row.
  std::string named(const std::string& key) const;

  double edge_y(int side, double x) const { return side == 0 ? -layout.edge(0, x) : layout.edge(1, x); }
  void width_at(double x);
  void margin_at(double x);
  void radius_at(double x);
  void height_at(double x, double y) { between(at(x, y, 0), on(x, y, 0), mm(top(x, y))); }
};

/// y of a line beside the board, where no edge reaches.
double outside(const Layout& layout);
/// The row of the list that a key belongs to; the first where it names none.
std::size_t row_of(const std::string& key);

// The dimensions of each table's keys; `key` may have a row's index.
void dimension_surface(Sketch& s, const std::string& key);   ///< surface, scallop, edges
void dimension_neck(Sketch& s, const std::string& key);      ///< neck
void dimension_heights(Sketch& s, const std::string& key);   ///< height
void dimension_measured(Sketch& s, const std::string& key);  ///< measured

}  // namespace sagitta::viewer
