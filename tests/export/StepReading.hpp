#pragma once

#include <TopoDS_Shape.hxx>
#include <TopoDS_Solid.hxx>
#include <string>
#include <vector>

namespace sagitta::test {

/// A product of a STEP file that is no assembly, as the kernel's reader finds it. The validation properties are those
/// that the file carries, scaled to mm by nobody; 0 where there are none.
struct ReadPart {
  std::string name, group;  ///< group: of the assembly that it stands in
  std::string colour;       ///< "#RRGGBB"; empty where there is none
  std::string layer;
  double volume = 0, area = 0;
  double centroid[3] = {};
  TopoDS_Shape shape;
};

struct ReadStep {
  std::string unit;
  std::vector<std::string> roots;
  std::vector<ReadPart> parts;
  const ReadPart& part(const std::string& name) const;
  std::vector<TopoDS_Solid> solids() const;
};

/// Reads a STEP file's text. Throws std::runtime_error when there is nothing in it.
ReadStep read_step(const std::string& text);

}  // namespace sagitta::test
