#pragma once

/// Text as XML and HTML may contain it.

#include <string>
#include <string_view>

namespace sagitta {

/// Foreign text as it may stand in XML 1.0 and HTML, in an element or an attribute, in SVG and 3MF too: markup is
/// escaped, and the rest is visible_text.
std::string markup_text(std::string_view text);

}  // namespace sagitta
