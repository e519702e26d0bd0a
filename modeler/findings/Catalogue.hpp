#pragma once

/// Every finding's name, severity and limit. A length's limit is in mm here; a board may give another in [limits].

#include <array>
#include <string_view>

#include "findings/Finding.hpp"

namespace sagitta {

/// Which side of the limit is good.
enum class Bar { least, most };

struct Rule {
  std::string_view name;
  Severity severity;
  Bar bar;
  double limit;
  std::string_view unit;
  std::string_view measures;  ///< what the value is
  std::string_view source;    ///< where the limit comes from: "key X" or "common practice"
};

// In the order of what they cost: a wrong scale loses the intonation, a thin edge costs a second look.
inline constexpr std::array catalogue{
    Rule{"octave-off", Severity::stop, Bar::most, 0.1, "mm", "octave fret from half the scale", "common practice"},
    Rule{"board-narrower-than-neck", Severity::stop, Bar::least, 0, "mm", "board's width less the neck's",
         "key neck.nut_width, neck.body_width, neck.trim"},
    Rule{"last-fret-past-limit", Severity::stop, Bar::most, 0, "mm", "last fret beyond the limit", "key neck.limit"},
    Rule{"heel-past-limit", Severity::stop, Bar::most, 0, "mm", "heel end beyond the limit", "key neck.limit"},
    Rule{"inlay-sanded-through", Severity::stop, Bar::least, 0, "mm", "least of a piece left under the radius",
         "key inlays.depth"},
    Rule{"slot-too-shallow", Severity::stop, Bar::least, 0, "mm", "least depth of a slot less the tang's",
         "key wire.tang_depth"},
    Rule{"crowns-meet", Severity::stop, Bar::least, 0, "mm", "between the crowns of two frets", "key wire.crown_width"},
    Rule{"cutter-too-short", Severity::stop, Bar::least, 0, "mm", "cutting length less the depth of the cut",
         "key cutters.cutting_length"},
    Rule{"slot-cutter-too-wide", Severity::stop, Bar::most, 0.01, "mm", "slot cutter's cut less the slot's width",
         "common practice"},
    Rule{"slot-misplaced", Severity::look, Bar::most, 0.1, "mm", "worst measured slot from its place",
         "common practice"},
    Rule{"inlay-too-thin", Severity::look, Bar::least, 0.3, "mm", "least of a piece left under the radius",
         "common practice"},
    Rule{"inlay-on-slot", Severity::look, Bar::least, 0, "mm", "between a pocket and a slot", "key slots.width"},
    Rule{"thin-wall-at-slot", Severity::look, Bar::least, 1, "mm", "wood between a pocket and a slot",
         "common practice"},
    Rule{"thin-wall-at-edge", Severity::look, Bar::least, 1.5, "mm", "wood between a pocket and the edge",
         "common practice"},
    Rule{"pocket-too-deep", Severity::look, Bar::least, 0.05, "mm", "piece proud of the surface before sanding",
         "common practice"},
    Rule{"thin-under-slot", Severity::look, Bar::least, 1.5, "mm", "wood under a slot", "common practice"},
    Rule{"thin-under-pocket", Severity::look, Bar::least, 1.5, "mm", "wood under a pocket", "common practice"},
    Rule{"thin-under-nut", Severity::look, Bar::least, 1.5, "mm", "wood under the nut's seat", "common practice"},
    Rule{"thin-edge", Severity::look, Bar::least, 2.5, "mm", "height of the edge", "common practice"},
    Rule{"blank-short", Severity::look, Bar::least, 6, "mm", "spare blank beyond an end", "common practice"},
    Rule{"blank-narrow", Severity::look, Bar::least, 6, "mm", "spare blank beside a side", "common practice"},
    Rule{"blank-thin", Severity::look, Bar::least, 0.2, "mm", "spare blank above board and sanding", "common practice"},
    Rule{"slot-too-tight", Severity::look, Bar::least, 0.02, "mm", "slot's width less the tang's", "common practice"},
    Rule{"slot-too-loose", Severity::look, Bar::most, 0.12, "mm", "slot's width less the tang's", "common practice"},
    Rule{"narrow-fret-space", Severity::look, Bar::least, 4, "mm", "between the crowns of two frets",
         "common practice"},
    Rule{"string-near-edge", Severity::look, Bar::least, 2.5, "mm", "outer string's middle to the edge",
         "common practice"},
    Rule{"hump-under-string", Severity::look, Bar::most, 0.05, "mm", "rise of the surface under an outer string",
         "common practice"},
    Rule{"no-cutter", Severity::look, Bar::least, 1, "cutters", "cutters named for an operation", "key cutters.use"},
    Rule{"unknown-limit", Severity::look, Bar::most, 0, "names", "limits that belong to no finding", "key limits"},
    Rule{"unusual-marker", Severity::note, Bar::most, 0, "frets", "marker from the nearest usual fret",
         "common practice"},
};

/// The rule of this name; a name that is not in the catalogue does not compile.
consteval const Rule& rule(std::string_view name) {
  for (const Rule& entry : catalogue)
    if (entry.name == name) return entry;
  throw "no such finding";
}

}  // namespace sagitta
