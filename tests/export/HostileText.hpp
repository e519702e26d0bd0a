#pragma once

/// One table of texts that a stranger may have written, for the tests of every border that text leaves by.

#include <string>
#include <vector>

namespace sagitta::test {

struct HostileText {
  std::string what, text;
  /// What must not come out of a terminal, a page or a cell as it is; empty where all of it may.
  std::string harm;
};

inline std::vector<HostileText> hostile_texts() {
  return {{"ampersand", "R&D &amp; sons", ""},
          {"markup", "</text><script>alert(1)</script>", ""},
          {"end of CDATA", "]]>", ""},
          {"quotes", "it's a \"reed\"", ""},
          {"backslashes", "\\X2\\0041\\X0\\ \\U+0041 \\", ""},
          {"terminal: erase the screen", "a\x1b[2Jb", "\x1b"},
          {"terminal: set the title",
           "a\x1b]0;owned\x07"
           "b",
           "\x07"},
          {"terminal: back over it", "stop\b\b\b\bgood", "\b"},
          {"C1: one character is the command",
           "a\xC2\x9B"
           "2Jb",
           "\xC2\x9B"},
          {"C1: next line",
           "a\xC2\x85"
           "b",
           "\xC2\x85"},
          {"delete",
           "a\x7F"
           "b",
           "\x7F"},
          {"right to left override", "a\xE2\x80\xAEgnp.exe", "\xE2\x80\xAE"},
          {"left to right embedding",
           "a\xE2\x80\xAA"
           "b",
           "\xE2\x80\xAA"},
          {"isolate",
           "a\xE2\x81\xA6"
           "b\xE2\x81\xA9",
           "\xE2\x81\xA6"},
          {"Arabic letter mark",
           "a\xD8\x9C"
           "b",
           "\xD8\x9C"},
          {"byte order mark",
           "\xEF\xBB\xBF"
           "a",
           "\xEF\xBB\xBF"},
          {"no width",
           "a\xE2\x80\x8B"
           "b",
           "\xE2\x80\x8B"},
          {"line separator",
           "a\xE2\x80\xA8"
           "b",
           "\xE2\x80\xA8"},
          {"noncharacter",
           "a\xEF\xBF\xBE"
           "b",
           "\xEF\xBF\xBE"},
          {"tag",
           "a\xF3\xA0\x80\x81"
           "b",
           "\xF3\xA0\x80\x81"},
          {"new lines", "a\nstop: b\r\nc", "\n"},
          {"tab", "a\tb", "\t"},
          {"NUL", std::string("a\0b", 3), std::string(1, '\0')},
          {"formula", "=cmd|' /C calc'!A0", ""},
          {"formula: plus", "+1+1", ""},
          {"formula: minus", "-1+1", ""},
          {"formula: at", "@SUM(1)", ""},
          {"formula after blanks", " \t=1+1", "\t"},
          {"formula, full width",
           "\xEF\xBC\x9D"
           "1+1",
           ""},
          {"cells", "a,b;c\td", "\t"},
          {"lone surrogate",
           "a\xED\xA0\x80"
           "b",
           "\xED\xA0\x80"},
          {"overlong",
           "a\xC0\xAF"
           "b",
           "\xC0\xAF"},
          {"cut short", "a\xE2\x82", "\xE2\x82"},
          {"no UTF-8",
           "a\xFF\xFE"
           "b",
           "\xFF"},
          {"beyond Unicode",
           "a\xF4\x90\x80\x80"
           "b",
           "\xF4\x90\x80\x80"},
          {"very long", std::string(100'000, 'x') + "\xC3\xA9", ""},
          {"very long, three bytes each",
           [] {
             std::string text;
             for (int i = 0; i < 30'000; ++i) text += "\xE2\x82\xAC";
             return text;
           }(),
           ""},
          {"of many scripts", "Kn\xC3\xBCpfer \xD7\xA9\xD7\x9C \xE6\xA8\x82 \xF0\x9D\x84\x9E", ""},
          {"empty", "", ""}};
}

}  // namespace sagitta::test
