#pragma once

/// Single keys of every-feature.toml, each with another value, and the steps of the job that it concerns.

#include <set>
#include <string>

namespace sagitta::test {

struct OneKey {
  const char *key, *from, *to;
  std::set<std::string> steps;  ///< their titles
};

inline const OneKey one_keys[] = {
    {"strings.nut_spread", "nut_spread = 36", "nut_spread = 35", {}},
    {"board.thickness", "[board]\nthickness = 7", "[board]\nthickness = 6.9", {}},
    {"board.nut_width", "[board]\nthickness = 7\nnut_width = 44", "[board]\nthickness = 7\nnut_width = 43.8", {}},
    {"board.heel_width", "heel_width = 58", "heel_width = 58.2", {}},
    {"board.past_last_fret", "past_last_fret = 12", "past_last_fret = 12.5", {}},
    {"board.corner_radius", "corner_radius = 2", "corner_radius = 3", {}},
    {"scale.length", "length = 648", "length = 647", {}},
    {"scale.frets", "frets = 22\n[strings]", "frets = 23\n[strings]", {}},
    {"surface.radius_at_nut", "radius_at_nut = 254", "radius_at_nut = 260", {}},
    {"surface.fall", "fall = 0.3", "fall = 0.25", {}},
    {"nut.width", "width = 5\ndepth = 3", "width = 4.8\ndepth = 3", {}},
    {"nut.depth", "depth = 3\ncompensation", "depth = 2.9\ncompensation", {}},
    {"nut.compensation", "compensation = 0.3", "compensation = 0.4", {}},
    {"wire.tang_width", "[wire]", "[wire]\ntang_width = 0.5", {}},
    {"wire.tang_depth", "tang_depth = 1.6", "tang_depth = 1.65", {}},
    {"wire.overhang", "[wire]", "[wire]\noverhang = 3", {}},
    {"wire.end_bevel", "[wire]", "[wire]\nend_bevel = 35", {}},
    {"slots.width", "[slots]", "[slots]\nwidth = 0.6", {}},
    {"slots.depth", "[slots]", "[slots]\ndepth = 2.1", {}},
    {"slots.edge_left", "edge_left = 3", "edge_left = 3.2", {}},
    {"slots.floor", "[slots]", "[slots]\nfloor = \"level\"", {}},
    {"scallop.depth", "depth = [0.4, 0.7]", "depth = [0.4, 0.75]", {}},
    {"scallop.land", "[scallop]", "[scallop]\nland = 1.6", {}},
    {"edges.roll", "roll = 1.5", "roll = 1.6", {}},
    {"inlays.depth", "frets = [3, 5, 7, 9]\ndepth = 2\nmaterial", "frets = [3, 5, 7, 9]\ndepth = 1.9\nmaterial", {}},
    {"inlays.piece_thickness",
     "frets = [3, 5, 7, 9]\ndepth = 2\nmaterial",
     "frets = [3, 5, 7, 9]\ndepth = 2\npiece_thickness = 2.15\nmaterial",
     {}},
    {"inlays.clearance",
     "frets = [3, 5, 7, 9]\ndepth = 2\nmaterial",
     "frets = [3, 5, 7, 9]\ndepth = 2\nclearance = 0.04\nmaterial",
     {}},
    {"inlays.shift_along",
     "frets = [3, 5, 7, 9]\ndepth = 2\nmaterial",
     "frets = [3, 5, 7, 9]\nshift_along = 0.5\ndepth = 2\nmaterial",
     {}},
    {"inlays.material", "depth = 2\nmaterial = \"pearl\"", "depth = 2\nmaterial = \"abalone\"", {}},
    {"side_dots.spread", "spread = 8", "spread = 9", {}},
    {"side_dots.diameter", "spread = 8", "spread = 8\ndiameter = 1.8", {}},
    {"side_dots.depth", "spread = 8", "spread = 8\ndepth = 3.2", {}},
    {"side_dots.edge", "spread = 8", "spread = 8\nedge = \"both\"", {}},
    {"binding.width", "width = 1.5\nheight", "width = 1.4\nheight", {}},
    {"binding.height", "height = 5", "height = 4.9", {}},
    {"binding.lines", "lines = [0.5]", "lines = [0.6]", {}},
    {"binding.line_materials", "line_materials = [\"maple\"]", "line_materials = [\"holly\"]", {}},
    {"pins.at", "at = [[30, 0], [430, 0]]", "at = [[31, 0], [430, 0]]", {}},
    {"pins.depth", "[pins]", "[pins]\ndepth = 2.6", {}},
    {"pins.diameter", "[pins]", "[pins]\ndiameter = 2.2", {}},
    {"cuts.depth, from the top", "at = [-6, 0]\ndepth = 4.5", "at = [-6, 0]\ndepth = 4.4", {}},
    {"cuts.depth, from below", "at = [250, 0]\ndepth = 2", "at = [250, 0]\ndepth = 2.1", {}},
    {"cuts.at, from below", "at = [250, 0]", "at = [251, 0]", {}},
    {"blank.thickness", "thickness = 9", "thickness = 9.1", {}},
    {"blank.length", "length = 530", "length = 532", {}},
    {"finish.sanding", "sanding = 0.15", "sanding = 0.1", {}},
    {"work.thickness_to", "[work]", "[work]\nthickness_to = 7.5", {}},
    {"setups.zero", "zero = \"corner\"", "zero = \"centre\"", {}},
    {"setups.z_zero", "z_zero = \"bed\"", "z_zero = \"glue-face\"", {}},
    {"setups.tape", "tape = 0.15", "tape = 0.2", {}},
    {"setups.reclamp_error", "tape = 0.15", "tape = 0.15\nreclamp_error = 0.1", {}},
    {"cutters.feed, slots", "feed = 250", "feed = 260", {}},
    {"cutters.diameter, radius", "shape = \"ball\"\ndiameter = 6", "shape = \"ball\"\ndiameter = 5", {}},
    {"cutters.diameter, outline", "use = [\"outline\"]\ndiameter = 6", "use = [\"outline\"]\ndiameter = 5", {}},
    {"sheets.margin", "thickness = 2.2\nmargin = 3", "thickness = 2.2\nmargin = 4", {}},
    {"neck.channel_width", "channel_width = 6", "channel_width = 6.2", {}},
    {"height.action", "action = [2.0, 1.6]", "action = [2.1, 1.6]", {}},
    {"limits", "[[notes]]", "[limits]\nthin-edge = 2\n[[notes]]", {}},
    {"notes.text", "for the summer course", "for the winter course", {}},
};

}  // namespace sagitta::test
