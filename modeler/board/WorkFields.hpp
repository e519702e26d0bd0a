#pragma once

/// The rows of the field table that say how the board is made, what it must fit and what was measured.

#include "board/FieldMaking.hpp"

namespace sagitta::rows {

inline constexpr Choice operation_choices[] = {{"pockets", ""}, {"inlay", ""},   {"radius", ""},
                                               {"slots", ""},   {"outline", ""}, {"thickness", ""}};
inline constexpr Choice grain_choices[] = {{"quarter", ""}, {"flat", ""}};
inline constexpr Choice sheet_zero_choices[] = {{"corner", ""}, {"centre", "center"}, {"first-piece", ""}};
inline constexpr Choice hold_choices[] = {{"tape", ""}, {"tabs", ""}, {"skin", ""}};
inline constexpr Choice face_choices[] = {{"up", ""}, {"mirrored", ""}};
inline constexpr Choice joint_choices[] = {{"none", ""}, {"bolted", ""}, {"glued", ""}, {"through", ""}};
inline constexpr Choice zero_choices[] = {{"nut", ""}, {"corner", ""}, {"centre", "center"}};
inline constexpr Choice z_zero_choices[] = {{"glue-face", ""}, {"blank-top", ""}, {"bed", ""}};
inline constexpr Choice use_choices[] = {{"pocket-clear", ""}, {"pocket-detail", ""}, {"piece", ""}, {"radius", ""},
                                         {"slot", ""},         {"outline", ""},       {"nut", ""}};
inline constexpr Choice cutter_choices[] = {{"flat", ""}, {"ball", ""}};
inline constexpr Choice pattern_choices[] = {{"along", ""}, {"none", ""}};
inline constexpr Choice kind_choices[] = {{"wood", ""},    {"composite", ""}, {"shell", ""},
                                          {"plastic", ""}, {"metal", ""},     {"bone", ""}};
inline constexpr Choice state_choices[] = {{"finished", ""}, {"rough", ""}};

inline constexpr Range height_range{-100, 200};

inline constexpr Field work_fields[] = {
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

}  // namespace sagitta::rows
