#include "random/Judge.hpp"

#include <BRepBndLib.hxx>
#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <algorithm>
#include <cmath>
#include <sstream>

#include "made/WorkshopTime.hpp"
#include "mesh/Mesh.hpp"
#include "mesh/MeshCheck.hpp"
#include "solid/Solid.hpp"
#include "solid/SolidFlaw.hpp"
#include "solid/StepCopy.hpp"

namespace sagitta::random_boards {
namespace {

/// Relative; a reader's volume of what it has read.
constexpr double same_volume = 1e-6;

/// By the kernel's adaptive integrals over the faces; those of fixed order miss 1e-6 beside the tip of an ellipse.
double volume_of(const TopoDS_Solid& solid) {
  constexpr double integration = 1e-7;  // relative
  GProp_GProps properties;
  BRepGProp::VolumeProperties(solid, properties, integration);
  return properties.Mass();
}

/// What a volume may change by with the point that it is added up about, mm3: each edge leaves a gap between its two
/// faces, as wide as its tolerance beyond the least one, and a cone from the point to the gap counts as volume.
double gaps(const TopoDS_Solid& solid) {
  constexpr double least = 1e-7;  // every edge has this one; same_figure covers it
  Bnd_Box box;
  BRepBndLib::Add(solid, box);
  const double reach = std::sqrt(box.SquareExtent());
  double sum = 0;
  TopTools_IndexedMapOfShape edges;
  TopExp::MapShapes(solid, TopAbs_EDGE, edges);
  for (int i = 1; i <= edges.Extent(); ++i) {
    const double wide = BRep_Tool::Tolerance(TopoDS::Edge(edges(i))) - least;
    if (wide <= least) continue;
    GProp_GProps line;
    BRepGProp::LinearProperties(edges(i), line);
    sum += wide * line.Mass() * reach / 3;
  }
  return sum;
}

/// Relative: both are asked for 1e-7.
constexpr double same_figure = 3e-7;

/// Of the processor: a campaign runs beside other work.
class Clock {
 public:
  double seconds() const { return test::processor_seconds(begin_); }

 private:
  std::clock_t begin_ = std::clock();
};

std::string loose_vertex(const TopoDS_Solid& solid) {
  double loosest = 0;
  for (TopExp_Explorer it(solid, TopAbs_VERTEX); it.More(); it.Next())
    loosest = std::max(loosest, BRep_Tool::Tolerance(TopoDS::Vertex(it.Current())));
  if (loosest < loosest_vertex) return {};
  std::ostringstream text;
  text << "a vertex has the tolerance " << loosest << " mm";
  return text.str();
}

std::string unsound_solid(const TopoDS_Solid& solid, int handles, const Ways& ways) {
  const std::string wrong = unsound(solid, handles);
  return wrong.empty() && ways.vertices ? loose_vertex(solid) : wrong;
}

std::string wrong_figure(const TopoDS_Solid& solid, double volume_of_solid) {
  const double told = mass_properties(solid).volume;
  if (std::abs(told - volume_of_solid) <= same_figure * volume_of_solid + gaps(solid)) return {};
  std::ostringstream text;
  text.precision(12);
  text << "solid: figures() tells " << told << " mm3, the kernel's integrals " << volume_of_solid;
  return text.str();
}

std::string unsound_mesh(const Mesh& mesh, const Shell& shell, int handles, double volume_of_solid) {
  if (std::string wrong = unsound(mesh, handles); !wrong.empty()) return wrong;
  const double off = std::abs(volume(mesh) - volume_of_solid);
  if (off > volume_allowance(mesh, shell)) return "its volume is off by " + std::to_string(off) + " mm3";
  if (mesh.deviation > default_deviation) return "it deviates by " + std::to_string(mesh.deviation) + " mm";
  return {};
}

std::string unsound_step(const TopoDS_Solid& solid, int handles, double volume_of_solid, const Ways& ways) {
  const StepCopy copy = through_step(solid, "judged");
  if (!copy.trouble.empty()) return copy.trouble;
  // What is read is judged as it is: a copy of the copy is nobody's file.
  if (const auto flaw = flaw_as_it_is(copy.solid, 2 - 2 * handles)) return flaw->what;
  if (ways.vertices)
    if (std::string wrong = loose_vertex(copy.solid); !wrong.empty()) return wrong;
  const double off = volume_of(copy.solid) / volume_of_solid - 1;
  return std::abs(off) < same_volume ? "" : "its volume is off by a share of " + std::to_string(off);
}

}  // namespace

Body judged(const Shell& shell, Ways ways) {
  Body body;
  if (const std::string wrong = unsound(shell); !wrong.empty()) return {"shell: " + wrong, 0, 0};
  const int handles = genus(shell);
  const Clock making_solid;
  const TopoDS_Solid solid = make_solid(shell);
  body.seconds = making_solid.seconds();
  if (body.wrong = unsound_solid(solid, handles, ways); !body.wrong.empty()) {
    body.wrong = "solid: " + body.wrong;
    return body;
  }
  body.volume = volume_of(solid);
  if (body.wrong = ways.figures ? wrong_figure(solid, body.volume) : ""; !body.wrong.empty()) return body;
  if (ways.mesh) {
    const Clock making_mesh;
    const Mesh mesh = make_mesh(shell);
    body.seconds += making_mesh.seconds();
    body.wrong = unsound_mesh(mesh, shell, handles, body.volume);
    if (!body.wrong.empty()) body.wrong = "mesh: " + body.wrong;
  }
  if (!ways.step || !body.wrong.empty()) return body;
  body.wrong = unsound_step(solid, handles, body.volume, ways);
  if (!body.wrong.empty()) body.wrong = "after STEP: " + body.wrong;
  return body;
}

}  // namespace sagitta::random_boards
