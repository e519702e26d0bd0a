#pragma once

/// What an SVG element is filled with.

#include <map>
#include <optional>
#include <pugixml.hpp>
#include <string>
#include <string_view>

#include "artwork/SvgStyle.hpp"

namespace sagitta {

using ElementsById = std::map<std::string_view, pugi::xml_node, std::less<>>;

/// The name without the prefix of SVG's namespace; other namespaces keep theirs.
std::string_view plain_name(const pugi::xml_node& node);

/// The fill as "#rrggbb"; nothing when the shape is not to be cut, which is noted where it may surprise.
std::optional<std::string> fill_of(const Style& style, const ElementsById& by_id, const std::string& where,
                                   Notes& notes);

}  // namespace sagitta
