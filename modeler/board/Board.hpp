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
  std::vector<double> gauges;  ///< bass first
  friend bool operator==(const Strings&, const Strings&) = default;
};

enum class Heel { square, arc, hollow, fret };

struct Shape {
  double thickness = 0;
  std::optional<double> edge_margin;
  std::optional<double> nut_margin, heel_margin;
  std::optional<double> nut_width, heel_width;
  std::optional<double> behind_nut;
  double past_last_fret = 10;
  Heel heel = Heel::square;
  std::optional<double> heel_arc_radius;
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

enum class NutSeat { none, slot, shelf };

struct Nut {
  NutSeat seat = NutSeat::none;
  double width = 3.2;
  double depth = 3.2;
  double compensation = 0;
  double distance = 1;
  friend bool operator==(const Nut&, const Nut&) = default;
};

struct Wire {
  double tang_depth = 1.7;
  double tang_width = 0.51;
  double crown_width = 2.4;
  double crown_height = 1.2;
  double overhang = 2;
  friend bool operator==(const Wire&, const Wire&) = default;
};

enum class SlotFloor { arc, level };
enum class SlotEnds { through, blind };

struct Slots {
  double width = 0.584;
  std::optional<double> depth;  ///< wire.tang_depth + 0.35 when not given
  SlotFloor floor = SlotFloor::arc;
  SlotEnds ends = SlotEnds::through;
  double edge_left = 1.5;
  friend bool operator==(const Slots&, const Slots&) = default;
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

struct SideDots {
  std::vector<int> frets, double_frets;
  double spread = 4;
  double diameter = 2;
  double depth = 3;
  friend bool operator==(const SideDots&, const SideDots&) = default;
};

struct Binding {
  double width = 0;
  double height = 0;  ///< 0 = all the way
  friend bool operator==(const Binding&, const Binding&) = default;
};

struct Pins {
  double diameter = 2;
  double depth = 2.5;
  std::vector<std::array<double, 2>> at;  ///< x, y in the board's frame
  friend bool operator==(const Pins&, const Pins&) = default;
};

struct Blank {
  std::optional<double> length, width, thickness;  ///< as measured
  std::string material = "ebony";
  std::optional<std::array<double, 2>> at;  ///< the board's x = 0 point from the blank's lower left corner
  friend bool operator==(const Blank&, const Blank&) = default;
};

enum class Operation { pockets, inlay, radius, slots, outline };

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

struct Sheet {
  std::string material;
  double length = 0, width = 0, thickness = 0;
  Pattern pattern = Pattern::none;
  friend bool operator==(const Sheet&, const Sheet&) = default;
};

enum class MaterialKind { wood, composite, shell, plastic, metal, bone };

struct Material {
  std::optional<double> density;  ///< kg/m3
  std::string colour;             ///< "#rrggbb"
  std::optional<MaterialKind> kind;
  friend bool operator==(const Material&, const Material&) = default;
};

enum class NeckState { finished, rough };

struct Neck {
  NeckState state = NeckState::finished;
  double trim = 0;
  std::optional<double> nut_width, body_width, body_at;
  std::optional<int> joint_fret;
  std::optional<double> channel_width, channel_depth, channel_from, channel_to;
  std::optional<double> limit;
  std::string file;
  friend bool operator==(const Neck&, const Neck&) = default;
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
  SurfaceSpec surface;
  Nut nut;
  Wire wire;
  Slots slots;
  std::vector<Inlay> inlays;
  std::optional<SideDots> side_dots;
  std::optional<Binding> binding;
  std::optional<Pins> pins;
  Blank blank;
  double sanding = 0;  ///< finish.sanding
  std::vector<Operation> order{Operation::pockets, Operation::inlay, Operation::radius, Operation::slots,
                               Operation::outline};
  std::vector<Setup> setups;
  std::vector<Cutter> cutters;
  std::vector<Sheet> sheets;
  std::map<std::string, Material> materials;
  std::optional<Neck> neck;
  std::map<std::string, double> limits;  ///< by the finding's name; where it is a length, in `units` (see to_mm)
  std::vector<double> measured_slots;    ///< measured.slots

  friend bool operator==(const Board&, const Board&) = default;
};

}  // namespace sagitta
