#pragma once

/// Solids and curves written as a STEP file (ISO 10303-21, AP214 or AP242).

#include <TopoDS_Face.hxx>
#include <TopoDS_Wire.hxx>
#include <string>
#include <vector>

#include "cad/StepStyle.hpp"
#include "solid/Solid.hpp"

namespace sagitta {

/// A body of a STEP file. Its volume, area and centroid go along, so that a reader can make sure that it has the same.
struct StepBody {
  std::string name;    ///< of the product, UTF-8
  std::string layer;   ///< ASCII; its colour and layer are on the whole solid
  std::string colour;  ///< "#rrggbb" in sRGB
  TopoDS_Solid solid;
  MassProperties figures;  ///< the solid's
};

/// A line beside the bodies, each a product of its own.
struct StepLine {
  std::string name, layer, colour;
  TopoDS_Wire wire;
};

/// A face beside the bodies, a product of its own, without colour.
struct StepFace {
  std::string name;
  TopoDS_Face face;
};

/// What goes into a STEP file: one body as a product of its own, or several as an assembly named `name`; the lines as
/// an assembly named `name` + " lines".
struct StepModel {
  std::string name;
  std::vector<StepBody> bodies;
  std::vector<StepLine> lines;
  std::vector<StepFace> faces{};
};

/// The model as the text of a STEP file, lengths of the model in mm. Nothing in it depends on the hour, the machine or
/// the user: the same model gives the same bytes. Throws std::runtime_error when the kernel cannot write it.
std::string step_text(const StepModel& model, const StepStyle& style = {});

}  // namespace sagitta
