#pragma once

/// The hand-off folder: everything that is ordered, written into a folder.

#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

#include "cad/PieceBodies.hpp"
#include "cad/StepStyle.hpp"
#include "drawing/BoardDrawing.hpp"
#include "drawing/Drawing.hpp"
#include "folder/Folder.hpp"
#include "mesh/Mesh.hpp"
#include "package/ExportOrder.hpp"
#include "plan/Stage.hpp"
#include "plane/Cancel.hpp"
#include "prepared/PreparedBoard.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// The order makes no file: no stage, piece or paper has the kinds asked for; what() says so.
struct NothingToWrite : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// Adds STAGE.step, .stl, .3mf and .png for each stage, the same of the assemblies (an STL only of the flat pieces),
/// the drawings, the job sheet as HTML and PDF, and manifest.json with the board's findings; of a part of the job only
/// what belongs to it. Shows its progress on a terminal. Every solid and mesh is judged before it is added (Gate.hpp).
/// Files are made side by side; the bytes do not depend on the number of threads. Throws FolderError, ProgramFault,
/// PartError, NothingToWrite, and Interrupted when the token is asked to stop.
void write_hand_off(const PreparedBoard& ready, const std::vector<Finding>& findings, const ExportOrder& order,
                    Folder& folder, const Cancel& cancel);

}  // namespace sagitta
