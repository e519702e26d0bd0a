#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <vector>

#include "plane/ParallelFor.hpp"
#include "solid/BoundingBox.hpp"
#include "solid/FaceMassProperties.hpp"
#include "solid/Solid.hpp"

namespace sagitta {

MassProperties mass_properties(const TopoDS_Solid& solid) {
  MassProperties result;
  const Bnd_Box box = bounding_box(solid);
  box.Get(result.low[0], result.low[1], result.low[2], result.high[0], result.high[1], result.high[2]);
  const gp_XYZ middle = (box.CornerMin().XYZ() + box.CornerMax().XYZ()) / 2;
  std::vector<TopoDS_Face> shapes;
  for (TopExp_Explorer it(solid, TopAbs_FACE); it.More(); it.Next()) shapes.push_back(TopoDS::Face(it.Current()));
  std::vector<FaceMassProperties> faces(shapes.size());
  parallel_for(static_cast<int>(shapes.size()), [&](int i) { faces[i] = face_mass_properties(shapes[i], middle); });
  gp_XYZ moment(0, 0, 0);
  for (const FaceMassProperties& face : faces) {
    result.area += face.area;
    result.volume += face.volume;
    moment += face.moment;
  }
  const gp_XYZ centroid = middle + moment / result.volume;
  for (int i = 0; i < 3; ++i) result.centroid[i] = centroid.Coord(i + 1);
  return result;
}

}  // namespace sagitta
