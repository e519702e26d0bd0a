#pragma once

/// The files of the trial strip.

#include <vector>

#include "cad/StepStyle.hpp"
#include "drawing/Paper.hpp"
#include "folder/Folder.hpp"
#include "package/DrawingFiles.hpp"
#include "plane/Cancel.hpp"
#include "rules/Finding.hpp"
#include "trial/Trial.hpp"

namespace sagitta {

/// The strip from above, a layer for each operation, named as in the board's own drawings; each figure says its slot's
/// width or its pocket's clearance.
Drawing trial_drawing(const Trial& trial);

/// The sheet that goes with the strip: what to cut, what to measure, and which key of the board file to set from it.
PdfBook trial_book(const PreparedBoard& ready, const Trial& trial, const Paper& paper);

/// Writes strip.step, strip.stl, pieces.step, pieces.stl, trial.dxf (R2000), trial-r12.dxf, trial.svg, trial-sheet.pdf,
/// copies of the board's drawings, and manifest.json with the board's findings, from which `sagitta trial` makes the
/// same again. Throws FolderError, ProgramFault, and Interrupted when the token is asked to stop.
void write_trial(const PreparedBoard& ready, const std::vector<Finding>& findings, const Trial& trial,
                 const Paper& paper, Folder& folder, const Cancel& cancel);

}  // namespace sagitta
