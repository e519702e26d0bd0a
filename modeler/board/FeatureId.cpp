#include "board/FeatureId.hpp"

#include <iterator>

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

/// What is fixed of a kind. `key` lies in `table`; "" where a click leads nowhere.
struct Words {
  Kind kind;
  std::string_view word, table, key, name;
};

constexpr Words words[] = {{Kind::none, "none", "", "", ""},
                           {Kind::board, "board", "board", "thickness", "board"},
                           {Kind::edge, "edge", "board", "edge_margin", "edge"},
                           {Kind::heel_end, "heel-end", "board", "past_last_fret", "heel end"},
                           {Kind::glue_face, "glue-face", "board", "thickness", "glue face"},
                           {Kind::outline, "outline", "board", "edge_margin", "outline"},
                           {Kind::blank, "blank", "blank", "thickness", "blank"},
                           {Kind::blank_top, "blank-top", "blank", "thickness", "blank's top"},
                           {Kind::playing_surface, "playing-surface", "surface", "profile", "playing surface"},
                           {Kind::radius_cut, "radius-cut", "surface", "profile", "radius cut"},
                           {Kind::fall_away, "fall-away", "surface", "fall_from_fret", "start of the fall-away"},
                           {Kind::fret, "fret", "scale", "frets", "fret"},
                           {Kind::fret_space, "fret-space", "scale", "frets", "space"},
                           {Kind::slots, "slots", "slots", "width", "all slots"},
                           {Kind::slot, "slot", "slots", "width", "slot"},
                           {Kind::strings, "strings", "strings", "nut_spread", "strings"},
                           {Kind::string, "string", "strings", "nut_spread", "string"},
                           {Kind::saddle, "saddle", "strings", "saddle_spread", "saddle"},
                           {Kind::nut, "nut", "nut", "width", "nut"},
                           {Kind::nut_seat, "nut-seat", "nut", "width", "nut seat"},
                           {Kind::binding, "binding", "binding", "width", "binding"},
                           {Kind::inlay, "inlay", "inlays", "depth", "inlay"},
                           {Kind::piece, "piece", "inlays", "depth", "piece"},
                           {Kind::side_dot, "side-dot", "side_dots", "diameter", "side dot"},
                           {Kind::pin, "pin", "pins", "diameter", "pin"},
                           {Kind::neck, "neck", "neck", "", "neck"},
                           {Kind::neck_side, "neck-side", "neck", "", "side of the neck"},
                           {Kind::neck_face, "neck-face", "neck", "", "neck's glue face"},
                           {Kind::neck_channel, "neck-channel", "neck", "channel_width", "neck's channel"},
                           {Kind::body_end, "body-end", "neck", "body_at", "body end"},
                           {Kind::neck_file, "neck-file", "neck", "file", "neck's file"},
                           {Kind::cutter, "cutter", "cutters", "diameter", "cutter"},
                           {Kind::setups, "setups", "setups", "", "set-ups"},
                           {Kind::setup, "setup", "setups", "operations", "set-up"},
                           {Kind::work_order, "work-order", "work", "order", "order of work"},
                           {Kind::operation, "operation", "work", "order", "operation"},
                           {Kind::work, "work", "work", "", "work"},
                           {Kind::limit, "limit", "limits", "", "limit"},
                           {Kind::measured_slots, "measured-slots", "measured", "slots", "measured slots"},
                           {Kind::tongue, "tongue", "tongue", "frets", "tongue"},
                           {Kind::cut, "cut", "cuts", "depth", "cut"},
                           {Kind::scallop, "scallop", "scallop", "depth", "scallop"},
                           {Kind::worked_edge, "worked-edge", "edges", "roll", "worked edge"},
                           {Kind::binding_line, "binding-line", "binding", "lines", "line beside the binding"},
                           {Kind::string_height, "string-height", "height", "action", "height of the strings"},
                           {Kind::note, "note", "notes", "text", "note"}};

constexpr bool in_order() {
  for (std::size_t i = 0; i < std::size(words); ++i)
    if (words[i].kind != static_cast<Kind>(i)) return false;
  return std::size(words) == static_cast<std::size_t>(Kind::note) + 1;
}
static_assert(in_order());

const Words& words_of(Kind kind) { return words[static_cast<std::size_t>(kind)]; }

std::string side(const FeatureId& id) { return id.part == FeatureId::lower ? "lower" : "upper"; }

/// "inlay 2", "pin 1": the name, and the row counted from 1 as people count.
std::string numbered(const FeatureId& id) {
  const std::string name(words_of(id.kind).name);
  return id.index < 0 ? name : name + " " + std::to_string(id.index + 1);
}

}  // namespace

std::string_view kind_word(Kind kind) { return words_of(kind).word; }

std::string_view table_of(Kind kind) { return words_of(kind).table; }

std::string feature_name(const FeatureId& id) {
  const std::string fret = std::to_string(id.fret);
  switch (id.kind) {
    case Kind::edge:
    case Kind::neck_side:
    case Kind::worked_edge:
      return id.part < 0 ? std::string(words_of(id.kind).name) : side(id) + " " + std::string(words_of(id.kind).name);
    case Kind::binding:
      return "binding at the " + side(id) + " edge";
    case Kind::slot:
      return "fret " + fret + " slot";
    case Kind::fret:
    case Kind::fret_space:
      return std::string(words_of(id.kind).name) + " " + fret;
    case Kind::side_dot:  // parts 2 and 3 lie in the treble edge
      return numbered(id) + (id.fret < 0 ? "" : " at fret " + fret) + (id.part > 1 ? ", treble edge" : "") +
             (id.part % 2 == 1 ? ", the second of its pair" : "");
    case Kind::inlay:
      return numbered(id) + (id.fret < 0 ? "" : " at fret " + fret) + (id.part > 0 ? ", the second of its pair" : "");
    default:
      return id.fret < 0 ? numbered(id) : numbered(id) + " at fret " + fret;
  }
}

std::string feature_key(const FeatureId& id) {
  const Words& own = words_of(id.kind);
  if (own.key.empty()) return "";
  const std::string row = id.index < 0 || id.kind == Kind::pin || id.kind == Kind::operation ||
                                  id.kind == Kind::string || id.kind == Kind::binding_line
                              ? ""
                              : "[" + std::to_string(id.index) + "]";
  return std::string(own.table) + row + "." + std::string(own.key);
}

}  // namespace sagitta
