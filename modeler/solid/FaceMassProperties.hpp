#pragma once

/// Area, volume and moment of a face, by quadrature.

#include <TopoDS_Face.hxx>
#include <gp_XYZ.hxx>

namespace sagitta {

/// A face's area, and the cone between it and a point.
struct FaceMassProperties {
  double area = 0;
  double volume =
      0;          ///< of the cone, a third of the flux of the way from the point; negative where the face looks to it
  gp_XYZ moment;  ///< of the cone about the point: volume times the way from the point to the cone's centroid
};

/// By Gauss-Legendre rules on the face's parameters: within the face from a fixed parameter to its border (exact to
/// rounding: as many points as each span of the surface asks for), then along the border (Green's theorem), where each
/// stretch between two knots is halved until rules of 7 and of 10 points agree within 1e-10 of the face; two points are
/// exact for a line on a plane, or beside a cylinder's axis.
FaceMassProperties face_mass_properties(const TopoDS_Face& face, const gp_XYZ& from);

}  // namespace sagitta
