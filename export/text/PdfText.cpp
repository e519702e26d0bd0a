#include "text/PdfText.hpp"

#include "text/ForeignText.hpp"

namespace sagitta {

std::string pdf_text(std::string_view text) {
  constexpr std::size_t longest = 1000;
  std::string seen = visible_text(text.substr(0, longest + 4));
  if (seen.size() <= longest) return seen;
  std::size_t end = longest;
  while (end > 0 && (static_cast<unsigned char>(seen[end]) & 0xC0) == 0x80) --end;
  return seen.substr(0, end) + " ..";
}

}  // namespace sagitta
