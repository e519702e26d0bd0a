#pragma once

/// The basic shapes of SVG 1.1, chapter 9, and <path>, as trails in user units.

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "artwork/Curve.hpp"
#include "artwork/SvgFrame.hpp"

namespace pugi {
class xml_node;
}

namespace sagitta {

bool is_basic_shape(std::string_view name);

/// What the element draws, or what is wrong with its attributes. Sizes of 0 draw nothing.
std::variant<std::vector<Subpath>, std::string> basic_shape(const pugi::xml_node& element, std::string_view name,
                                                            const Viewport& viewport);

}  // namespace sagitta
