#include "cad/StepFileProperties.hpp"

#include <StepBasic_DerivedUnit.hxx>
#include <StepBasic_DerivedUnitElement.hxx>
#include <StepBasic_HArray1OfDerivedUnitElement.hxx>
#include <StepBasic_MeasureValueMember.hxx>
#include <StepBasic_SiUnitAndLengthUnit.hxx>
#include <StepBasic_Unit.hxx>
#include <StepGeom_CartesianPoint.hxx>
#include <StepRepr_CharacterizedDefinition.hxx>
#include <StepRepr_HArray1OfRepresentationItem.hxx>
#include <StepRepr_MeasureRepresentationItem.hxx>
#include <StepRepr_ProductDefinitionShape.hxx>
#include <StepRepr_PropertyDefinition.hxx>
#include <StepRepr_PropertyDefinitionRepresentation.hxx>
#include <StepRepr_Representation.hxx>
#include <StepRepr_RepresentedDefinition.hxx>
#include <StepRepr_ShapeAspect.hxx>
#include <StepShape_ShapeRepresentation.hxx>
#include <TCollection_HAsciiString.hxx>

namespace sagitta {
namespace {

Handle(TCollection_HAsciiString) text(const char* value) { return new TCollection_HAsciiString(value); }

Handle(StepRepr_HArray1OfRepresentationItem) list_of(const Handle(StepRepr_RepresentationItem) & item) {
  const Handle(StepRepr_HArray1OfRepresentationItem) list = new StepRepr_HArray1OfRepresentationItem(1, 1);
  list->SetValue(1, item);
  return list;
}

StepRepr_RepresentedDefinition represented(const Handle(StepRepr_PropertyDefinition) & property) {
  StepRepr_RepresentedDefinition definition;
  definition.SetValue(property);
  return definition;
}

/// mm to a power.
StepBasic_Unit unit_of(double power) {
  const Handle(StepBasic_SiUnitAndLengthUnit) millimetre = new StepBasic_SiUnitAndLengthUnit;
  millimetre->Init(Standard_True, StepBasic_spMilli, StepBasic_sunMetre);
  const Handle(StepBasic_DerivedUnitElement) element = new StepBasic_DerivedUnitElement;
  element->Init(millimetre, power);
  const Handle(StepBasic_HArray1OfDerivedUnitElement) elements = new StepBasic_HArray1OfDerivedUnitElement(1, 1);
  elements->SetValue(1, element);
  const Handle(StepBasic_DerivedUnit) derived = new StepBasic_DerivedUnit;
  derived->Init(elements);
  StepBasic_Unit unit;
  unit.SetValue(derived);
  return unit;
}

Handle(StepRepr_MeasureRepresentationItem) measure(const char* name, const char* type, double value, double power) {
  const Handle(StepBasic_MeasureValueMember) number = new StepBasic_MeasureValueMember;
  number->SetReal(value);
  number->SetName(type);
  const Handle(StepRepr_MeasureRepresentationItem) item = new StepRepr_MeasureRepresentationItem;
  item->Init(text(name), number, unit_of(power));
  return item;
}

/// The body's properties are those of an aspect of its product.
class Aspect {
 public:
  Aspect(const Handle(StepData_StepModel) & entities, const Handle(StepShape_ShapeDefinitionRepresentation) & product,
         const Handle(StepRepr_RepresentationItem) & item)
      : entities_(entities), context_(product->UsedRepresentation()->ContextOfItems()) {
    const Handle(StepRepr_ShapeAspect) aspect = new StepRepr_ShapeAspect;
    aspect->Init(text(""), text(""),
                 Handle(StepRepr_ProductDefinitionShape)::DownCast(product->Definition().PropertyDefinition()),
                 StepData_LFalse);
    target_.SetValue(aspect);
    const Handle(StepRepr_PropertyDefinition) property = new StepRepr_PropertyDefinition;
    property->Init(text("shape with specific properties"), Standard_True, text("properties for subshape"), target_);
    const Handle(StepShape_ShapeRepresentation) shape = new StepShape_ShapeRepresentation;
    shape->Init(text(""), list_of(item), context_);
    const Handle(StepShape_ShapeDefinitionRepresentation) whole = new StepShape_ShapeDefinitionRepresentation;
    whole->Init(represented(property), shape);
    entities_->AddWithRefs(whole);
  }

  void add(const char* name, const Handle(StepRepr_RepresentationItem) & value) const {
    const Handle(StepRepr_PropertyDefinition) property = new StepRepr_PropertyDefinition;
    property->Init(text("geometric validation property"), Standard_True, text(name), target_);
    const Handle(StepRepr_Representation) shown = new StepRepr_Representation;
    shown->Init(text(name), list_of(value), context_);
    const Handle(StepRepr_PropertyDefinitionRepresentation) whole = new StepRepr_PropertyDefinitionRepresentation;
    whole->Init(represented(property), shown);
    entities_->AddWithRefs(whole);
  }

 private:
  Handle(StepData_StepModel) entities_;
  Handle(StepRepr_RepresentationContext) context_;
  StepRepr_CharacterizedDefinition target_;
};

}  // namespace

void add_step_properties(const Handle(StepData_StepModel) & entities,
                         const Handle(StepShape_ShapeDefinitionRepresentation) & product,
                         const Handle(StepRepr_RepresentationItem) & item, const MassProperties& figures) {
  const Aspect aspect(entities, product, item);
  aspect.add("surface area", measure("surface area measure", "AREA_MEASURE", figures.area, 2));
  aspect.add("volume", measure("volume measure", "VOLUME_MEASURE", figures.volume, 3));
  const Handle(StepGeom_CartesianPoint) centroid = new StepGeom_CartesianPoint;
  centroid->Init3D(text("centre point"), figures.centroid[0], figures.centroid[1], figures.centroid[2]);
  aspect.add("centroid", centroid);
}

}  // namespace sagitta
