#pragma once

/// All tolerances of the project, in one place. Lengths in mm.

namespace sagitta::tolerance {

/// Differences up to this are the same number: powers, units and dyadic sums differ by 1e-13. mm.
inline constexpr double same = 1e-9;
/// Gaps up to this are not meant and are decided in the plan: nearly touching cuts are drawn back to leave this much.
/// mm.
inline constexpr double snap = 1e-4;
/// Points of the plan closer than this are one vertex. Ten times under the snap. mm.
inline constexpr double vertex = 1e-5;
/// A side hole that a floor meets within tolerance of the hole's silhouette is moved up by this much: a hundredth of a
/// millimetre there is a wall two hundred times thinner. mm.
inline constexpr double graze = 0.01;
/// What the kernel and readers of STEP take for one point (OCCT's Precision::Confusion): the aim of fitted curves and
/// of their images in faces, and the least tolerance of a vertex or an edge. mm.
inline constexpr double confusion = 1e-7;
/// Angles closer than this are one direction. radians.
inline constexpr double direction = 1e-6;
/// Numbers of order one closer than this are the same: shares of a curve, half turns, cosines.
inline constexpr double share = 1e-12;
/// Regions of less area are left by rounding: no piece, no outline. mm^2.
inline constexpr double crumb = 1e-4;
/// Heights closer than this are one height; lower walls are no walls. Less than tolerance::vertex: what an edge may lie
/// off one of two such surfaces stays within that. mm.
inline constexpr double height = 8e-6;
/// No floor may be lower than this above the glue face. mm.
inline constexpr double least_floor = 0.3;
/// Ends of drawn curves up to this apart are one end. Programs for drawing keep about four decimals. mm.
inline constexpr double drawn_join = 0.01;
/// How far the chords that stand for a drawn curve may depart from it where areas must be cut from each other; of the
/// drawing's larger side.
inline constexpr double drawn_chord = 1e-5;
/// Drawn points closer than this touch; of the drawing's larger side.
inline constexpr double drawn_touch = 1e-9;
/// What a drawn ellipse may depart from a circle and still be one, and what the Bezier curves of another may depart
/// from it; of its radius.
inline constexpr double drawn_round = 2e-6;

}  // namespace sagitta::tolerance
