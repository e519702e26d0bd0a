#pragma once

/// Codes of everything that can be wrong with a board, for programs.

#include <string_view>

namespace sagitta {

/// What kind of fault keeps a board from being read, laid out or built. Programs go by this, people by the message.
enum class FaultCode {
  no_such_file,
  is_folder,        ///< where a file is needed
  no_plain_file,    ///< a device or a pipe
  forbidden,        ///< a file that may not be read
  unreadable,       ///< a file that ends in the middle, or one that has not been read
  not_text,         ///< bytes that are no plain text in UTF-8
  not_well_formed,  ///< a line that is no TOML
  outside_folder,   ///< a file that lies outside of the board's folder
  bases_too_deep,   ///< bases that stand on each other in a circle, or too many of them
  wrong_kind,       ///< of value or of file: a text where a number is needed
  not_allowed,      ///< a number out of its range, or a word that is none of the choices
  too_many,         ///< more than is read: bytes, entries, rows
  unknown_key,
  missing_key,
  not_used,     ///< a key that the board's own choices leave without meaning
  given_twice,  ///< one thing given in two ways
  named_twice,  ///< a key, a space or an operation that stands in two places
  not_rising,   ///< numbers that must rise and do not
  wrong_count,  ///< a list that does not fit what it is for
  wrong_order,  ///< operations that cannot follow each other
  no_such_fret,
  scale_missing,
  frets_cross,
  strings_cross,
  strings_overlap,
  strings_outside,  ///< of the board's edges
  no_width,         ///< a board that is nowhere, or at an end, wider than 0
  nut_over_end,
  nut_in_slot,
  slot_too_short,
  slots_meet,
  slot_at_end,
  heel_arc_too_small,
  heel_meets_nut,
  corner_too_large,
  no_room_to_fall,
  binding_too_wide,
  side_dot_over_end,
  side_dot_through,
  side_dots_meet,
  side_dot_too_large,
  pin_through,
  blank_too_small,
  blank_too_thin,
  no_surface,         ///< a radius that is not more than half the width
  no_surface_beside,  ///< the same beside a board that is itself sound, where the radius is cut
  floor_too_low,
  cuts_into_bed,  ///< the radius, beside the board
  no_such_colour,
  no_material,  ///< named for a colour
  no_sheet,     ///< of a material
  drawing_too_complex,
  left_out,       ///< a part of a drawing that is not read
  drawing_empty,  ///< it fills nothing, or leaves no piece
  cutter_too_large,
  touches,             ///< a cut that only touches another
  grazes,              ///< a hole whose widest place runs along a floor
  end_not_crossing,    ///< a drawn heel end that does not cross the board as it must
  slot_lost,           ///< a slot of which the heel end leaves nothing, or too little
  off_board,           ///< a cut, a marker or a dot that lies beside the board
  space_too_short,     ///< a fret space without room for its scallop
  edges_differ,        ///< margins that differ where the surface needs them equal
  tongue_meets_board,  ///< a tongue whose slots run into the main board
  line_too_thick,      ///< a strip thicker than its slot
  courses_overlap,
  neck_not_found,  ///< in its file
  wood_loose,      ///< wood that nothing holds
  not_made         ///< what the program could not make, through a fault of its own
};

/// The fixed word of a code, for other programs: "slot-too-short".
std::string_view fault_word(FaultCode code);

}  // namespace sagitta
