#pragma once

/// How high the strings are: from the playing surface, the wire, the neck's relief, the heights under [height], the
/// neck's angle and the body follow the height of each string over each fret and of the saddle over the body. Strings
/// are straight lines. Lengths in mm, in the board's frame; angles in radians.
///
/// Fret tops: the playing surface and wire.crown_height, less the relief. Relief: a parabola over x from the nut line
/// to the joint, 0 at both and `relief` at relief_fret, r(x) = relief x (J - x) / (x_r (J - x_r)); 0 beyond the joint.
/// A circular arc through the same three points is less far down than the parabola by k z (z - relief) where it is z
/// down, k = relief / (x_r (J - x_r)): both meet x (J - x) = z / k + z (z - relief) and x (J - x) = r / k. That is
/// under 0.00005 mm for reliefs up to 1 mm, and under 0.005 mm for the 5 mm that a board file may ask for, where the
/// joint is 250 mm or further from the nut and the relief is measured in the middle half of that. So which of the two a
/// neck follows makes no difference, and the board file has no key for it. Body: its top is a line in the side view,
/// body_step under the glue face at the joint; with the neck's angle a it falls by tan a for each mm toward the bridge.
/// So the saddle's top at height z over the glue face stands (z + step) cos a + (S - J) sin a square above it, S and J
/// the saddle's and the joint's x (plane trigonometry).

#include <optional>
#include <vector>

#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// One string over one fret.
struct FretHeight {
  int fret = 0;
  Point at;                        ///< where the string crosses the fret
  double top = 0;                  ///< of the fret over the glue face, relief included
  double height = 0;               ///< of the open string over it
  std::optional<double> ahead{};   ///< fretted here, the least gap over the frets toward the bridge; none at the last
  std::optional<double> behind{};  ///< fretted here, the least gap over the frets toward the nut; none at the first
};

struct StringHeights {
  int string = 0;                                           ///< from the bass side
  double nut_x = 0, nut_z = 0, saddle_x = 0, saddle_z = 0;  ///< ends of the line
  double action = 0;                                        ///< at action_fret
  std::vector<FretHeight> frets;                            ///< from fret 1
};

/// The least gap of a string over a fret top. `fretted`: where the string is held down; 0: open.
struct StringGap {
  int string = 0, fretted = 0, fret = 0;
  double gap = 0;
};

/// The body under the saddle, in the side view on the centre line.
struct BodyLine {
  double joint_x = 0, saddle_x = 0;
  double step = 0;  ///< the body's top below the glue face at the joint
};

/// Height of the saddle's top over the body's top, square to it, when it lies at z over the glue face.
double bridge_for(const BodyLine& body, double saddle_z, double angle);
/// The saddle's z with a bridge this high.
double saddle_for(const BodyLine& body, double bridge, double angle);
/// The neck's angle with which a bridge this high brings the saddle's top to z; nothing where none does. Of the two the
/// one nearer to zero. Source: a cos t + b sin t = R sin(t + atan2(a, b)), R^2 = a^2 + b^2.
std::optional<double> angle_for(const BodyLine& body, double saddle_z, double bridge);

struct HeightChain {
  std::vector<StringHeights> strings;  ///< bass first
  double relief = 0;
  double least_relief = -1e3, most_relief = 1e3;  ///< between them no string touches a fret that it is not held on
  StringGap least_ahead;                          ///< of all strings, open and fretted
  std::optional<StringGap> least_behind;
  double action = 0;                    ///< at action_fret on the centre line
  double saddle_z = 0;                  ///< of the line on the centre line, over the glue face
  double angle = 0;                     ///< of the neck; 0 where it is not given
  std::optional<BodyLine> body;         ///< where body_step is given
  std::optional<double> bridge;         ///< height.bridge
  std::optional<double> needed_bridge;  ///< with this angle and this action
  std::optional<double> needed_angle;   ///< with this bridge and this action
  std::optional<double> bridge_action;  ///< action at action_fret on the centre line with this bridge and this angle
  double plane_at_saddle = 0;  ///< plane of the fret tops on the centre line at the saddle, over the body's top
};

/// Nothing where the board file says too little: neither action nor bridge and body_step, no strings, no frets.
std::optional<HeightChain> height_chain(const PreparedBoard& ready);

/// x of the joint on the centre line: neck.body_at, else the joint fret, else the last fret.
double joint_place(const PreparedBoard& ready);

/// How far the relief lowers the fret tops at x.
double relief_at(const PreparedBoard& ready, double x);

/// The least room between the glue face and the body's top from the joint to the board's end; negative where the body
/// stands higher. Nothing without height.body_step, or where the board ends at the joint. The body's top begins
/// body_step under the glue face at the joint and falls away from it by the tangent of the neck's angle.
std::optional<double> end_room(const PreparedBoard& ready);

}  // namespace sagitta
