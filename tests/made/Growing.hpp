#pragma once

/// Boards of any size, to see how time and memory grow: one board of 22 frets with side dots, pins and sheets, and more
/// and more on it.

#include <string>

namespace sagitta::test {

enum class Growing {
  dots,      ///< round pieces, simple shapes, over the whole board; some lie on slots
  leaves,    ///< pieces of one drawing in two colours, all apart
  rosettes,  ///< pieces of one drawing, a hundred curves each, all apart
  jagged     ///< one drawn piece along the whole board whose two sides are saws: `count` straight segments
};

/// Writes the board of `count` pieces (segments) into a folder, which is made; returns the board file's path. Dots come
/// in rows of 22, one in each space: their number is the next multiple of 22.
std::string write_growing(Growing kind, int count, const std::string& folder);

}  // namespace sagitta::test
