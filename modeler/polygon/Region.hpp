#pragma once

/// Filled regions as polygons, and what can be done to them. Lengths in mm.

#include <vector>

#include "plane/Cancel.hpp"
#include "plane/Plane.hpp"

namespace sagitta {

using Polygon = std::vector<Point>;
/// Closed polygons: outer ones counter-clockwise, holes clockwise, none crossing another.
using Region = std::vector<Polygon>;

/// The same with lines and arcs: outer outlines counter-clockwise, holes clockwise, no crossings.
using Loops = std::vector<Loop>;

/// Area of the region, holes taken off. mm^2.
double area(const Region& region);
Box bounds(const Region& region);

/// The region offset by `by` (mm): all points within `by` of it; for a negative `by`, all points further than -by from
/// its outside. Arcs are chords within 0.0001 mm.
Region offset(const Region& region, double by, const Cancel& cancel = {});
/// What is in a and not in b.
Region difference(const Region& a, const Region& b, const Cancel& cancel = {});
Region union_of(const Region& a, const Region& b, const Cancel& cancel = {});
Region intersection(const Region& a, const Region& b, const Cancel& cancel = {});
/// The region where the winding number of the polygons is positive.
Region filled(const Region& polygons, const Cancel& cancel = {});

/// The connected parts of a region, each an outer polygon followed by its holes.
std::vector<Region> parts(const Region& region);

/// Without the points that lie within `tolerance` of the line between those kept.
Region thinned(const Region& region, double tolerance);

/// Whether p lies in the region.
bool contains(const Region& region, Point p);
bool contains(const Polygon& polygon, Point p);

}  // namespace sagitta
