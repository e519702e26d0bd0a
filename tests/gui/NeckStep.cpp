#include "gui/NeckStep.hpp"

#include <BRepPrimAPI_MakeBox.hxx>
#include <STEPControl_Writer.hxx>

namespace sagitta::test {

void write_neck(const std::filesystem::path& file, double length, double bass, double treble) {
  STEPControl_Writer writer;
  writer.Transfer(BRepPrimAPI_MakeBox(gp_Pnt(0, -bass, -15), gp_Pnt(length, treble, 0)).Shape(), STEPControl_AsIs);
  writer.Write(file.c_str());
}

}  // namespace sagitta::test
