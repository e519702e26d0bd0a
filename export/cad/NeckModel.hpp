#pragma once

/// What a neck is made to meet the board with, as solids and faces: the glue face, and a gauge of the neck's sides.

#include "cad/StepFile.hpp"
#include "lift/Shell.hpp"
#include "neck/NeckPlan.hpp"

namespace sagitta {

/// Thickness of the gauge. mm.
inline constexpr double gauge_thickness = 3;

/// The board's glue face as a face, pins as holes, with lines named after what they are: nut line, board's nut end,
/// joint, rod channel. In the board's frame, z = 0.
StepModel neck_face_model(const PreparedBoard& ready, const NeckPlan& plan);

/// A flat plate whose long edges are the neck's finished sides and whose ends are the board's: z from 0 to
/// gauge_thickness. Throws BuildError.
Shell gauge_shell(const PreparedBoard& ready, const NeckPlan& plan);

}  // namespace sagitta
