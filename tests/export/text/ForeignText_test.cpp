#include "text/ForeignText.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "board/SourceText.hpp"
#include "export/CommandLine.hpp"
#include "export/HostileText.hpp"
#include "text/CsvRow.hpp"
#include "text/DxfString.hpp"
#include "text/Markup.hpp"
#include "text/PdfText.hpp"
#include "text/StepString.hpp"
#include "text/TerminalText.hpp"

/// Every border against the one table of hostile texts; what a border made is read by a program that is not ours.

namespace sagitta::test {
namespace {

using nlohmann::json;

bool is_well_formed(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = utf8_length(text);
    if (length == 0) return false;
    text.remove_prefix(length);
  }
  return true;
}

bool is_printable_ascii(const std::string& text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c >= 0x20 && c < 0x7F; });
}

bool holds(const std::string& text, const std::string& harm) {
  return !harm.empty() && text.find(harm) != std::string::npos;
}

/// What a line of Python makes of a file: the value of `expression`, where `data` are the file's bytes.
json read_by_python(const fs::path& file, const std::string& imports, const std::string& expression) {
  const Outcome outcome =
      shell("/usr/bin/python3 -c 'import json, sys, " + imports + "\ndata = open(sys.argv[1], \"rb\").read()\n" +
            "print(json.dumps(" + expression + "))' '" + file.string() + "'");
  EXPECT_EQ(outcome.code, 0) << outcome.err;
  return json::parse(outcome.out, nullptr, false);
}

TEST(ForeignText, IsVisibleAndWellFormedAfterwards) {
  for (const auto& [what, text, harm] : hostile_texts()) {
    const std::string seen = visible_text(text);
    EXPECT_TRUE(is_well_formed(seen)) << what;
    EXPECT_FALSE(holds(seen, harm)) << what;
    EXPECT_EQ(visible_text(seen), seen) << what;
    if (harm.empty()) {
      EXPECT_EQ(seen, text) << what << ": nothing of it needs to be changed";
    }
  }
}

// Unicode 15, table 3-7: the ill-formed sequences of its examples 3-8 to 3-11 and how many bytes they have.
TEST(ForeignText, TakesMalformedBytesOneByOne) {
  for (const auto& [text, bytes] :
       {std::pair("\xC0\xAF\xE0\x80\xBF\xF0\x81\x82", 8), std::pair("\xED\xA0\x80\xED\xBF\xBF", 6),
        std::pair("\xF4\x91\x92\x93\xFF", 5), std::pair("\xE1\x80\xE2\xF0\x91\x92\xF1\xBF", 8)}) {
    std::string_view rest = text;
    int taken = 0;
    for (; !rest.empty(); ++taken) {
      const ForeignCharacter next = first_character(rest);
      EXPECT_EQ(next.manner, Manner::malformed);
      EXPECT_EQ(next.bytes, 1U);
      rest.remove_prefix(next.bytes);
    }
    EXPECT_EQ(taken, bytes);
  }
  EXPECT_EQ(first_character("\xF0\x9D\x84\x9E").code, 0x1D11EU);
  EXPECT_EQ(first_character("\xE2\x80\x8D").manner, Manner::shown) << "a joiner is part of words";
}

TEST(ForeignText, OnATerminalIsOneLineAndCommandsNothing) {
  for (const auto& [what, text, harm] : hostile_texts()) {
    const std::string line = terminal_text(text);
    EXPECT_TRUE(is_well_formed(line)) << what;
    EXPECT_FALSE(holds(line, harm)) << what;
    EXPECT_EQ(visible_text(line), line) << what;
    EXPECT_EQ(terminal_text(line), line) << what;
  }
  EXPECT_EQ(terminal_text("a\x1b[2J\xC2\x9B\xE2\x80\xAE\xFF\n"), "a\\u001B[2J\\u009B\\u202E\\xFF\\u000A");
  EXPECT_EQ(terminal_text("\xF3\xA0\x80\x81"), "\\U000E0001");
}

TEST(ForeignText, InMarkupIsReadBackAsItIsSeen) {
  const ScratchFolder scratch;
  std::string page = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<page>";
  json wanted = json::array();
  for (const HostileText& each : hostile_texts()) {
    page += "<t double=\"" + markup_text(each.text) + "\" single='" + markup_text(each.text) + "'>" +
            markup_text(each.text) + "</t>";
    wanted.push_back({visible_text(each.text), visible_text(each.text), visible_text(each.text)});
  }
  write_file(scratch / "page.xml", page + "</page>\n");
  EXPECT_EQ(shell("xmllint --huge --noout '" + (scratch / "page.xml").string() + "'").code, 0);
  EXPECT_EQ(read_by_python(scratch / "page.xml", "xml.etree.ElementTree as tree",
                           "[[t.get(\"double\"), t.get(\"single\"), t.text or \"\"] for t in tree.fromstring(data)]"),
            wanted);
}

// The signs are those that OWASP's page on CSV injection lists.
TEST(ForeignText, InACellIsNoFormula) {
  const ScratchFolder scratch;
  std::string table;
  const std::vector<HostileText> texts = hostile_texts();
  for (const HostileText& each : texts) table += CsvRow().text(each.text).whole(7).line();
  write_file(scratch / "table.csv", table);
  const json rows =
      read_by_python(scratch / "table.csv", "csv, io", "list(csv.reader(io.StringIO(data.decode(), newline=\"\")))");
  ASSERT_EQ(rows.size(), texts.size());
  for (std::size_t i = 0; i < texts.size(); ++i) {
    ASSERT_EQ(rows[i].size(), 2U) << texts[i].what;
    std::string cell = rows[i][0];
    EXPECT_EQ(rows[i][1], "7") << texts[i].what;
    if (texts[i].what.starts_with("formula")) {
      ASSERT_TRUE(cell.starts_with("'")) << texts[i].what;
      cell.erase(0, 1);
    }
    EXPECT_EQ(cell, visible_text(texts[i].text)) << texts[i].what;
  }
}

// \U+XXXX is how DXF writes what is not ASCII; ezdxf decodes it.
TEST(ForeignText, InADxfFileIsShortAsciiAndReadBackAsItIsSeen) {
  const ScratchFolder scratch;
  const std::vector<HostileText> texts = hostile_texts();
  std::string lines;
  for (const HostileText& each : texts) {
    const std::string value = dxf_string(each.text);
    EXPECT_TRUE(is_printable_ascii(value)) << each.what;
    EXPECT_LE(value.size(), longest_dxf_value) << each.what;
    lines += value + "\n";
  }
  write_file(scratch / "values", lines);
  const json read = read_by_python(scratch / "values", "ezdxf.lldxf.encoding as e",
                                   "[e.decode_dxf_unicode(line) for line in data.decode().split(\"\\n\")]");
  ASSERT_EQ(read.size(), texts.size() + 1);
  for (std::size_t i = 0; i < texts.size(); ++i) {
    if (!texts[i].harm.empty() || texts[i].text.size() > 50) continue;
    std::string seen = texts[i].text;
    if (const auto at = seen.find("\xF0\x9D\x84\x9E"); at != std::string::npos) seen.replace(at, 4, "?");
    EXPECT_EQ(read[i], seen) << texts[i].what;
  }
}

// ISO 10303-21, 6.4.3: only these characters stand in a string, and an apostrophe stands twice.
TEST(ForeignText, InAStepFileStaysInItsString) {
  for (const auto& [what, text, harm] : hostile_texts()) {
    const std::string value = step_string(text);
    EXPECT_TRUE(is_printable_ascii(value)) << what;
    for (std::size_t at = 0; (at = value.find('\'', at)) != std::string::npos; at += 2)
      EXPECT_EQ(value.substr(at, 2), "''") << what;
  }
}

TEST(ForeignText, OnAPageIsShortAndWellFormed) {
  for (const auto& [what, text, harm] : hostile_texts()) {
    const std::string seen = pdf_text(text);
    EXPECT_TRUE(is_well_formed(seen)) << what;
    EXPECT_FALSE(holds(seen, harm)) << what;
    EXPECT_LE(seen.size(), 1010U) << what;
    if (text.size() <= 1000 && harm.empty()) {
      EXPECT_EQ(seen, text) << what;
    }
  }
}

}  // namespace
}  // namespace sagitta::test
