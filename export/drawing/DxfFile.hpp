#pragma once

/// A drawing written as a DXF file.

#include <string>

#include "drawing/Drawing.hpp"

namespace sagitta {

/// What the reader must be able to read.
enum class DxfVersion {
  r12,   ///< AC1009: POLYLINE with bulges; no unit in the file, so a 100 mm bar is drawn on the layer "scale-bar"
  r2000  ///< AC1015: LWPOLYLINE with bulges, $INSUNITS = 4 (millimetres), handles
};

/// The drawing as an ASCII DXF file (DXF reference of AutoCAD 2000, chapters 2 to 7), mm. A closed outline is one
/// closed polyline, a whole circle a CIRCLE, a straight line a LINE. Arcs are bulges (tangent of a quarter of the arc's
/// angle), exact in both versions. Notes stand as comments (group 999) at the top. Nothing in it depends on the hour or
/// the machine.
std::string dxf_text(const Drawing& drawing, DxfVersion version);

}  // namespace sagitta
