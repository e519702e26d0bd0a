#include "board/Fields.hpp"

namespace sagitta {
namespace {

constexpr Choice units_choices[] = {{"mm", ""}, {"in", "inch"}};
constexpr Choice hand_choices[] = {{"right", ""}, {"left", ""}};
constexpr Choice spacing_choices[] = {{"equal-centres", "equal-centers"}, {"equal-gaps", ""}};
constexpr Choice heel_choices[] = {{"square", ""}, {"arc", ""},   {"hollow", ""},
                                   {"fret", ""},   {"slant", ""}, {"drawn", ""}};
constexpr Choice profile_choices[] = {
    {"flat", ""}, {"single", ""}, {"compound", ""}, {"string-line", ""}, {"even-edge", ""}};
constexpr Choice heel_at_choices[] = {{"heel", ""}, {"last-fret", ""}};
constexpr Choice seat_choices[] = {{"none", ""}, {"slot", ""}, {"shelf", ""}};
constexpr Choice nut_floor_choices[] = {{"level", ""}, {"arc", ""}};
constexpr Choice cut_choices[] = {{"all", ""}, {"lines", ""}, {"none", ""}};
constexpr Choice edge_stage_choices[] = {{"hand", ""}, {"machine", ""}};
constexpr Choice dot_edge_choices[] = {{"bass", ""}, {"treble", ""}, {"both", ""}};
constexpr Choice dot_in_choices[] = {{"wood", ""}, {"binding", ""}};
constexpr Choice from_choices[] = {{"top", ""}, {"below", ""}};
constexpr Choice cut_shape_choices[] = {{"dot", ""}, {"block", ""}, {"oval", ""}, {"drawn", ""}};
constexpr Choice grain_choices[] = {{"quarter", ""}, {"flat", ""}};
constexpr Choice sheet_zero_choices[] = {{"corner", ""}, {"centre", "center"}, {"first-piece", ""}};
constexpr Choice hold_choices[] = {{"tape", ""}, {"tabs", ""}, {"skin", ""}};
constexpr Choice face_choices[] = {{"up", ""}, {"mirrored", ""}};
constexpr Choice joint_choices[] = {{"none", ""}, {"bolted", ""}, {"glued", ""}, {"through", ""}};
constexpr Choice floor_choices[] = {{"arc", ""}, {"level", ""}};
constexpr Choice ends_choices[] = {{"through", ""}, {"blind", ""}};
constexpr Choice inlay_choices[] = {{"dot", ""},     {"block", ""}, {"trapezoid", ""},
                                    {"diamond", ""}, {"oval", ""},  {"artwork", ""}};
constexpr Choice sizes_choices[] = {{"one", ""}, {"by-space", ""}};
constexpr Choice operation_choices[] = {{"pockets", ""}, {"inlay", ""},   {"radius", ""},
                                        {"slots", ""},   {"outline", ""}, {"thickness", ""}};
constexpr Choice zero_choices[] = {{"nut", ""}, {"corner", ""}, {"centre", "center"}};
constexpr Choice z_zero_choices[] = {{"glue-face", ""}, {"blank-top", ""}, {"bed", ""}};
constexpr Choice use_choices[] = {{"pocket-clear", ""}, {"pocket-detail", ""}, {"piece", ""}, {"radius", ""},
                                  {"slot", ""},         {"outline", ""},       {"nut", ""}};
constexpr Choice cutter_choices[] = {{"flat", ""}, {"ball", ""}};
constexpr Choice pattern_choices[] = {{"along", ""}, {"none", ""}};
constexpr Choice kind_choices[] = {{"wood", ""},    {"composite", ""}, {"shell", ""},
                                   {"plastic", ""}, {"metal", ""},     {"bone", ""}};
constexpr Choice state_choices[] = {{"finished", ""}, {"rough", ""}};

using Words = std::string_view;

constexpr Field plain(Words table, Words key, Kind kind, Words fallback, Words help, Access access) {
  Field field;
  field.table = table;
  field.key = key;
  field.kind = kind;
  field.fallback = fallback;
  field.help = help;
  field.access = access;
  return field;
}
constexpr Field ranged(Words table, Words key, Kind kind, Range range, Words fallback, Words help, Access access) {
  Field field = plain(table, key, kind, fallback, help, access);
  field.range = range;
  return field;
}
constexpr Field length(Words table, Words key, Range range, Words fallback, Words help, Access access) {
  return ranged(table, key, Kind::length, range, fallback, help, access);
}
constexpr Field integer(Words table, Words key, Range range, Words fallback, Words help, Access access) {
  return ranged(table, key, Kind::integer, range, fallback, help, access);
}
constexpr Field choice(Words table, Words key, std::span<const Choice> choices, Words fallback, Words help,
                       Access access) {
  Field field = plain(table, key, Kind::choice, fallback, help, access);
  field.choices = choices;
  return field;
}
constexpr Field needed(Field field) {
  field.need = Need::yes;
  return field;
}
constexpr Field form(Field field) {
  field.need = Need::form;
  return field;
}
/// Used only with one of the values, and then needed.
constexpr Field needed_with(Words key, Words values, Field field) {
  field.use = {key, values, values};
  return field;
}
/// Used only with one of the values.
constexpr Field used_with(Words key, Words values, Field field) {
  field.use = {key, values, {}};
  return field;
}
/// Used with these values; needed with fewer of them.
constexpr Field used_too(Field field, Words values) {
  field.use.values = values;
  return field;
}
constexpr Field in_unit(Words unit, Field field) {
  field.unit = unit;
  return field;
}

constexpr Range fret_range{1, 96};
constexpr Range fret_or_nut{0, 96};
constexpr Range height_range{-100, 200};
constexpr Range width_range{5, 600};
constexpr Range margin_range{0.2, 50};
constexpr Range radius_range{5, 1e8};
constexpr Range place_range{-1000, 5000};

constexpr Field table_of_fields[] = {
    needed(integer("", "format", {1, 1}, "", "version of this file format", at<&Board::format>)),
    plain("", "name", Kind::text, "", "name of the board, as it stands on drawings and in files", at<&Board::name>),
    choice("", "units", units_choices, "mm", "unit of bare numbers in this file", at<&Board::units>),
    choice("", "hand", hand_choices, "right", "player's hand; left is the mirror image", at<&Board::hand>),
    plain("", "base", Kind::text, "", "board file to start from; this file's keys override it", at<&Board::base>),

    form(length("scale", "length", {100, 3000}, "", "scale length, nut to saddle", at<&Board::scale, &Scale::length>)),
    form(length("scale", "bass", {100, 3000}, "", "scale length of the bass string on a multi-scale board",
                at<&Board::scale, &Scale::bass>)),
    form(length("scale", "treble", {100, 3000}, "", "scale length of the treble string on a multi-scale board",
                at<&Board::scale, &Scale::treble>)),
    form(integer("scale", "square_fret", {0, 96}, "0", "fret that stands square to the centre line; 0 is the nut",
                 at<&Board::scale, &Scale::square_fret>)),
    needed(integer("scale", "frets", fret_or_nut, "", "number of frets; 0 is a board without frets",
                   at<&Board::scale, &Scale::frets>)),
    form(integer("scale", "steps_per_octave", {1, 1200}, "12", "equal steps in an octave",
                 at<&Board::scale, &Scale::steps_per_octave>)),
    form(in_unit("cents", ranged("scale", "cents", Kind::numbers, {1, 120000}, "",
                                 "cents of each fret above the open string, rising, at least one a fret",
                                 at<&Board::scale, &Scale::cents>))),
    plain("scale", "zero_fret", Kind::yes_no, "false", "a fret at x = 0, with the nut standing behind it",
          at<&Board::scale, &Scale::zero_fret>),

    needed(integer("strings", "count", {1, 18}, "", "number of strings", at<&Board::strings, &Strings::count>)),
    needed(length("strings", "nut_spread", {5, 500}, "", "centre to centre of the outer strings at the nut",
                  at<&Board::strings, &Strings::nut_spread>)),
    needed(length("strings", "saddle_spread", {5, 500}, "", "centre to centre of the outer strings at the saddle",
                  at<&Board::strings, &Strings::saddle_spread>)),
    choice("strings", "spacing", spacing_choices, "equal-centres",
           "what is equal between strings: centres, or the gaps left", at<&Board::strings, &Strings::spacing>),
    used_too(needed_with("spacing", "equal-gaps",
                         ranged("strings", "gauges", Kind::lengths, {0.1, 10}, "",
                                "diameter of each string, bass first", at<&Board::strings, &Strings::gauges>)),
             "equal-centres equal-gaps"),
    integer("strings", "course", {1, 6}, "1", "strings in a course: 2 on a twelve-string or a mandolin",
            at<&Board::strings, &Strings::course>),
    length("strings", "course_gap", {0.5, 20}, "required with a course of 2 or more",
           "centre to centre of the strings inside a course", at<&Board::strings, &Strings::course_gap>),

    needed(length("board", "thickness", {1, 60}, "", "finished thickness at the centre line",
                  at<&Board::board, &Shape::thickness>)),
    form(ranged("board", "edge_margin", Kind::pair, margin_range, "",
                "outer string to edge, at both ends; [bass, treble] where they differ",
                at<&Board::board, &Shape::edge_margin>)),
    form(ranged("board", "nut_margin", Kind::pair, margin_range, "",
                "outer string to edge at the nut; [bass, treble] where they differ",
                at<&Board::board, &Shape::nut_margin>)),
    form(ranged("board", "heel_margin", Kind::pair, margin_range, "",
                "outer string to edge at the heel end; [bass, treble] where they differ",
                at<&Board::board, &Shape::heel_margin>)),
    form(length("board", "nut_width", width_range, "", "width at x = 0, over the binding",
                at<&Board::board, &Shape::nut_width>)),
    form(length("board", "heel_width", width_range, "", "width at the heel end, over the binding",
                at<&Board::board, &Shape::heel_width>)),
    form(ranged("board", "width_at_fret", Kind::fret_width, width_range, "",
                "[fret, width]: width over the binding where that fret crosses the centre line",
                at<&Board::board, &Shape::width_at_fret>)),
    length("board", "behind_nut", {0.1, 150, true}, "0 without a nut seat, else nut.width + 3 mm",
           "wood behind x = 0, along the centre line", at<&Board::board, &Shape::behind_nut>),
    length("board", "past_last_fret", {-60, 3000}, "10 mm",
           "last slot's middle to the heel end, along the centre line; 0.1 to 300 mm, less with ends_cut_slots, from x "
           "= 0 "
           "without frets",
           at<&Board::board, &Shape::past_last_fret>),
    choice("board", "heel", heel_choices, "square",
           "shape of the heel end: square, bulging arc, hollow arc, along the last fret, slanted, drawn",
           at<&Board::board, &Shape::heel>),
    needed_with("heel", "arc hollow",
                length("board", "heel_arc_radius", {1, 1e6}, "", "radius of the heel end's arc",
                       at<&Board::board, &Shape::heel_arc_radius>)),
    needed_with("heel", "slant",
                ranged("board", "heel_angle", Kind::angle, {-60, 60}, "",
                       "turn of the heel end, counter-clockwise from above; 0 is square",
                       at<&Board::board, &Shape::heel_angle>)),
    needed_with("heel", "drawn",
                plain("board", "heel_file", Kind::text, "", "SVG or DXF file with the heel end's line in true size",
                      at<&Board::board, &Shape::heel_file>)),
    used_with("heel", "hollow slant drawn",
              plain("board", "ends_cut_slots", Kind::yes_no, "false", "the heel end may cut slots",
                    at<&Board::board, &Shape::ends_cut_slots>)),
    length("board", "corner_radius", {0.1, 300, true}, "0", "rounding of the two heel corners",
           at<&Board::board, &Shape::corner_radius>),

    needed(integer("tongue", "frets", fret_range, "", "frets on the tongue, beyond scale.frets",
                   at<&Board::tongue, &Tongue::frets>)),
    needed(integer("tongue", "strings", {1, 18}, "", "strings over the tongue, counted from the treble",
                   at<&Board::tongue, &Tongue::strings>)),
    length("tongue", "margin", margin_range, "as at the treble edge", "outermost string of the tongue to its bass side",
           at<&Board::tongue, &Tongue::margin>),
    length("tongue", "past_last_fret", {0.1, 300}, "half the next space", "last slot of the tongue to its end",
           at<&Board::tongue, &Tongue::past_last_fret>),
    length("tongue", "corner_radius", {0.1, 300, true}, "0", "rounding of the tongue's two corners",
           at<&Board::tongue, &Tongue::corner_radius>),

    needed(choice("surface", "profile", profile_choices, "", "law of the playing surface",
                  at<&Board::surface, &SurfaceSpec::profile>)),
    needed_with("profile", "single compound string-line even-edge",
                length("surface", "radius_at_nut", radius_range, "", "radius of the playing surface at the nut",
                       at<&Board::surface, &SurfaceSpec::radius_at_nut>)),
    needed_with("profile", "compound",
                length("surface", "radius_at_heel", radius_range, "", "radius at the place that heel_at names",
                       at<&Board::surface, &SurfaceSpec::radius_at_heel>)),
    used_with(
        "profile", "compound",
        choice("surface", "heel_at", heel_at_choices, "heel", "where radius_at_heel is reached: heel end or last fret",
               at<&Board::surface, &SurfaceSpec::heel_at>)),
    form(integer("surface", "fall_from_fret", fret_range, "", "fret from which the surface falls away",
                 at<&Board::surface, &SurfaceSpec::fall_from_fret>)),
    form(length("surface", "fall", {0.01, 20}, "", "how far the centre line has fallen at the heel end",
                at<&Board::surface, &SurfaceSpec::fall>)),

    choice("nut", "seat", seat_choices, "none", "where the nut sits: in a slot, on a shelf, or not on the board",
           at<&Board::nut, &Nut::seat>),
    used_with("seat", "slot shelf",
              length("nut", "width", {0.5, 50}, "3.2 mm", "thickness of the nut, along the board",
                     at<&Board::nut, &Nut::width>)),
    used_with("seat", "slot shelf",
              length("nut", "depth", {0.2, 40}, "3.2 mm", "seat's floor below the top at the centre line",
                     at<&Board::nut, &Nut::depth>)),
    used_with("seat", "slot shelf",
              length("nut", "compensation", {0.01, 10, true}, "0", "how far the nut's face moves toward the bridge",
                     at<&Board::nut, &Nut::compensation>)),
    used_with("scale.zero_fret", "true",
              length("nut", "distance", {0.1, 50}, "1 mm", "nut's face behind the zero fret",
                     at<&Board::nut, &Nut::distance>)),
    used_with("seat", "slot shelf",
              choice("nut", "floor", nut_floor_choices, "level", "floor of the seat: level, or follows the surface",
                     at<&Board::nut, &Nut::floor>)),

    length("wire", "tang_depth", {0.3, 6}, "1.7 mm", "depth of the fret wire's tang",
           at<&Board::wire, &Wire::tang_depth>),
    length("wire", "tang_width", {0.1, 3}, "0.51 mm", "thickness of the tang without its barbs",
           at<&Board::wire, &Wire::tang_width>),
    length("wire", "crown_width", {0.5, 6}, "2.4 mm", "width of the crown", at<&Board::wire, &Wire::crown_width>),
    length("wire", "crown_height", {0.2, 4}, "1.2 mm", "height of the crown", at<&Board::wire, &Wire::crown_height>),
    length("wire", "overhang", {0.1, 20, true}, "2 mm", "wire left over each edge when it is cut to length",
           at<&Board::wire, &Wire::overhang>),
    length("wire", "barb_width", {0.1, 4}, "wire.tang_width", "width of the tang over its barbs",
           at<&Board::wire, &Wire::barb_width>),
    ranged("wire", "end_bevel", Kind::angle, {0, 80}, "30", "bevel of the fret ends, from upright",
           at<&Board::wire, &Wire::end_bevel_degrees>),

    length("slots", "width", {0.1, 5}, "0.584 mm", "width of a fret slot, square to it",
           at<&Board::slots, &Slots::width>),
    length("slots", "depth", {0.3, 20}, "wire.tang_depth + 0.35 mm", "depth of a fret slot from the finished surface",
           at<&Board::slots, &Slots::depth>),
    choice("slots", "floor", floor_choices, "arc", "floor of a slot: follows the surface, or level",
           at<&Board::slots, &Slots::floor>),
    choice("slots", "ends", ends_choices, "through", "slots run through the edges, or end blind before them",
           at<&Board::slots, &Slots::ends>),
    used_with("ends", "blind",
              length("slots", "edge_left", {0.05, 100}, "1.5 mm", "wood left between a blind slot's tip and the edge",
                     at<&Board::slots, &Slots::edge_left>)),
    choice("slots", "cut", cut_choices, "all, or none on a board without frets",
           "slots for wire, for strips of veneer as lines, or none", at<&Board::slots, &Slots::cut>),
    used_with("cut", "lines",
              plain("slots", "line_material", Kind::text, "maple", "material of the strips",
                    at<&Board::slots, &Slots::line_material>)),
    used_with("cut", "lines",
              length("slots", "line_thickness", {0.1, 5}, "slots.width", "thickness of the strips",
                     at<&Board::slots, &Slots::line_thickness>)),

    needed(integer("scallop", "from_fret", fret_or_nut, "", "slot from which spaces are scalloped; 0 is the nut",
                   at<&Board::scallop, &Scallop::from_fret>)),
    needed(integer("scallop", "to_fret", fret_range, "", "slot up to which spaces are scalloped",
                   at<&Board::scallop, &Scallop::to_fret>)),
    needed(ranged("scallop", "depth", Kind::pair, {0.01, 20}, "",
                  "depth in a space's middle; [at from_fret, at to_fret] where it changes",
                  at<&Board::scallop, &Scallop::depth>)),
    length("scallop", "land", {0.05, 20}, "1.5 mm", "left flat on each side of a slot's middle",
           at<&Board::scallop, &Scallop::land>),

    length("edges", "roll", {0.1, 50, true}, "0", "radius of the rolled edge", at<&Board::edges, &Edges::roll>),
    length("edges", "bevel", {0.1, 50, true}, "0", "width of the bevel, across, at the playing surface",
           at<&Board::edges, &Edges::bevel>),
    ranged("edges", "bevel_angle", Kind::angle, {1, 89}, "30", "angle of the bevel to the upright side",
           at<&Board::edges, &Edges::bevel_angle_degrees>),
    choice("edges", "stage", edge_stage_choices, "hand", "whether the edges are worked by hand or on the machine",
           at<&Board::edges, &Edges::stage>),

    needed(choice("inlays", "shape", inlay_choices, "", "shape of the inlay", at<&Inlay::shape>)),
    ranged("inlays", "frets", Kind::integers, fret_range, "",
           "fret spaces with one piece, on the centre line; this or double_frets", at<&Inlay::frets>),
    ranged("inlays", "double_frets", Kind::integers, fret_range, "", "fret spaces with a pair of pieces, across",
           at<&Inlay::double_frets>),
    length("inlays", "spread", {0.5, 500}, "half the board's width there",
           "centre to centre of a pair, across the board", at<&Inlay::spread>),
    length("inlays", "shift_along", place_range, "0", "moved toward the bridge", at<&Inlay::shift_along>),
    length("inlays", "shift_across", {-300, 300}, "0", "moved toward the treble side", at<&Inlay::shift_across>),
    ranged("inlays", "turn", Kind::angle, {-360, 360}, "0", "turned counter-clockwise, seen from above",
           at<&Inlay::turn_degrees>),
    used_with("shape", "dot",
              length("inlays", "diameter", {0.3, 150}, "6 mm", "diameter of the piece", at<&Inlay::diameter>)),
    used_too(needed_with("shape", "block diamond trapezoid oval",
                         length("inlays", "along", {0.3, 1000}, "",
                                "size of the piece along the board; artwork gives this or across", at<&Inlay::along>)),
             "block diamond trapezoid oval artwork"),
    used_too(needed_with("shape", "block diamond oval",
                         length("inlays", "across", {0.3, 500}, "",
                                "size of the piece across the board; artwork gives this or along", at<&Inlay::across>)),
             "block diamond oval artwork"),
    needed_with(
        "shape", "trapezoid",
        length("inlays", "across_nut", {0.3, 500}, "", "width of the end toward the nut", at<&Inlay::across_nut>)),
    needed_with(
        "shape", "trapezoid",
        length("inlays", "across_heel", {0.3, 500}, "", "width of the end toward the heel", at<&Inlay::across_heel>)),
    needed_with("shape", "artwork",
                plain("inlays", "file", Kind::text, "", "SVG or DXF file of the artwork", at<&Inlay::file>)),
    used_with("shape", "artwork",
              plain("inlays", "colours", Kind::colours, "",
                    "material of each fill colour, when the artwork has several", at<&Inlay::colours>)),
    used_with("shape", "artwork",
              choice("inlays", "sizes", sizes_choices, "one",
                     "artwork at several frets: at one size, or in proportion to each space, along or across being the "
                     "size at the first fret of the list",
                     at<&Inlay::sizes>)),
    used_with("shape", "artwork",
              length("inlays", "edge_left", {0.05, 100, true}, "artwork runs out over the edge",
                     "artwork is cut off so far from the finished edge, or from the binding", at<&Inlay::edge_left>)),
    needed(length("inlays", "depth", {0.05, 30}, "", "depth of the pocket from the finished top at the centre line",
                  at<&Inlay::depth>)),
    length("inlays", "piece_thickness", {0.1, 60}, "depth + 0.2 mm", "thickness of the piece",
           at<&Inlay::piece_thickness>),
    length("inlays", "clearance", {0.001, 5, true}, "0.05 mm", "gap between the piece and its pocket, all round",
           at<&Inlay::clearance>),
    plain("inlays", "material", Kind::text, "shell", "material of the piece", at<&Inlay::material>),

    ranged("side_dots", "frets", Kind::integers, fret_range, "", "fret spaces with one side dot; this or double_frets",
           at<&Board::side_dots, &SideDots::frets>),
    ranged("side_dots", "double_frets", Kind::integers, fret_range, "", "fret spaces with a pair along the edge",
           at<&Board::side_dots, &SideDots::double_frets>),
    length("side_dots", "spread", {0.5, 100}, "4 mm", "centre to centre of a pair",
           at<&Board::side_dots, &SideDots::spread>),
    length("side_dots", "diameter", {0.3, 20}, "2 mm", "diameter of the hole",
           at<&Board::side_dots, &SideDots::diameter>),
    length("side_dots", "depth", {0.3, 50}, "3 mm", "depth of the hole from the finished edge",
           at<&Board::side_dots, &SideDots::depth>),
    choice("side_dots", "edge", dot_edge_choices, "bass", "edge with the dots", at<&Board::side_dots, &SideDots::edge>),
    choice("side_dots", "in", dot_in_choices, "wood", "what the holes are drilled into",
           at<&Board::side_dots, &SideDots::in>),

    needed(length("binding", "width", {0.2, 20}, "", "thickness of the binding, square to the edge",
                  at<&Board::binding, &Binding::width>)),
    length("binding", "height", {0.2, 60, true}, "0",
           "height of the binding from the surface's edge down; 0 is all the way",
           at<&Board::binding, &Binding::height>),
    ranged("binding", "lines", Kind::lengths, {0.05, 10}, "",
           "thicknesses of the lines beside the binding, from it inward", at<&Board::binding, &Binding::lines>),
    plain("binding", "line_materials", Kind::texts, "", "material of each line",
          at<&Board::binding, &Binding::line_materials>),

    length("pins", "diameter", {0.5, 20}, "2 mm", "diameter of the locating pins' holes",
           at<&Board::pins, &Pins::diameter>),
    length("pins", "depth", {0.3, 60}, "2.5 mm", "depth of the holes from the glue face",
           at<&Board::pins, &Pins::depth>),
    needed(ranged("pins", "at", Kind::points, place_range, "", "places of the holes", at<&Board::pins, &Pins::at>)),

    needed(plain("cuts", "name", Kind::text, "", "name of the cut", at<&Cut::name>)),
    choice("cuts", "from", from_choices, "top", "side that it is cut from", at<&Cut::from>),
    needed(choice("cuts", "shape", cut_shape_choices, "", "shape of the cut", at<&Cut::shape>)),
    needed_with("shape", "dot", length("cuts", "diameter", {0.3, 150}, "", "diameter of the cut", at<&Cut::diameter>)),
    used_too(needed_with("shape", "block oval",
                         length("cuts", "along", {0.3, 3000}, "",
                                "size along the board; a drawing gives this or across", at<&Cut::along>)),
             "block oval drawn"),
    used_too(needed_with("shape", "block oval",
                         length("cuts", "across", {0.3, 1000}, "",
                                "size across the board; a drawing gives this or along", at<&Cut::across>)),
             "block oval drawn"),
    needed_with("shape", "drawn",
                plain("cuts", "file", Kind::text, "", "SVG or DXF file of the shape", at<&Cut::file>)),
    needed(ranged("cuts", "at", Kind::point, place_range, "", "middle of the shape", at<&Cut::at>)),
    ranged("cuts", "turn", Kind::angle, {-360, 360}, "0", "turned counter-clockwise, seen from above",
           at<&Cut::turn_degrees>),
    needed(ranged("cuts", "depth", Kind::depth, {0.05, 100}, "",
                  "from the finished top at the centre line, or from the glue face; or \"through\"", at<&Cut::depth>)),

    length("blank", "length", {50, 5000}, "the board's and 30 mm at each end", "length of the blank, as measured",
           at<&Board::blank, &Blank::length>),
    length("blank", "width", {10, 1000}, "the board's and 12 mm at each side", "width of the blank, as measured",
           at<&Board::blank, &Blank::width>),
    length("blank", "thickness", {1, 100}, "board.thickness + finish.sanding + 0.8 mm",
           "thickness of the blank, as measured", at<&Board::blank, &Blank::thickness>),
    plain("blank", "material", Kind::text, "ebony", "wood of the board", at<&Board::blank, &Blank::material>),
    choice("blank", "grain", grain_choices, "flat", "whether the blank is quarter-sawn or flat-sawn",
           at<&Board::blank, &Blank::grain>),
    ranged("blank", "at", Kind::point, place_range, "the board centred",
           "the board's x = 0 point, from the blank's lower left corner", at<&Board::blank, &Blank::at>),

    length("finish", "sanding", {0.01, 5, true}, "0", "what sanding will take off the top after machining",
           at<&Board::sanding>),

    [] {
      Field field = plain("work", "order", Kind::choices, "pockets, inlay, radius, slots, outline",
                          "order of the operations", at<&Board::order>);
      field.choices = operation_choices;
      return field;
    }(),
    length("work", "thickness_to", {1, 100}, "board.thickness + finish.sanding + 0.3 mm",
           "what the operation thickness mills the blank to", at<&Board::thickness_to>),

    plain("setups", "name", Kind::text, "", "name of the set-up", at<&Setup::name>),
    [] {
      Field field =
          plain("setups", "operations", Kind::choices, "", "operations done in this set-up", at<&Setup::operations>);
      field.choices = operation_choices;
      return field;
    }(),
    choice("setups", "zero", zero_choices, "nut", "where the machine's x and y are zero", at<&Setup::zero>),
    choice("setups", "z_zero", z_zero_choices, "glue-face", "where the machine's z is zero", at<&Setup::z_zero>),
    length("setups", "tape", {0.01, 10, true}, "0", "thickness of tape under the blank", at<&Setup::tape>),
    length("setups", "reclamp_error", {0.001, 10, true}, "0.2 mm", "how far off the blank may lie when clamped again",
           at<&Setup::reclamp_error>),

    needed(plain("cutters", "name", Kind::text, "", "name of the cutter", at<&Cutter::name>)),
    [] {
      Field field = needed(plain("cutters", "use", Kind::choices, "", "what the cutter is for", at<&Cutter::use>));
      field.choices = use_choices;
      return field;
    }(),
    choice("cutters", "shape", cutter_choices, "flat", "end of the cutter", at<&Cutter::shape>),
    needed(length("cutters", "diameter", {0.1, 200}, "", "nominal diameter", at<&Cutter::diameter>)),
    needed(
        length("cutters", "cutting_length", {0.3, 200}, "", "length of the cutting edge", at<&Cutter::cutting_length>)),
    integer("cutters", "flutes", {1, 12}, "2", "number of cutting edges", at<&Cutter::flutes>),
    length("cutters", "runout", {0.001, 1, true}, "0", "total runout measured at the spindle", at<&Cutter::runout>),
    length("cutters", "measured_cut", {0.1, 200}, "diameter + runout", "width of a test cut, as measured",
           at<&Cutter::measured_cut>),
    ranged("cutters", "feed", Kind::speed, {1, 100000}, "", "feed along the cut", at<&Cutter::feed>),
    in_unit("1/min", ranged("cutters", "rpm", Kind::number, {100, 200000}, "", "spindle speed", at<&Cutter::rpm>)),
    length("cutters", "pass_depth", {0.01, 100}, "", "depth of one pass", at<&Cutter::pass_depth>),

    needed(plain("sheets", "material", Kind::text, "", "material of the sheet", at<&Sheet::material>)),
    needed(length("sheets", "length", {5, 5000}, "", "length of the sheet", at<&Sheet::length>)),
    needed(length("sheets", "width", {5, 5000}, "", "width of the sheet", at<&Sheet::width>)),
    needed(length("sheets", "thickness", {0.1, 60}, "", "thickness of the sheet", at<&Sheet::thickness>)),
    choice("sheets", "pattern", pattern_choices, "none", "direction of grain or figure that pieces keep to",
           at<&Sheet::pattern>),
    choice("sheets", "zero", sheet_zero_choices, "corner", "where the machine's x and y are zero on the sheet",
           at<&Sheet::zero>),
    length("sheets", "margin", {0.1, 500, true}, "6 mm", "kept free along the sheet's edges", at<&Sheet::margin>),
    length("sheets", "clamp", {0.1, 500, true}, "15 mm", "kept free for clamps at each end", at<&Sheet::clamp>),
    choice("sheets", "hold", hold_choices, "tape", "what holds the pieces while they are cut", at<&Sheet::hold>),
    used_with("hold", "skin",
              length("sheets", "skin", {0.02, 10}, "0.3 mm", "thickness left under the pieces", at<&Sheet::skin>)),
    choice("sheets", "face", face_choices, "up", "which side of the pieces is up while they are cut", at<&Sheet::face>),

    in_unit("kg/m3", ranged("materials", "density", Kind::number, {10, 25000}, "", "density", at<&Material::density>)),
    plain("materials", "colour", Kind::colour, "", "colour in pictures and in STEP", at<&Material::colour>),
    choice("materials", "kind", kind_choices, "", "what sort of material it is", at<&Material::kind>),
    in_unit("%", ranged("materials", "movement_radial", Kind::number, {0, 2}, "",
                        "radial movement for each % of moisture", at<&Material::movement_radial>)),
    in_unit("%", ranged("materials", "movement_tangential", Kind::number, {0, 2}, "",
                        "tangential movement for each % of moisture", at<&Material::movement_tangential>)),
    in_unit("GPa", ranged("materials", "modulus", Kind::number, {0.1, 500}, "", "modulus of elasticity along the grain",
                          at<&Material::modulus>)),

    choice("neck", "state", state_choices, "finished", "whether the neck's sides are finished or still to be trimmed",
           at<&Board::neck, &Neck::state>),
    length("neck", "trim", {0.01, 50, true}, "0", "what trimming will take off each side",
           at<&Board::neck, &Neck::trim>),
    length("neck", "nut_width", width_range, "", "width of the neck at the nut", at<&Board::neck, &Neck::nut_width>),
    length("neck", "body_width", width_range, "", "width of the neck at body_at", at<&Board::neck, &Neck::body_width>),
    length("neck", "body_at", {10, 3000}, "", "x where body_width was measured", at<&Board::neck, &Neck::body_at>),
    integer("neck", "joint_fret", fret_range, "", "fret at the body joint", at<&Board::neck, &Neck::joint_fret>),
    length("neck", "channel_width", {0.5, 100}, "", "width of the rod channel", at<&Board::neck, &Neck::channel_width>),
    length("neck", "channel_depth", {0.3, 100}, "", "depth of the rod channel", at<&Board::neck, &Neck::channel_depth>),
    length("neck", "channel_from", place_range, "", "x where the rod channel begins",
           at<&Board::neck, &Neck::channel_from>),
    length("neck", "channel_to", place_range, "", "x where the rod channel ends", at<&Board::neck, &Neck::channel_to>),
    length("neck", "limit", {10, 5000}, "", "furthest x that the board may reach", at<&Board::neck, &Neck::limit>),
    plain("neck", "file", Kind::text, "", "STEP file of the neck", at<&Board::neck, &Neck::file>),
    length("neck", "depth_first", {5, 200}, "",
           "finished neck with the board, from the fretted surface to its back, at "
           "fret 1",
           at<&Board::neck, &Neck::depth_first>),
    length("neck", "depth_twelfth", {5, 200}, "", "the same at fret 12", at<&Board::neck, &Neck::depth_twelfth>),
    ranged("neck", "angle", Kind::angle, {-15, 15}, "", "positive where the headstock lies back",
           at<&Board::neck, &Neck::angle_degrees>),
    choice("neck", "joint", joint_choices, "none", "how the neck is joined to the body",
           at<&Board::neck, &Neck::joint>),
    length("neck", "allowance", {0.01, 20, true}, "0", "how much wider than the board the neck is made, each side",
           at<&Board::neck, &Neck::allowance>),
    ranged("neck", "file_nut", Kind::place, {-100000, 100000}, "",
           "[x, y, z] of the centre line at the nut, in the file's own frame", at<&Board::neck, &Neck::file_nut>),
    ranged("neck", "file_heel", Kind::place, {-100000, 100000}, "",
           "[x, y, z] of the centre line at the heel end, in the file's own frame", at<&Board::neck, &Neck::file_heel>),

    ranged("height", "nut", Kind::pair, height_range, "0.5 mm; 0 with a zero fret",
           "string over the plane of the fret tops at x = 0; [bass, treble]", at<&Board::height, &Heights::nut>),
    ranged("height", "action", Kind::pair, height_range, "", "under the outer strings at action_fret; [bass, treble]",
           at<&Board::height, &Heights::action>),
    integer("height", "action_fret", fret_range, "12", "fret at which action is measured",
            at<&Board::height, &Heights::action_fret>),
    length("height", "relief", {-5, 5}, "0.15 mm",
           "how far the frets lie below a straight line from the nut to the joint",
           at<&Board::height, &Heights::relief>),
    integer("height", "relief_fret", fret_range, "7", "fret at which relief is measured",
            at<&Board::height, &Heights::relief_fret>),
    length("height", "bridge", height_range, "", "top of the saddle over the body's top, on the centre line",
           at<&Board::height, &Heights::bridge>),
    length("height", "body_step", height_range, "",
           "body's top below the glue face, measured at the joint; negative where it is above",
           at<&Board::height, &Heights::body_step>),

    ranged("measured", "slots", Kind::lengths, place_range, "", "x of each slot as measured after cutting",
           at<&Board::measured, &Measured::slots>),
    length("measured", "blank_thickness", {1, 100}, "", "thickness of the blank; holds in place of blank.thickness",
           at<&Board::measured, &Measured::blank_thickness>),
    length("measured", "tape", {0, 10}, "", "thickness of the tape under the blank, in every set-up",
           at<&Board::measured, &Measured::tape>),
    length("measured", "slot_width", {0.1, 5}, "", "width of the slots as cut",
           at<&Board::measured, &Measured::slot_width>),
    ranged("measured", "pocket_depths", Kind::named, {0.01, 100}, "", "depth of pockets as cut, by the piece's name",
           at<&Board::measured, &Measured::pocket_depths>),
    ranged("measured", "piece_thickness", Kind::named, {0.01, 100}, "", "thickness of pieces, by material",
           at<&Board::measured, &Measured::piece_thickness>),
    ranged("measured", "widths", Kind::points, place_range, "", "[x, width] of the board as cut",
           at<&Board::measured, &Measured::widths>),
    ranged("measured", "thickness", Kind::places, place_range, "", "[x, y, thickness] of the board as cut",
           at<&Board::measured, &Measured::thickness>),
    [] {
      Field field = plain("measured", "done", Kind::choices, "", "operations that have been cut",
                          at<&Board::measured, &Measured::done>);
      field.choices = operation_choices;
      return field;
    }(),
    ranged("measured", "chips", Kind::places, place_range, "", "[x, y, diameter] of each chip",
           at<&Board::measured, &Measured::chips>),
    plain("measured", "serial", Kind::text, "", "serial number of this board", at<&Board::measured, &Measured::serial>),

    needed(plain("notes", "text", Kind::text, "", "the note", at<&Note::text>)),
    plain("notes", "finding", Kind::text, "", "name of the finding that it is about", at<&Note::finding>),
    plain("notes", "by", Kind::text, "", "who wrote it", at<&Note::by>),
};

}  // namespace

std::span<const Field> fields() { return table_of_fields; }

}  // namespace sagitta
