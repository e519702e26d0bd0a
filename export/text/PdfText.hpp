#pragma once

/// Text as a PDF page may contain it.

#include <string>
#include <string_view>

namespace sagitta {

/// Foreign text as it stands on a page and in the record of a PDF: visible_text, cut off after 1000 bytes, which no
/// page is wide enough for.
std::string pdf_text(std::string_view text);

}  // namespace sagitta
