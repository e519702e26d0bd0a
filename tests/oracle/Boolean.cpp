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

Booleans cut(const Work& work, Route route) {
  TopTools_ListOfShape wood;
  wood.Append(stock(work));
  const TopTools_ListOfShape all = tools(work, route.parallel);
  Booleans result;
  if (all.IsEmpty()) {
    result.shape = wood.First();
  } else {
    BRepAlgoAPI_Cut cut;
    cut.SetArguments(wood);
    cut.SetTools(all);
    cut.SetRunParallel(route.parallel);
    cut.SetUseOBB(route.boxes);
    cut.Build();
    result.shape = cut.Shape();
    if (cut.HasErrors()) {
      std::ostringstream text;
      cut.DumpErrors(text);
      result.trouble = text.str();
    }
  }
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
