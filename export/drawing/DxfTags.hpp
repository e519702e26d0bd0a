#pragma once

/// The frame of a DXF file around its entities: header, tables, blocks, objects (DXF reference of AutoCAD 2000).

#include <string>
#include <vector>

#include "plane/Plane.hpp"

namespace sagitta {

/// Handle of the block record that all entities belong to.
inline constexpr const char* model_space = "1F";

/// A DXF file's text as it grows: pairs of a group code and a value, a line each.
class DxfTags {
 public:
  /// Foreign text, see dxf_string.
  DxfTags& text(int code, const std::string& value);
  DxfTags& number(int code, double value);
  DxfTags& whole(int code, int value);
  /// x, y and z = 0 at code, code + 10, code + 20.
  DxfTags& point(int code, Point p);
  /// x and y only.
  DxfTags& flat_point(int code, Point p);
  /// The next free handle, group 5.
  DxfTags& handle();
  /// The whole text, with the first handle that is still free filled into the header.
  std::string finished() const;

 private:
  std::string text_;
  int next_ = 0x100;  ///< below stand the fixed handles of the frame
};

struct DxfLayer {
  std::string name;
  int colour = 7;
};

struct DxfFrame {
  std::vector<DxfLayer> layers;
  Box extents;
  bool r2000 = true;
};

/// All that stands before the entities.
void open_dxf(DxfTags& tags, const DxfFrame& frame);
/// All that stands after them.
void close_dxf(DxfTags& tags, const DxfFrame& frame);

}  // namespace sagitta
