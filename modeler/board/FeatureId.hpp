#pragma once

/// What of a board something belongs to: a face of its solid, a fault, a finding, a place that is pointed at. Programs
/// go by this; names are made from it for people and are never read back.

#include <compare>
#include <string>
#include <string_view>

namespace sagitta {

struct FeatureId {
  enum class Kind {
    none,
    board,
    edge,  ///< part: which one
    heel_end,
    glue_face,
    outline,
    blank,
    blank_top,
    playing_surface,
    radius_cut,
    fall_away,
    fret,
    fret_space,  ///< fret: the one that ends it
    slots,       ///< all of them
    slot,
    strings,
    string,
    saddle,
    nut,
    nut_seat,
    binding,  ///< part: which edge
    inlay,    ///< the inlay at one fret, and its pocket
    piece,    ///< part: counted from 0 over the board's pieces
    side_dot,
    pin,
    neck,
    neck_side,  ///< part: which one
    neck_face,
    neck_channel,
    body_end,
    neck_file,
    cutter,
    setups,  ///< all of them
    setup,
    work_order,
    operation,  ///< index: an Operation
    work,       ///< all that is done with hands and machines
    limit,
    measured_slots,
    tongue,
    cut,           ///< of the builder's own
    scallop,       ///< fret: the one that ends the space
    worked_edge,   ///< rolled or bevelled; part: which one
    binding_line,  ///< beside the binding; index: counted from it, part: which edge
    string_height,
    note
  };

  /// Which edge or side: the lower has the smaller y.
  static constexpr int lower = 0, upper = 1;

  Kind kind = Kind::none;
  int index = -1;  ///< row of the kind's table, from 0; -1: the table has no rows, or it is none in particular
  int fret = -1;   ///< -1: none
  int part = -1;   ///< which of several of this kind, from 0; -1: none in particular
  friend auto operator<=>(const FeatureId&, const FeatureId&) = default;
};

/// The fixed word of a kind, for other programs: "fret-space".
std::string_view kind_word(FeatureId::Kind kind);
/// The table of the board file that makes it: "inlays"; "" where none does.
std::string_view table_of(FeatureId::Kind kind);
/// In the trade's words: "inlay 2 at fret 7", "fret 7 slot", "playing surface".
std::string feature_name(const FeatureId& id);
/// The board-file key that a click on it leads to: "inlays[1].depth"; "" where there is none.
std::string feature_key(const FeatureId& id);

}  // namespace sagitta
