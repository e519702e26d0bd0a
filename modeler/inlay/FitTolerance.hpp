#pragma once

/// The tolerances of the fit of drawn inlays: what it promises, and what its steps may take of that.

namespace sagitta::tolerance {

// What is promised.

/// How far a piece's walls may lie from what the cutters make of its drawing, to either side. mm.
inline constexpr double fitted = 0.002;
/// By how much a gap may differ from the clearance: between a piece and its pocket, and between pieces. mm.
inline constexpr double gap = 0.003;
/// What a cutter may leave unreached of a piece or a pocket, from inside and from outside. mm^2.
inline constexpr double at_rest = 0.001;

// What the steps take of it.

/// Chords may lie so far from the drawn curve that they stand for. mm.
inline constexpr double flattening = 0.0005;
/// Refitted lines and arcs may stray so far from the polygon that they stand for. mm.
inline constexpr double refit = fitted - flattening;
/// Chords may lie so far from the refitted arc that they stand for. mm.
inline constexpr double fine_chords = 0.0001;
/// However near other outlines are, a refitted one may stray so far. mm.
inline constexpr double least_follow = 0.00005;
/// Pieces that turn by less where they meet have one tangent. Radians.
inline constexpr double one_tangent = 0.005;
/// An arc that rises less over its chord is a line. mm.
inline constexpr double flat = 2e-5;
/// No sliver that offsets leave along arcs is thicker. mm.
inline constexpr double offset_sliver = 0.0005;
/// No outline moves by more than this any more when a fit has settled. mm.
inline constexpr double settled = 0.001;
/// What closing may still add to a settled fit, as offsets leave some. mm^2.
inline constexpr double left_open = 0.0003;
/// The fit is made for a radius that is larger than the cutter's by what refitted arcs may be smaller. mm.
inline constexpr double cutter_room = refit;

}  // namespace sagitta::tolerance
