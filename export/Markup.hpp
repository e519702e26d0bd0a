#pragma once

#include <string>

namespace sagitta {

/// Text as it may stand in XML and HTML, in an element or an attribute; control characters become spaces.
std::string escaped(const std::string& text);

}  // namespace sagitta
