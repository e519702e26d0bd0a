#pragma once

/// The distance between the edges of a face and their pcurves.

#include <BRep_GCurve.hxx>
#include <Geom_Plane.hxx>
#include <Geom_Surface.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>

namespace sagitta {

/// A face whose edges are compared with their pcurves.
class PcurveFace {
 public:
  explicit PcurveFace(const TopoDS_Face& face);
  /// Largest distance between an edge of the face and its pcurve (or the plane, where a plane keeps none), mm, measured
  /// at three places of each span of a spline, at nine of any other curve. Beyond all bounds where there is no pcurve,
  /// or one over other parameters.
  double deviation(const TopoDS_Edge& edge) const;

 private:
  Handle(BRep_GCurve) pcurve_of(const TopoDS_Edge& edge) const;

  Handle(Geom_Surface) surface_;
  Handle(Geom_Plane) plane_;  ///< null where the surface is none
};

}  // namespace sagitta
