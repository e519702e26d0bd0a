#pragma once

/// Boolean operations on polygons, on a grid of whole numbers. Clipper does them (Vatti: a generic solution to polygon
/// clipping, 1992), and no other file sees it.

#include "polygon/FillRule.hpp"
#include "polygon/Grid.hpp"

namespace sagitta {

enum class SetOperation { united, common, without };

struct ClipJob {
  GridPaths subject, clip;
  SetOperation how = SetOperation::united;  ///< `without`: the subject without the clip
  FillRule fill = FillRule::positive;       ///< of the subject and of the clip
};

/// The outlines of the answer, which cross none of each other. Where sides of the question lie on each other an outline
/// may touch itself, and some turn the wrong way round.
GridPaths clipped(const ClipJob& job);

/// The same with no outline that touches itself, outer ones counter-clockwise, holes clockwise. Takes the time of every
/// outline of the answer with every other about it.
GridPaths clipped_strictly(const ClipJob& job);

/// Whole numbers squared; negative for a clockwise outline.
double area(const GridPath& path);

}  // namespace sagitta
