#pragma once

/// A stage as an exact boundary-representation solid. The only OCCT modelling code of the project.

#include <TopoDS_Solid.hxx>
#include <stdexcept>
#include <string>

#include "lift/Shell.hpp"
#include "plane/Cancel.hpp"

namespace sagitta {

/// A solid could not be made: says at which stage and near which feature.
struct BuildError : std::runtime_error {
  BuildError(std::string stage_, std::string feature_, const std::string& what)
      : std::runtime_error(what), stage(std::move(stage_)), feature(std::move(feature_)) {}
  std::string stage, feature;
};

/// The shell's faces as one closed, outward-oriented solid without triangulation. Units mm, board's frame.
/// Throws BuildError.
TopoDS_Solid make_solid(const Shell& shell);

struct MassProperties {
  double volume = 0;  ///< mm^3
  double area = 0;    ///< mm^2
  double centroid[3] = {};
  double low[3] = {}, high[3] = {};  ///< bounding box
};
MassProperties mass_properties(const TopoDS_Solid& solid);

/// Empty, or what SolidFlaw.hpp finds first, in words for a developer.
std::string unsound(const TopoDS_Solid& solid, int genus = 0);

}  // namespace sagitta
