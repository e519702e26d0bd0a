#pragma once

/// The layout: everything of a board that can be drawn flat, in closed form. Lengths in mm, in the board's frame: nut
/// to the left, x toward the bridge, x = 0 where the nut line crosses the centre line, y across. The layout of a
/// left-handed board is the mirror in y of the right-handed one. "bass" and "treble" name the strings' sides whatever
/// the hand.

#include <array>
#include <optional>
#include <variant>
#include <vector>

#include "board/Board.hpp"
#include "board/FeatureId.hpp"
#include "board/Problem.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

/// One fret's place: the straight middle line of its slot.
struct FretLine {
  int fret = 0;                                     ///< 0 is the nut line
  double cents = 0;                                 ///< above the open string
  double bass_from_nut = 0, treble_from_nut = 0;    ///< along the centre line, from that string's own zero
  double bass_to_saddle = 0, treble_to_saddle = 0;  ///< scale less from_nut
  Point bass, treble;                               ///< where the line crosses the outer strings
  Point middle;                                     ///< where it crosses the centre line; y = 0
  Point bass_edge, treble_edge;                     ///< where it meets the finished edges
  bool on_tongue = false;                           ///< beyond the main board's last fret
  friend bool operator==(const FretLine&, const FretLine&) = default;
};

/// A fret slot. Its middle line runs from bass_end to treble_end: the finished edges for a through slot, the tips of
/// the round ends for a blind one.
struct Slot {
  int fret = 0;
  Point bass_end, treble_end;
  double width = 0;  ///< square to the middle line
  bool blind = false;
  int part = 0;                                 ///< of a slot that the heel end parts: counted from the bass side
  bool bass_open = false, treble_open = false;  ///< the heel end cuts it there: it has no round end
  bool on_tongue = false;
  friend bool operator==(const Slot&, const Slot&) = default;
};

/// The nut's seat: a slot between two lines parallel to the nut line, or a shelf, open to the nut end.
struct NutGround {
  Point direction;  ///< unit vector along the nut line, toward +y
  Point face;       ///< where the string-side face crosses the centre line
  Point back;       ///< where the far side crosses it; meaningless for a shelf
  bool shelf = false;
  double depth = 0;  ///< below `thickness` for a level floor, below the playing surface for one that follows it
  friend bool operator==(const NutGround&, const NutGround&) = default;
};

/// Where one piece of one inlay goes.
struct Marker {
  int inlay = 0;  ///< index into Board::inlays
  int fret = 0;
  Point centre;  ///< shifts included
  int part = 0;  ///< of a pair: 1 for the one at the greater y; else 0
  friend bool operator==(const Marker&, const Marker&) = default;
};

/// A flat-bottomed hole in a long edge's wall.
struct SideDot {
  int fret = 0;
  Point mouth;   ///< on the finished edge
  Point inward;  ///< unit vector, square to the edge
  double radius = 0;
  double depth = 0;  ///< from the finished edge
  int part = 0;      ///< of a pair: 1 for the one nearer to the bridge; else 0
  int side = 0;      ///< the edge that it lies in: 0 the bass edge, 1 the treble edge
  friend bool operator==(const SideDot&, const SideDot&) = default;
};

/// A flat-bottomed hole from below.
struct Pin {
  Point centre;
  double radius = 0, depth = 0;
  friend bool operator==(const Pin&, const Pin&) = default;
};

/// The tongue's own lines; the treble edge is the board's.
struct TonguePlace {
  LineSegment bass_side;  ///< from the main board's heel end to the tongue's end, corners left out of account
  double end = 0;         ///< x of its end, which is square to the centre line
  friend bool operator==(const TonguePlace&, const TonguePlace&) = default;
};

struct Layout {
  double bass_scale = 0, treble_scale = 0;
  double mean_scale = 0;
  std::vector<FretLine> frets;       ///< 0 .. last
  std::vector<LineSegment> strings;  ///< middle of each string, bass first, from x = 0 to the mean scale
  double spread_at_nut = 0;          ///< outer strings at x = 0
  double spread_slope = 0;           ///< change of the spread per mm of x

  /// How far the edge at negative y, and the one at positive y, lie from y = 0: at x = 0, and its change per mm of x.
  std::array<double, 2> edge_at_nut{}, edge_slope{};
  double half_width_at_nut = 0;  ///< at x = 0, square to the centre line: half of both together
  double half_width_slope = 0;   ///< change of the half width per mm of x
  double nut_end = 0;            ///< x of the nut end on the centre line (<= 0)
  double heel_end = 0;           ///< x of the heel end on the centre line
  Point nut_direction;           ///< unit vector along the nut line, toward +y
  Loop outline;                  ///< the finished board from above, counter-clockwise
  /// Ends of the two long edges, so that edges[0] is at negative y; each from the nut end to where its heel corner
  /// begins.
  LineSegment edges[2];

  std::vector<Slot> slots;  ///< in order of x; slot zero first when the board has a zero fret
  std::optional<NutGround> nut;
  std::optional<TonguePlace> tongue;
  std::vector<Marker> markers;
  std::vector<SideDot> side_dots;
  std::vector<Pin> pins;
  std::optional<double> fall_start;  ///< x of the line where the fall-away begins
  double fall_slope = 0;             ///< mm of fall per mm of x beyond fall_start

  Box blank;  ///< the blank from above
  double blank_thickness = 0;
  Box strip;  ///< the rectangle that the radius is cut over: the outline's box, 3 mm larger all round

  /// Distance of an edge from y = 0, across: side 0 at negative y, 1 at positive y.
  double edge(int side, double x) const {
    const auto i = static_cast<std::size_t>(side);
    return edge_at_nut[i] + edge_slope[i] * x;
  }
  double half_width(double x) const { return half_width_at_nut + half_width_slope * x; }
  double spread(double x) const { return spread_at_nut + spread_slope * x; }
};

FeatureId id_of(const Slot& slot);
FeatureId id_of(const Marker& marker);
FeatureId id_of(const SideDot& dot);

/// Positions for the board, or every fault that keeps it from being drawn: frets out of order, slots that overlap or
/// meet an end, strings outside the edges, heel arcs that do not exist, a blank that does not hold the board.
/// The board must have passed the reader: single values are in range and the forms are complete.
std::variant<Layout, Faults> lay_out(const Board& board);

/// Cents of fret 0 .. frets above the open string: from `cents`, else 1200 n / steps_per_octave.
std::vector<double> fret_cents(const Scale& scale);

/// Distance of a fret from the nut on a scale of the given length: length (1 - 2^(-cents/1200)).
/// Source: equal division of the octave, as in any acoustics handbook.
double fret_distance(double length, double cents);

/// slots.depth, with its default resolved.
double slot_depth(const Board& board);
/// board.behind_nut, with its default resolved.
double behind_nut(const Board& board);
/// Whether the order of work begins with milling the blank flat.
bool has_thickness(const Board& board);
/// work.thickness_to, with its default resolved.
double thickness_to(const Board& board);
/// Height of the wood's top until the radius is cut: thickness_to where the blank is milled to it first, else the
/// blank's.
double raw_top(const Board& board, const Layout& layout);
/// Width of the ledge that binding and lines need, square to the edge.
double ledge_width(const Binding& binding);
/// The radius that pockets and pieces are cut with: the larger of the pocket-detail cutter's and the piece cutter's
/// (measured_cut / 2; diameter + runout where not measured); a clearing cutter counts where no detail cutter is named.
/// 0 when no such cutter is named.
double inlay_cutter_radius(const Board& board);

}  // namespace sagitta
