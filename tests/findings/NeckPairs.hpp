#pragma once

// Necks as if read from a file, against the good board: half width 27.78 from -6.2 to 475.945. The glue face here runs
// from x = 0 to 460.

#include <cmath>
#include <numbers>

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

/// The same, changed.
inline NeckReading changed_face(const std::function<void(NeckShape&)>& change) {
  NeckReading reading = read_neck_face(27.78);
  change(*reading.shape);
  return reading;
}

/// An action of 1.5 over fret 12 and no relief: the plane of the fret tops lies at 6.35 + 1.2, a string in the middle
/// 0.5 over it at the nut and 2.5 at the saddle, at z = 10.05.
inline Heights& heights_of(Board& board) {
  Heights& heights = board.height.emplace();
  heights.action = LengthPair(1.5);
  heights.relief = 0;
  heights.body_step = 0;
  return heights;
}

inline std::vector<Pair> height_pairs() {
  return {
      {"bridge-too-low", 9.56, 9.54, [](Board& b, double v) { heights_of(b).bridge = v; }},
      {"bridge-too-high", 10.54, 10.56, [](Board& b, double v) { heights_of(b).bridge = v; }},
      {"angle-needed", 10.36, 10.37,  // 10.05 + (647.7 - 465.945) sin 0.1 degrees = 10.3672
       [](Board& b, double v) {
         neck_of(b);
         heights_of(b).bridge = v;
       }},
      {"buzz-at-fret", 0.26, 0.24,  // 0.5 at the nut: a line that meets the plane at the saddle is 0.25 over fret 12
       [](Board& b, double v) { heights_of(b).action = LengthPair(v); }},
      {"neck-too-thin-at-rod", 11.64, 11.66,  // 21 - 6.35 - 3
       [](Board& b, double v) {
         neck_of(b).depth_first = 21;
         neck_of(b).channel_depth = v;
       }},
      {"end-into-body", 0, -0.01,  // the board's end lies 10 beyond fret 22; a body that lies level
       [](Board& b, double v) {
         neck_of(b).joint_fret = 16;
         heights_of(b).body_step = v;
       }},
      {"end-into-body", -0.6,
       -0.62,  // fret 16 at 390.66: over 85.29 mm the body rises by 85.29 tan 0.6 = 0.893 to the end
       [](Board& b, double v) {
         neck_of(b).joint_fret = 16;
         neck_of(b).angle_degrees = v;
         heights_of(b).body_step = 85.288 * std::tan(0.61 * std::numbers::pi / 180);
       }},
  };
}

inline std::vector<Pair> neck_place_pairs() {
  const auto any_neck = [](Board& b, double) { neck_of(b); };
  return {
      {"neck-not-found", 0.951, 0.949, any_neck,
       [](double v) { return changed_face([=](NeckShape& shape) { shape.place.compared = v; }); }},
      {"neck-unit-doubtful", 1, 25.4, any_neck,
       [](double v) { return changed_face([=](NeckShape& shape) { shape.times = v; }); }},
      {"neck-unit-doubtful", 1, 0.1, any_neck,
       [](double v) { return changed_face([=](NeckShape& shape) { shape.times = v; }); }},
      {"body-end-differs", 400.49, 400.51, [](Board& b, double) { neck_of(b).body_at = 400; },
       [](double v) { return changed_face([=](NeckShape& shape) { shape.body_from = v; }); }},
      {"neck-other-hand", 0, 1, any_neck,
       [](double v) { return changed_face([=](NeckShape& shape) { shape.place.other_hand = v == 1; }); }},
      {"board-in-neck-file", 0, 1, any_neck,
       [](double v) { return changed_face([=](NeckShape& shape) { shape.boards = static_cast<int>(v); }); }},
      {"neck-edge-rounded", 0.19, 0.21, any_neck,
       [](double v) { return changed_face([=](NeckShape& shape) { shape.edge_rounding = v; }); }},
      {"glue-face-bowed", 0.049, 0.051, any_neck,
       [](double v) {
         return changed_face([=](NeckShape& shape) {
           auto& outline = shape.outlines[0];
           outline.insert(outline.begin() + 3, Place3{230, 27.78, v});
           outline.insert(outline.begin() + 1, Place3{230, -27.78, v});
         });
       }},
      {"pin-hole-differs", 0.09, 0.11,
       [](Board& b, double) {
         neck_of(b);
         b.pins.emplace();
         b.pins->at = {{100, 15}};
       },
       [](double v) {
         return changed_face([=](NeckShape& shape) {
           shape.outlines.emplace_back();
           for (int i = 0; i < 16; ++i)
             shape.outlines.back().push_back(
                 {100 + v + std::cos(i * std::numbers::pi / 8), 15 + std::sin(i * std::numbers::pi / 8), 0});
         });
       }},
      {"channel-missing", 1, 0, [](Board& b, double) { neck_of(b).channel_width = 6; },
       [](double v) {
         return changed_face([=](NeckShape& shape) {
           if (v == 1)
             shape.outlines.push_back({Place3{50, -3, 0}, Place3{50, 3, 0}, Place3{400, 3, 0}, Place3{400, -3, 0}});
         });
       }},
      {"cut-beside-channel", 6.01, 5.99,  // a dot of 4 beside a channel of 6
       [](Board& b, double v) {
         neck_of(b).channel_width = 6;
         Cut cut;
         cut.name = "window", cut.from = CutFrom::below, cut.diameter = 4, cut.at = {70, v}, cut.depth = 1;
         b.cuts = {cut};
       }},
      {"thin-over-channel", 4.34, 4.36,  // a floor at 6.35 - v over the channel, 2 at the least
       [](Board& b, double v) {
         neck_of(b).channel_width = 6;
         Cut cut;
         cut.name = "window", cut.diameter = 4, cut.at = {50, 0}, cut.depth = v;
         b.cuts = {cut};
       }},
      {"channel-deep", 15.9, 16.1, [](Board& b, double v) { neck_of(b).channel_depth = v; }},
      {"channel-shallow", 4.1, 3.9, [](Board& b, double v) { neck_of(b).channel_depth = v; }},
  };
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
       any_neck,
       [](double v) {
         return changed_face([=](NeckShape& shape) {
           const double slope = v / 460, size = std::hypot(1, slope);
           shape.place.along = {1 / size, 0, slope / size}, shape.place.up = {-slope / size, 0, 1 / size};
         });
       }},
      {"glue-face-elsewhere", 0.009, 0.011, any_neck,
       [](double v) { return changed_face([=](NeckShape& shape) {
                        shape.place.origin = {0, 0, v};
                      }); }},
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
