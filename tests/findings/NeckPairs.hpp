#pragma once

// Necks as if read from a file, against the good board: half width 27.78 from -6.2 to 475.945. The glue face here runs
// from x = 0 to 460.

#include "Pairs.hpp"

namespace sagitta::test {

/// The corners' own y and z may differ: {nut low, heel low, heel high, nut high}.
inline NeckReading read_neck_face(double half, double heel_high_z = 0, double heel_z = 0) {
  NeckShape shape;
  shape.solids = 1;
  shape.faces = 6;
  shape.outlines = {
      {Place3{0, -half, 0}, Place3{460, -half, heel_z}, Place3{460, half, heel_z + heel_high_z}, Place3{0, half, 0}}};
  return {shape, ""};
}

inline std::vector<Pair> neck_pairs() {
  const auto any_neck = [](Board& b, double) { neck_of(b); };
  return {
      {"neck-outside-board", 27.79, 27.81, any_neck, [](double v) { return read_neck_face(v); }},
      {"neck-outside-board", 28.29, 28.31,
       [](Board& b, double) {
         neck_of(b).state = NeckState::rough;
         neck_of(b).trim = 0.5;
       },
       [](double v) { return read_neck_face(v); }},
      {"board-outside-neck", 27.29, 27.27, any_neck, [](double v) { return read_neck_face(v); }},
      {"neck-into-board", 0.09, 0.11, any_neck,
       [](double v) {
         NeckReading reading = read_neck_face(27.78);
         reading.shape->interference = v;
         return reading;
       }},
      {"glue-face-twisted", 0.049, 0.051, any_neck, [](double v) { return read_neck_face(27.78, v); }},
      {"glue-face-tilted", 0.0476, 0.0478,  // over 460; the board is 482.145 long, that is 0.04989 and 0.05010
       any_neck, [](double v) { return read_neck_face(27.78, 0, v); }},
      {"glue-face-elsewhere", 0.009, 0.011, any_neck,
       [](double v) {
         NeckReading reading = read_neck_face(27.78);
         for (Place3& corner : reading.shape->outlines[0]) corner[2] = v;
         return reading;
       }},
      {"channel-differs", 6.19, 6.21,
       [](Board& b, double) {
         neck_of(b).channel_width = 6;
         neck_of(b).channel_from = 50;
       },
       [](double v) {
         NeckReading reading = read_neck_face(27.78);
         reading.shape->outlines.push_back(
             {Place3{50, -v / 2, 0}, Place3{50, v / 2, 0}, Place3{400, v / 2, 0}, Place3{400, -v / 2, 0}});
         return reading;
       }},
      {"neck-file-unread", 0, 1, any_neck,
       [](double v) {
         return v == 0 ? read_neck_face(27.78) : NeckReading{{}, "the file cannot be read"};
       }},
  };
}

}  // namespace sagitta::test
