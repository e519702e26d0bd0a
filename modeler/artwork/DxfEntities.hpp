#pragma once

/// A DXF file (ASCII) taken apart: group codes, entities, blocks and layers, nothing drawn yet.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "artwork/Affine.hpp"
#include "board/Problem.hpp"

namespace sagitta {

struct DxfTag {
  int code = 0;
  int line = 1;  ///< of the value
  std::string_view value;
};

/// One entity: its type and its tags; a POLYLINE's VERTEX entities as its parts.
struct DxfEntity {
  std::string_view type;
  int line = 1;
  std::vector<DxfTag> tags;
  std::vector<DxfEntity> parts;

  std::optional<std::string_view> text(int code) const;
  /// The first value of the code; `otherwise` where it is missing or no number.
  double number(int code, double otherwise = 0) const;
  int whole(int code, int otherwise = 0) const;
  Point point(int code) const { return {number(code), number(code + 10)}; }
  /// All values of a code, in order.
  std::vector<double> numbers(int code) const;
  /// "line 12, LWPOLYLINE".
  std::string where() const;
};

struct DxfBlock {
  Point base;
  std::vector<DxfEntity> entities;
};

struct DrawnLayer {
  int colour = 7;
  std::optional<int> true_colour;
  bool shown = true;
};

struct DxfFile {
  std::optional<int> units;  ///< $INSUNITS
  std::map<std::string, DrawnLayer, std::less<>> layers;
  std::map<std::string, DxfBlock, std::less<>> blocks;
  std::vector<DxfEntity> entities;
};

/// The values point into the text.
std::variant<DxfFile, Faults> read_dxf(std::string_view text);

}  // namespace sagitta
