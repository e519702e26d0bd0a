#pragma once

/// What a body weighs, in the STEP file beside it, so that a reader can make sure that it has the same body.

#include <StepData_StepModel.hxx>
#include <StepRepr_RepresentationItem.hxx>
#include <StepShape_ShapeDefinitionRepresentation.hxx>

#include "solid/Solid.hpp"

namespace sagitta {

/// Adds surface area, volume and centroid of a body to the entities: geometric validation properties (ISO 10303-42 and
/// the recommended practices of the CAx implementor forum, release 4.4), of `item` in its product. mm.
void add_step_properties(const Handle(StepData_StepModel) & entities,
                         const Handle(StepShape_ShapeDefinitionRepresentation) & product,
                         const Handle(StepRepr_RepresentationItem) & item, const MassProperties& figures);

}  // namespace sagitta
