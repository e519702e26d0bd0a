#include "oracle/Boolean.hpp"

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <Standard_Failure.hxx>
#include <TopExp_Explorer.hxx>
#include <sstream>

#include "oracle/Tools.hpp"

namespace sagitta::oracle {
namespace {

/// Relative error asked of the adaptive face integrals; the fixed-order ones miss 1e-6 beside the tip of an ellipse.
constexpr double integration = 1e-7;

/// `wood` less the tools of the work.
TopoDS_Shape cut_from(const TopoDS_Shape& wood, const Work& work, Route route, std::string& trouble) {
  const TopTools_ListOfShape all = tools(work, route.parallel);
  if (all.IsEmpty()) return wood;
  TopTools_ListOfShape arguments;
  arguments.Append(wood);
  BRepAlgoAPI_Cut cut;
  cut.SetArguments(arguments);
  cut.SetTools(all);
  cut.SetRunParallel(route.parallel);
  cut.SetUseOBB(route.boxes);
  cut.SetToFillHistory(false);
  cut.Build();
  if (cut.HasErrors()) {
    std::ostringstream text;
    cut.DumpErrors(text);
    trouble += text.str();
  }
  return cut.Shape();
}

bool is_radius(const Cut& cut) { return cut.name == "radius"; }

Booleans cut(const Work& work, Route route) {
  Booleans result;
  Work rest = work;
  result.shape = stock(work);
  if (route.two_steps) {
    Work radius = work;
    std::erase_if(radius.cuts, [](const Cut& cut) { return !is_radius(cut); });
    radius.pins.clear();
    radius.hollows.clear();
    radius.holes.clear();
    std::erase_if(rest.cuts, is_radius);
    result.shape = cut_from(result.shape, radius, route, result.trouble);
  }
  result.shape = cut_from(result.shape, rest, route, result.trouble);
  for (TopExp_Explorer it(result.shape, TopAbs_SOLID); it.More(); it.Next()) ++result.solids;
  if (!route.check) return result;
  GProp_GProps properties;
  BRepGProp::VolumeProperties(result.shape, properties, integration);
  result.volume = properties.Mass();
  result.sound = result.trouble.empty() && BRepCheck_Analyzer(result.shape).IsValid();
  return result;
}

}  // namespace

Booleans booleans(const Work& work, Route route) {
  try {
    return cut(work, route);
  } catch (const Standard_Failure& failure) {
    Booleans result;
    result.trouble = std::string(failure.DynamicType()->Name()) + ": " + failure.GetMessageString();
    return result;
  }
}

}  // namespace sagitta::oracle
