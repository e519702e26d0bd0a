#pragma once

/// The papers that a neck is made from, and a strip to try a neck with.

#include "drawing/Drawing.hpp"
#include "neck/NeckPlan.hpp"
#include "paper/PdfBook.hpp"

namespace sagitta {

/// First a sheet of figures: widths, depths, the joint and the board's end, rod channel, pins, cuts under which nothing
/// may rise. Then the glue face at 1:1 over as many sheets as it needs, with both sides, nut line and nut end, joint,
/// pins, channel and these cuts, tiled like the slotting template, with its check scales. Last, tiled in the same way,
/// a strip to cut out and lay on a neck that exists: the board's outline, nut line, joint, and a scale from the nut
/// line. `drawing`: neck_drawing().
PdfBook neck_book(const PreparedBoard& ready, const NeckPlan& plan, const Drawing& drawing, const Paper& paper);

}  // namespace sagitta
