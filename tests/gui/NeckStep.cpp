#include "gui/NeckStep.hpp"

#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <STEPControl_Writer.hxx>
#include <algorithm>

namespace sagitta::test {

void write_neck(const std::filesystem::path& file, const Layout& board, double low, double high, double length) {
  const double from = board.nut_end, to = std::min(board.heel_end, length);
  const auto corner = [&](double x, int side) {
    return gp_Pnt(x, side == 0 ? -board.edge(0, x) - low : board.edge(1, x) + high, 0);
  };
  BRepBuilderAPI_MakePolygon outline(corner(from, 0), corner(to, 0), corner(to, 1), corner(from, 1), true);
  STEPControl_Writer writer;
  writer.Transfer(
      BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(outline.Wire(), true).Face(), gp_Vec(0, 0, -15)).Shape(),
      STEPControl_AsIs);
  writer.Write(file.c_str());
}

}  // namespace sagitta::test
