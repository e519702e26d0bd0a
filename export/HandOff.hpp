#pragma once

#include <functional>
#include <stdexcept>
#include <string>
#include <vector>

#include "export/Drawing.hpp"
#include "export/Folder.hpp"
#include "export/PieceBodies.hpp"
#include "export/StepStyle.hpp"
#include "findings/Finding.hpp"
#include "mesh/Mesh.hpp"
#include "plan/Stage.hpp"
#include "plane/Cancel.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

struct HandOffKinds {
  bool step = false, stl = false;
  bool dxf = false, svg = false, pdf = false, csv = false;
  bool three_mf = false, png = false, html = false;
};

/// What goes into a hand-off folder.
struct HandOff {
  std::vector<Stage> stages;
  std::vector<Assembly> assemblies;
  HandOffKinds kinds;
  double deviation = default_deviation;  ///< of the meshes, mm
  DrawingOptions drawing = {};
  StepStyle step_style = {};
  /// Called as each file begins: how many are done, of how many, and what comes now. May be empty.
  std::function<void(int done, int all, const std::string& what)> tell = {};
};

/// The order makes no file: no stage, piece or paper has the kinds asked for; what() says so.
struct NothingToWrite : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// Adds STAGE.step, .stl, .3mf and .png for each stage, the same of the assemblies (an STL only of the flat pieces),
/// the drawings, the job sheet as HTML and PDF, and manifest.json with the board's findings; of a part of the job only
/// what belongs to it. Shows its progress on a terminal. Every solid and mesh is judged before it is added (Gate.hpp).
/// Throws FolderError, ProgramFault, PartError, NothingToWrite, and Interrupted when the token is asked to stop.
void write_hand_off(const PreparedBoard& ready, const std::vector<Finding>& findings, const HandOff& order,
                    Folder& folder, const Cancel& cancel);

}  // namespace sagitta
