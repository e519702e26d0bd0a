#pragma once

/// The Board: every decision about one fretboard, as the builder wrote it. A plain value; lengths in mm, angles in
/// degrees where the name says so. An optional that is empty means "not given": Layout resolves the defaults that
/// depend on other keys. The keys, their units, ranges and defaults stand in Fields.hpp.

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace sagitta {

/// A length at each of two places: the same at both, or one for each.
struct LengthPair {
  double first = 0, second = 0;
  LengthPair() = default;
  LengthPair(double both) : first(both), second(both) {}
  LengthPair(double at_first, double at_second) : first(at_first), second(at_second) {}
  bool equal() const { return first == second; }
  double sum() const { return first + second; }
  friend bool operator==(const LengthPair&, const LengthPair&) = default;
};

enum class Units { mm, inch };
enum class Hand { right, left };

struct Scale {
  std::optional<double> length;        ///< one scale for all strings
  std::optional<double> bass, treble;  ///< or one for each outer string
  int square_fret = 0;                 ///< fret that stands square to the centre line; 0 = the nut
  int frets = 0;
  std::optional<int> steps_per_octave;  ///< 12 when neither this nor cents is given
  std::vector<double> cents;            ///< one a fret, rising
  bool zero_fret = false;
  friend bool operator==(const Scale&, const Scale&) = default;
};

enum class StringSpacing { equal_centres, equal_gaps };

struct Strings {
  int count = 0;
  double nut_spread = 0;     ///< centre to centre of the outer strings at x = 0
  double saddle_spread = 0;  ///< the same at the mean scale length
  StringSpacing spacing = StringSpacing::equal_centres;
  std::vector<double> gauges;        ///< bass first
  int course = 1;                    ///< strings in a course
  std::optional<double> course_gap;  ///< centre to centre inside a course
  friend bool operator==(const Strings&, const Strings&) = default;
};

enum class Heel { square, arc, hollow, fret, slant, drawn };

struct Shape {
  double thickness = 0;
  std::optional<LengthPair> edge_margin;              ///< bass, treble
  std::optional<LengthPair> nut_margin, heel_margin;  ///< bass, treble
  std::optional<double> nut_width, heel_width;
  std::optional<std::array<double, 2>> width_at_fret;  ///< a fret and the width there
  std::optional<double> behind_nut;
  double past_last_fret = 10;
  Heel heel = Heel::square;
  std::optional<double> heel_arc_radius;
  std::optional<double> heel_angle;  ///< degrees, counter-clockwise from above; 0 is square
  std::string heel_file;
  bool ends_cut_slots = false;
  double corner_radius = 0;
  friend bool operator==(const Shape&, const Shape&) = default;
};

enum class Profile { flat, single, compound, string_line, even_edge };
enum class HeelAt { heel, last_fret };

struct SurfaceSpec {
  Profile profile = Profile::flat;
  std::optional<double> radius_at_nut, radius_at_heel;
  HeelAt heel_at = HeelAt::heel;
  std::optional<int> fall_from_fret;
  std::optional<double> fall;
  friend bool operator==(const SurfaceSpec&, const SurfaceSpec&) = default;
};

/// A part of the board beyond the body end on the treble side, with frets of its own.
struct Tongue {
  int frets = 0;    ///< beyond scale.frets
  int strings = 0;  ///< from the treble
  std::optional<double> margin, past_last_fret;
  double corner_radius = 0;
  friend bool operator==(const Tongue&, const Tongue&) = default;
};

enum class NutSeat { none, slot, shelf };
enum class NutFloor { level, arc };

struct Nut {
  NutSeat seat = NutSeat::none;
  double width = 3.2;
  double depth = 3.2;
  double compensation = 0;
  double distance = 1;
  NutFloor floor = NutFloor::level;
  friend bool operator==(const Nut&, const Nut&) = default;
};

struct Wire {
  double tang_depth = 1.7;
  double tang_width = 0.51;
  double crown_width = 2.4;
  double crown_height = 1.2;
  double overhang = 2;
  std::optional<double> barb_width;  ///< tang_width when not given
  double end_bevel_degrees = 30;
  friend bool operator==(const Wire&, const Wire&) = default;
};

enum class SlotFloor { arc, level };
enum class SlotEnds { through, blind };
enum class SlotCut { all, lines, none };

struct Slots {
  double width = 0.584;
  std::optional<double> depth;  ///< wire.tang_depth + 0.35 when not given; 1.5 for lines
  SlotFloor floor = SlotFloor::arc;
  SlotEnds ends = SlotEnds::through;
  double edge_left = 1.5;
  std::optional<SlotCut> cut;  ///< when not given: all, or none on a board without frets
  std::string line_material = "maple";
  std::optional<double> line_thickness;  ///< width when not given
  friend bool operator==(const Slots&, const Slots&) = default;
};

/// Troughs between frets. One depth a space, linear in x from the slot of `from_fret` to that of `to_fret`.
struct Scallop {
  int from_fret = 0, to_fret = 0;
  LengthPair depth;
  double land = 1.5;  ///< left flat on each side of a slot's middle, along x
  friend bool operator==(const Scallop&, const Scallop&) = default;
};

enum class EdgeStage { hand, machine };

/// What is done to the two long edges of the playing surface: a roll or a bevel.
struct Edges {
  double roll = 0;                  ///< radius
  double bevel = 0;                 ///< width, across, at the playing arc
  double bevel_angle_degrees = 30;  ///< to the upright side
  EdgeStage stage = EdgeStage::hand;
  friend bool operator==(const Edges&, const Edges&) = default;
};

enum class InlayShape { dot, block, trapezoid, diamond, oval, artwork };

/// How large artwork is in each of its spaces.
enum class InlaySizes { one, by_space };

struct Inlay {
  InlayShape shape = InlayShape::dot;
  std::vector<int> frets, double_frets;
  std::optional<double> spread;  ///< half the board's width there when not given
  double shift_along = 0, shift_across = 0;
  double turn_degrees = 0;  ///< counter-clockwise from above
  double diameter = 6;
  std::optional<double> along, across;
  std::optional<double> across_nut, across_heel;
  InlaySizes sizes = InlaySizes::one;
  std::optional<double> edge_left;  ///< artwork ends so far from edge or binding; runs out over the edge when not given
  std::string file;
  std::map<std::string, std::string> colours;  ///< fill "#rrggbb" -> material
  double depth = 0;
  std::optional<double> piece_thickness;  ///< depth + 0.2 when not given
  double clearance = 0.05;
  std::string material = "shell";
  friend bool operator==(const Inlay&, const Inlay&) = default;
};

enum class DotEdge { bass, treble, both };
enum class DotIn { wood, binding };

struct SideDots {
  std::vector<int> frets, double_frets;
  double spread = 4;
  double diameter = 2;
  double depth = 3;
  DotEdge edge = DotEdge::bass;
  DotIn in = DotIn::wood;
  friend bool operator==(const SideDots&, const SideDots&) = default;
};

struct Binding {
  double width = 0;
  double height = 0;          ///< 0 = all the way
  std::vector<double> lines;  ///< thicknesses, from the binding inward
  std::vector<std::string> line_materials;
  friend bool operator==(const Binding&, const Binding&) = default;
};

struct Pins {
  double diameter = 2;
  double depth = 2.5;
  std::vector<std::array<double, 2>> at;  ///< x, y in the board's frame
  friend bool operator==(const Pins&, const Pins&) = default;
};

enum class CutFrom { top, below };
enum class CutShape { dot, block, oval, drawn };

/// A cut of the builder's own, right through or to a depth.
struct Cut {
  std::string name;
  CutFrom from = CutFrom::top;
  CutShape shape = CutShape::dot;
  std::optional<double> diameter, along, across;
  std::string file;
  std::array<double, 2> at{};  ///< middle of the shape, in the board's frame
  double turn_degrees = 0;     ///< counter-clockwise from above
  double depth = 0;            ///< infinite: right through
  friend bool operator==(const Cut&, const Cut&) = default;
};

enum class Grain { quarter, flat };

struct Blank {
  std::optional<double> length, width, thickness;  ///< as measured
  std::string material = "ebony";
  Grain grain = Grain::flat;
  std::optional<std::array<double, 2>> at;  ///< the board's x = 0 point from the blank's lower left corner
  friend bool operator==(const Blank&, const Blank&) = default;
};

enum class Operation { pockets, inlay, radius, slots, outline, thickness };

enum class Zero { nut, corner, centre };
enum class ZZero { glue_face, blank_top, bed };

struct Setup {
  std::string name;
  std::vector<Operation> operations;
  Zero zero = Zero::nut;
  ZZero z_zero = ZZero::glue_face;
  double tape = 0;
  double reclamp_error = 0.2;
  friend bool operator==(const Setup&, const Setup&) = default;
};

enum class CutterUse { pocket_clear, pocket_detail, piece, radius, slot, outline, nut };
enum class CutterShape { flat, ball };

struct Cutter {
  std::string name;
  std::vector<CutterUse> use;
  CutterShape shape = CutterShape::flat;
  double diameter = 0;
  double cutting_length = 0;
  int flutes = 2;
  double runout = 0;
  std::optional<double> measured_cut;  ///< diameter + runout when not given
  std::optional<double> feed, rpm, pass_depth;
  friend bool operator==(const Cutter&, const Cutter&) = default;
};

enum class Pattern { along, none };
enum class SheetZero { corner, centre, first_piece };
enum class SheetHold { tape, tabs, skin };
enum class SheetFace { up, mirrored };

struct Sheet {
  std::string material;
  double length = 0, width = 0, thickness = 0;
  Pattern pattern = Pattern::none;
  SheetZero zero = SheetZero::corner;
  double margin = 6;
  double clamp = 15;  ///< at each end
  SheetHold hold = SheetHold::tape;
  double skin = 0.3;
  SheetFace face = SheetFace::up;
  friend bool operator==(const Sheet&, const Sheet&) = default;
};

enum class MaterialKind { wood, composite, shell, plastic, metal, bone };

struct Material {
  std::optional<double> density;  ///< kg/m3
  std::string colour;             ///< "#rrggbb"
  std::optional<MaterialKind> kind;
  std::optional<double> movement_radial, movement_tangential;  ///< % for each % of moisture
  std::optional<double> modulus;                               ///< GPa
  friend bool operator==(const Material&, const Material&) = default;
};

enum class NeckState { finished, rough };
enum class NeckJoint { none, bolted, glued, through };

struct Neck {
  NeckState state = NeckState::finished;
  double trim = 0;
  std::optional<double> nut_width, body_width, body_at;
  std::optional<int> joint_fret;
  std::optional<double> channel_width, channel_depth, channel_from, channel_to;
  std::optional<double> limit;
  std::string file;
  std::optional<double> depth_first, depth_twelfth;  ///< of the finished neck with the board, at frets 1 and 12
  std::optional<double> angle_degrees;               ///< positive: the headstock lies back
  NeckJoint joint = NeckJoint::none;
  double allowance = 0;  ///< the neck is made so much wider than the board, each side
  std::optional<std::array<double, 3>> file_nut, file_heel;  ///< points of the centre line in the file's frame
  friend bool operator==(const Neck&, const Neck&) = default;
};

/// What decides how high the strings are.
struct Heights {
  std::optional<LengthPair> nut;     ///< string over the plane of the fret tops at x = 0: bass, treble
  std::optional<LengthPair> action;  ///< under the outer strings at action_fret
  int action_fret = 12;
  double relief = 0.15;
  int relief_fret = 7;
  std::optional<double> bridge;     ///< top of the saddle over the body's top, on the centre line
  std::optional<double> body_step;  ///< body's top below the glue face at the joint; negative: above
  friend bool operator==(const Heights&, const Heights&) = default;
};

/// What was measured on the wood; empty: not measured.
struct Measured {
  std::vector<double> slots;  ///< x of each
  std::optional<double> blank_thickness, tape, slot_width;
  std::map<std::string, double> pocket_depths;    ///< by the piece's name
  std::map<std::string, double> piece_thickness;  ///< by material
  std::vector<std::array<double, 2>> widths;      ///< x, width
  std::vector<std::array<double, 3>> thickness;   ///< x, y, thickness
  std::vector<Operation> done;
  std::vector<std::array<double, 3>> chips;  ///< x, y, diameter
  std::string serial;
  friend bool operator==(const Measured&, const Measured&) = default;
};

struct Note {
  std::string text;
  std::string finding;  ///< its name, or empty
  std::string by;
  friend bool operator==(const Note&, const Note&) = default;
};

struct Board {
  int format = 1;
  std::string name;
  Units units = Units::mm;
  Hand hand = Hand::right;
  std::string base;    ///< as written; reading has already merged it in
  std::string folder;  ///< folder that the file's relative paths start from; not a key

  Scale scale;
  Strings strings;
  Shape board;
  std::optional<Tongue> tongue;
  SurfaceSpec surface;
  Nut nut;
  Wire wire;
  Slots slots;
  std::optional<Scallop> scallop;
  std::optional<Edges> edges;
  std::vector<Inlay> inlays;
  std::optional<SideDots> side_dots;
  std::optional<Binding> binding;
  std::optional<Pins> pins;
  std::vector<Cut> cuts;
  Blank blank;
  double sanding = 0;  ///< finish.sanding
  std::vector<Operation> order{Operation::pockets, Operation::inlay, Operation::radius, Operation::slots,
                               Operation::outline};
  std::optional<double> thickness_to;  ///< work.thickness_to
  std::vector<Setup> setups;
  std::vector<Cutter> cutters;
  std::vector<Sheet> sheets;
  std::map<std::string, Material> materials;
  std::optional<Neck> neck;
  std::optional<Heights> height;
  std::map<std::string, double> limits;  ///< by the finding's name; where it is a length, in `units` (see to_mm)
  Measured measured;
  std::vector<Note> notes;

  friend bool operator==(const Board&, const Board&) = default;
};

}  // namespace sagitta
