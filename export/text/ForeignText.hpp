#pragma once

/// Text that a stranger may have written: names, materials, keys, paths. It is made safe once, where it leaves the
/// program: terminal_text (TerminalText.hpp), markup_text (Markup.hpp), CsvRow::text, dxf_string, step_string,
/// PdfBook::text and the texts of ThreeMfFile. All of them look at it through this file. JSON needs nothing of its own:
/// its writer escapes.

#include <string>
#include <string_view>

namespace sagitta {

/// What a character does where it is shown.
enum class Manner {
  shown,      ///< it is seen
  blank,      ///< tab, line feed, carriage return and the other controls of ASCII
  hidden,     ///< C1 controls, bidirectional and other invisible controls, separators of lines, noncharacters
  malformed,  ///< a byte that is no UTF-8
};

struct ForeignCharacter {
  char32_t code = 0;  ///< the byte where it is malformed
  std::size_t bytes = 0;
  Manner manner = Manner::shown;
};

/// The first character of a text that is not empty. Sources: the Unicode Standard 15, tables 3-7 (UTF-8) and 23-1
/// (controls), 23.7 (noncharacters); UAX 9, 2 (bidirectional controls); UTR 36, 2.5 (what to do with them). The joiners
/// U+200C and U+200D are shown: words of some scripts need them.
ForeignCharacter first_character(std::string_view text);

/// The text with a space for each blank and U+FFFD for each hidden character and malformed byte: well-formed UTF-8 that
/// can be seen.
std::string visible_text(std::string_view text);

}  // namespace sagitta
