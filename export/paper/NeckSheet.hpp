#pragma once

/// The papers that a neck is made from, and a strip to try a neck with.

#include "drawing/Drawing.hpp"
#include "neck/NeckPlan.hpp"
#include "paper/PdfBook.hpp"

namespace sagitta {

/// First a sheet of figures: widths, depths, rod channel, pins. Then the glue face at 1:1 over as many sheets as it
/// needs, with both sides, nut line and nut end, joint, pins, channel and the places under deep cuts, tiled like the
/// slotting template, with its check scales: a strip to lay on a neck that exists. `drawing`: neck_drawing().
PdfBook neck_book(const PreparedBoard& ready, const NeckPlan& plan, const Drawing& drawing, const Paper& paper);

}  // namespace sagitta
