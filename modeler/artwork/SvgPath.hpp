#pragma once

/// Path data of SVG 1.1, section 8.3.

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "artwork/Curve.hpp"

namespace sagitta {

/// Why path data cannot be read: byte of the text, from 0, and what stands there.
struct PathError {
  std::size_t at = 0;
  std::string message;
};

/// The subpaths of path data, in its own units, without those that draw nothing. Quadratic curves come as cubic ones,
/// which is the same curve.
std::variant<std::vector<Subpath>, PathError> read_path(std::string_view data);

/// The corners of `points` attributes (section 9.6), joined by lines.
std::variant<Subpath, PathError> read_points(std::string_view data, bool closed);

}  // namespace sagitta
