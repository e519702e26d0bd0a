#include "board/FaultCode.hpp"

#include <cstddef>
#include <iterator>

namespace sagitta {
namespace {

struct Word {
  FaultCode code;
  std::string_view word;
};

constexpr Word words[] = {{FaultCode::no_such_file, "no-such-file"},
                          {FaultCode::is_folder, "is-folder"},
                          {FaultCode::no_plain_file, "no-plain-file"},
                          {FaultCode::forbidden, "forbidden"},
                          {FaultCode::unreadable, "unreadable"},
                          {FaultCode::not_text, "not-text"},
                          {FaultCode::not_well_formed, "not-well-formed"},
                          {FaultCode::outside_folder, "outside-folder"},
                          {FaultCode::bases_too_deep, "bases-too-deep"},
                          {FaultCode::wrong_kind, "wrong-kind"},
                          {FaultCode::not_allowed, "not-allowed"},
                          {FaultCode::too_many, "too-many"},
                          {FaultCode::unknown_key, "unknown-key"},
                          {FaultCode::missing_key, "missing-key"},
                          {FaultCode::not_used, "not-used"},
                          {FaultCode::given_twice, "given-twice"},
                          {FaultCode::named_twice, "named-twice"},
                          {FaultCode::not_rising, "not-rising"},
                          {FaultCode::wrong_count, "wrong-count"},
                          {FaultCode::wrong_order, "wrong-order"},
                          {FaultCode::no_such_fret, "no-such-fret"},
                          {FaultCode::scale_missing, "scale-missing"},
                          {FaultCode::frets_cross, "frets-cross"},
                          {FaultCode::strings_cross, "strings-cross"},
                          {FaultCode::strings_overlap, "strings-overlap"},
                          {FaultCode::strings_outside, "strings-outside"},
                          {FaultCode::no_width, "no-width"},
                          {FaultCode::nut_over_end, "nut-over-end"},
                          {FaultCode::nut_in_slot, "nut-in-slot"},
                          {FaultCode::slot_too_short, "slot-too-short"},
                          {FaultCode::slots_meet, "slots-meet"},
                          {FaultCode::slot_at_end, "slot-at-end"},
                          {FaultCode::heel_arc_too_small, "heel-arc-too-small"},
                          {FaultCode::heel_meets_nut, "heel-meets-nut"},
                          {FaultCode::corner_too_large, "corner-too-large"},
                          {FaultCode::no_room_to_fall, "no-room-to-fall"},
                          {FaultCode::binding_too_wide, "binding-too-wide"},
                          {FaultCode::side_dot_over_end, "side-dot-over-end"},
                          {FaultCode::side_dot_through, "side-dot-through"},
                          {FaultCode::side_dots_meet, "side-dots-meet"},
                          {FaultCode::side_dot_too_large, "side-dot-too-large"},
                          {FaultCode::pin_through, "pin-through"},
                          {FaultCode::blank_too_small, "blank-too-small"},
                          {FaultCode::blank_too_thin, "blank-too-thin"},
                          {FaultCode::no_surface, "no-surface"},
                          {FaultCode::no_surface_beside, "no-surface-beside"},
                          {FaultCode::floor_too_low, "floor-too-low"},
                          {FaultCode::cuts_into_bed, "cuts-into-bed"},
                          {FaultCode::no_such_colour, "no-such-colour"},
                          {FaultCode::no_material, "no-material"},
                          {FaultCode::no_sheet, "no-sheet"},
                          {FaultCode::drawing_too_complex, "drawing-too-complex"},
                          {FaultCode::left_out, "left-out"},
                          {FaultCode::drawing_empty, "drawing-empty"},
                          {FaultCode::cutter_too_large, "cutter-too-large"},
                          {FaultCode::touches, "touches"},
                          {FaultCode::grazes, "grazes"},
                          {FaultCode::end_not_crossing, "end-not-crossing"},
                          {FaultCode::slot_lost, "slot-lost"},
                          {FaultCode::off_board, "off-board"},
                          {FaultCode::space_too_short, "space-too-short"},
                          {FaultCode::edges_differ, "edges-differ"},
                          {FaultCode::tongue_meets_board, "tongue-meets-board"},
                          {FaultCode::line_too_thick, "line-too-thick"},
                          {FaultCode::courses_overlap, "courses-overlap"},
                          {FaultCode::neck_not_found, "neck-not-found"},
                          {FaultCode::wood_loose, "wood-loose"},
                          {FaultCode::not_made, "not-made"}};

constexpr bool in_order() {
  for (std::size_t i = 0; i < std::size(words); ++i)
    if (words[i].code != static_cast<FaultCode>(i)) return false;
  return std::size(words) == static_cast<std::size_t>(FaultCode::not_made) + 1;
}
static_assert(in_order());

}  // namespace

std::string_view fault_word(FaultCode code) { return words[static_cast<std::size_t>(code)].word; }

}  // namespace sagitta
