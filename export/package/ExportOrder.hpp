#pragma once

/// What is asked of an export: stages, kinds of files and how they are written.

#include <functional>
#include <string>
#include <vector>

#include "cad/PieceBodies.hpp"
#include "cad/StepStyle.hpp"
#include "drawing/BoardDrawing.hpp"
#include "mesh/Mesh.hpp"
#include "plan/Stage.hpp"

namespace sagitta {

struct ExportKinds {
  bool step = false, stl = false;
  bool dxf = false, svg = false, pdf = false, csv = false;
  bool three_mf = false, png = false, html = false;
};

/// What goes into a hand-off folder.
struct ExportOrder {
  std::vector<Stage> stages;
  std::vector<Assembly> assemblies;
  ExportKinds kinds;
  double deviation = default_deviation;  ///< of the meshes, mm
  DrawingOptions drawing = {};
  StepStyle step_style = {};
  /// Called as each file begins: how many are done, of how many, and what comes now. May be empty.
  std::function<void(int done, int all, const std::string& what)> tell = {};
};

}  // namespace sagitta
