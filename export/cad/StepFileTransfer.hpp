#pragma once

/// A model turned into the kernel's entities of a STEP file.

#include <StepData_StepModel.hxx>
#include <StepRepr_RepresentationItem.hxx>
#include <StepShape_ShapeDefinitionRepresentation.hxx>
#include <TopoDS_Compound.hxx>
#include <Transfer_FinderProcess.hxx>
#include <string>

#include "cad/StepFile.hpp"
#include "cad/StepFileNames.hpp"

namespace sagitta {

/// Shapes become products, one after the other. The kernel's tool for documents does the same, but makes a graph of all
/// entities three times over and needs the libraries of its documents and of its display.
class StepTransfer {
 public:
  /// Entities are added to the model; products get their names as marks of `names`. Both must outlive this.
  StepTransfer(const Handle(StepData_StepModel) & entities, StepNames& names);
  ~StepTransfer();
  StepTransfer(const StepTransfer&) = delete;
  StepTransfer& operator=(const StepTransfer&) = delete;

  /// A product of its own. Throws Standard_Failure, and std::runtime_error when the kernel makes nothing of it.
  void add(const TopoDS_Shape& shape, const std::string& name);

  /// Parts of one product. A part is a product of its own inside it.
  struct Part {
    TopoDS_Shape shape;
    std::string name;
  };
  void add(const std::vector<Part>& parts, const std::string& name);

  /// The representation of a shape that was added, or is a part of one.
  Handle(StepShape_ShapeDefinitionRepresentation) product_of(const TopoDS_Shape& shape) const;
  /// The entity that the shape itself became.
  Handle(StepRepr_RepresentationItem) item_of(const TopoDS_Shape& shape) const;

 private:
  void transfer(const TopoDS_Shape& shape);
  void name_product(const TopoDS_Shape& shape, const std::string& mark) const;
  void name_use(const TopoDS_Shape& part, const std::string& mark) const;

  class Actor;
  Handle(StepData_StepModel) entities_;
  StepNames& names_;
  Handle(Transfer_FinderProcess) process_;
  Handle(Actor) actor_;
};

}  // namespace sagitta
