#pragma once

#include <TopTools_ListOfShape.hxx>
#include <TopoDS_Shape.hxx>

#include "oracle/Work.hpp"

namespace sagitta::oracle {

/// The wood before any cut: the outline's prism.
TopoDS_Shape stock(const Work& work);

/// One solid for each thing that is cut away; solids may overlap and reach outside the wood.
TopTools_ListOfShape tools(const Work& work, bool parallel);

}  // namespace sagitta::oracle
