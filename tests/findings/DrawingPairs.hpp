#pragma once

/// Drawings that trigger a finding, and the nearest that do not. Lengths in mm.

#include <fstream>
#include <sstream>

#include "MorePairs.hpp"

namespace sagitta::test {

/// Rectangles of one colour.
struct Patch {
  std::string colour;
  std::vector<std::array<double, 4>> boxes;  ///< x, y, width, height
};

/// Lets a drawing of such patches in at fret 3 at its own size, with one cutter of this diameter for all of it.
inline void let_in(Board& board, const std::vector<Patch>& patches, double cutter) {
  let_in_square(board, cutter);
  double width = 0;
  std::ostringstream paths;
  for (const Patch& patch : patches) {
    paths << "<path fill='" << patch.colour << "' d='";
    for (const auto& [x, y, along, across] : patch.boxes) {
      paths << "M" << x << " " << y << "h" << along << "v" << across << "h" << -along << "z";
      width = std::max(width, x + along);
    }
    paths << "'/>";
    board.inlays[0].colours[patch.colour] = patch.colour == "#202020" ? "shell" : "bone";
  }
  static int drawings = 0;  // boards that are looked at side by side have files of their own
  board.inlays[0].file = "patches-" + std::to_string(++drawings) + ".svg";
  board.inlays[0].along = width;
  std::ofstream(board.folder + "/" + board.inlays[0].file)
      << "<svg xmlns='http://www.w3.org/2000/svg' width='20mm' height='20mm' "
         "viewBox='0 0 20 20'>"
      << paths.str() << "</svg>";
}

/// Two arms of 2 mm, 6 mm long, `gap` apart and joined at their ends.
inline Patch fork(double gap) { return {"#202020", {{0, 0, 2, 4 + gap}, {0, 0, 8, 2}, {0, 2 + gap, 8, 2}}}; }

inline std::vector<Pair> drawing_pairs() {
  return {
      {"colour-lost", 0.51, 0.49,  // beside a square, a strip of another colour; the cutter is 0.5
       [](Board& b, double v) {
         let_in(b, {{"#202020", {{0, 0, 4, 4}}}, {"#c02020", {{6, 0, v, 4}}}}, 0.5);
       }},
      {"colour-mostly-lost", 9.6, 9.9,  // of 2 x 2 and 0.4 x v only the square is left: 3.946 of 7.84, and of 7.96
       [](Board& b, double v) {
         let_in(b, {{"#202020", {{0, 0, 2, 2}, {3, 0, 0.4, v}}}}, 0.5);
       }},
      {"gap-too-narrow", 0.51, 0.49, [](Board& b, double v) { let_in(b, {fork(v)}, 0.5); }},
      {"pockets-merge", 0.152, 0.148,  // two clearances of 0.05 for the pockets, and one for the wood between them
       [](Board& b, double v) {
         let_in(b, {{"#202020", {{0, 0, 3, 3}, {3 + v, 0, 3, 3}}}}, 0.5);
       }},
      {"area-added", 0.42, 0.44,  // one inner corner: (1 - pi/4) r^2 is 0.0095 and 0.0104 mm2
       [](Board& b, double v) {
         let_in(b, {{"#202020", {{0, 0, 4, 2}, {0, 0, 2, 4}}}}, v);
       }},
  };
}

}  // namespace sagitta::test
