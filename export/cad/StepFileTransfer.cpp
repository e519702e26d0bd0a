#include "cad/StepFileTransfer.hpp"

#include <BRep_Builder.hxx>
#include <Interface_Static.hxx>
#include <STEPControl_ActorWrite.hxx>
#include <StepBasic_Product.hxx>
#include <StepBasic_ProductDefinition.hxx>
#include <StepBasic_ProductDefinitionFormation.hxx>
#include <StepBasic_ProductDefinitionRelationship.hxx>
#include <StepRepr_ProductDefinitionShape.hxx>
#include <StepRepr_RepresentationItem.hxx>
#include <StepShape_ContextDependentShapeRepresentation.hxx>
#include <TCollection_HAsciiString.hxx>
#include <TopTools_MapOfShape.hxx>
#include <TransferBRep.hxx>
#include <TransferBRep_ShapeMapper.hxx>
#include <Transfer_SimpleBinderOfTransient.hxx>
#include <stdexcept>

namespace sagitta {
namespace {

Handle(TCollection_HAsciiString) text(const std::string& value) { return new TCollection_HAsciiString(value.c_str()); }

/// What the shape became, of one type; null: nothing of that type.
template <class Entity>
Handle(Entity) found(const Handle(Transfer_FinderProcess) & process, const TopoDS_Shape& shape) {
  Handle(Entity) entity;
  process->FindTypedTransient(TransferBRep::ShapeMapper(process, shape), STANDARD_TYPE(Entity), entity);
  return entity;
}

}  // namespace

/// Takes for assemblies what was said to be one, and no other compound.
class StepTransfer::Actor : public STEPControl_ActorWrite {
 public:
  void take_for_assembly(const TopoDS_Shape& whole) { assemblies_.Add(whole); }
  Standard_Boolean IsAssembly(TopoDS_Shape& shape) const override { return assemblies_.Contains(shape); }

 private:
  TopTools_MapOfShape assemblies_;
};

StepTransfer::StepTransfer(const Handle(StepData_StepModel) & entities, StepNames& names)
    : entities_(entities), names_(names), process_(new Transfer_FinderProcess), actor_(new Actor) {
  entities_->SetLocalLengthUnit(1);  // the model's lengths are in mm
  actor_->ModeTrans() = STEPControl_AsIs;
  actor_->SetGroupMode(Interface_Static::IVal("write.step.assembly"));
  process_->SetModel(entities_);
  process_->SetActor(actor_);
}

StepTransfer::~StepTransfer() = default;

void StepTransfer::add(const TopoDS_Shape& shape, const std::string& name) {
  transfer(shape);
  name_product(shape, names_.mark(name));
}

void StepTransfer::add(const std::vector<Part>& parts, const std::string& name) {
  TopoDS_Compound whole;
  BRep_Builder builder;
  builder.MakeCompound(whole);
  for (const Part& part : parts) builder.Add(whole, part.shape);
  actor_->take_for_assembly(whole);
  transfer(whole);
  for (const Part& part : parts) {
    const std::string mark = names_.mark(part.name);
    name_product(part.shape, mark);
    name_use(part.shape, mark);
  }
  name_product(whole, names_.mark(name));
}

void StepTransfer::transfer(const TopoDS_Shape& shape) {
  const Handle(Transfer_Finder) mapper = new TransferBRep_ShapeMapper(shape);
  process_->Transfer(mapper);
  bool any = false;
  for (Handle(Transfer_Binder) binder = process_->Find(mapper); !binder.IsNull(); binder = binder->NextResult()) {
    const auto result = Handle(Transfer_SimpleBinderOfTransient)::DownCast(binder);
    if (result.IsNull() || result->Result().IsNull()) continue;
    entities_->AddWithRefs(result->Result());
    any = true;
  }
  if (!any) throw std::runtime_error("the solid could not be turned into STEP");
}

void StepTransfer::name_product(const TopoDS_Shape& shape, const std::string& mark) const {
  const Handle(StepBasic_Product) product =
      product_of(shape)->Definition().PropertyDefinition()->Definition().ProductDefinition()->Formation()->OfProduct();
  product->SetId(text(mark));
  product->SetName(text(mark));
}

void StepTransfer::name_use(const TopoDS_Shape& part, const std::string& mark) const {
  const auto place = found<StepShape_ContextDependentShapeRepresentation>(process_, part);
  if (place.IsNull()) throw std::runtime_error("a part of the assembly is missing in the STEP file");
  place->RepresentedProductRelation()->Definition().ProductDefinitionRelationship()->SetName(text(mark));
}

Handle(StepShape_ShapeDefinitionRepresentation) StepTransfer::product_of(const TopoDS_Shape& shape) const {
  const auto product = found<StepShape_ShapeDefinitionRepresentation>(process_, shape);
  if (product.IsNull()) throw std::runtime_error("a product is missing in the STEP file");
  return product;
}

Handle(StepRepr_RepresentationItem) StepTransfer::item_of(const TopoDS_Shape& shape) const {
  const auto item = found<StepRepr_RepresentationItem>(process_, shape);
  if (item.IsNull()) throw std::runtime_error("a body is missing in the STEP file");
  return item;
}

}  // namespace sagitta
