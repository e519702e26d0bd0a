#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "board/Writer.hpp"
#include "export/CommandLine.hpp"
#include "export/HostileText.hpp"
#include "text/ForeignText.hpp"

/// A board whose names are as hostile as the reader of boards lets them be (it refuses line breaks and the controls of
/// ASCII), exported whole; programs that are not ours read what was written.

namespace sagitta::test {
namespace {

using nlohmann::json;

const std::string hostile_name =
    "R&D <b>\"x'</b> \\U+0041 \xC2\x9B"
    "2J\xE2\x80\xAE ]]>";

/// Two sheets' materials differ in capital letters only, and one begins as a formula does.
const std::string shell_name = "=cmd|' /C calc'!A0 <&>", other_name = "=CMD|' /C calc'!A0 <&>";

class HostileBoard : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    scratch = new ScratchFolder;
    std::string text = bytes_of(preset_path("reed-tenor"));
    const std::size_t name = text.find("name = "), end = text.find('\n', name);
    text.replace(name, end - name, "name = " + sagitta::quoted(hostile_name));
    for (const auto& [fret, material] : {std::pair("4", shell_name), std::pair("6", other_name)})
      text += "\n[[inlays]]\nshape = \"dot\"\nfrets = [" + std::string(fret) +
              "]\ndiameter = 4\nshift_across = 8\ndepth = 1.2\nmaterial = " + sagitta::quoted(material) + "\n";
    write_file(*scratch / "board.toml", text);
    made = sagitta("export '" + (*scratch / "board.toml").string() + "' --to '" + (*scratch / "out").string() + "'");
  }
  static void TearDownTestSuite() { delete scratch; }
  static std::string at(const std::string& name) { return "'" + (*scratch / ("out/" + name)).string() + "'"; }
  static ScratchFolder* scratch;
  static Outcome made;
};
ScratchFolder* HostileBoard::scratch = nullptr;
Outcome HostileBoard::made;

TEST_F(HostileBoard, IsExported) { ASSERT_EQ(made.code, 0) << made.err; }

TEST_F(HostileBoard, HasAReadable3mfFile) {
  const Outcome model = shell(
      "/usr/bin/python3 -c 'import sys, zipfile\n"
      "sys.stdout.buffer.write(zipfile.ZipFile(sys.argv[1]).read(\"3D/3dmodel.model\"))' " +
      at("pieces.3mf"));
  ASSERT_EQ(model.code, 0) << model.err;
  write_file(*scratch / "model.xml", model.out);
  const std::string file = "'" + (*scratch / "model.xml").string() + "'";
  EXPECT_EQ(shell("xmllint --noout " + file).code, 0);
  const auto value = [&](const std::string& path) {
    return shell("xmllint --xpath \"string(" + path + ")\" " + file).out;
  };
  EXPECT_EQ(value("//*[local-name()='metadata'][@name='Title']"), visible_text(hostile_name) + " pieces\n");
  EXPECT_NE(shell("xmllint --xpath \"//*[local-name()='base']/@name\" " + file).out.find("=cmd"), std::string::npos);
}

TEST_F(HostileBoard, HasReadableDrawings) {
  EXPECT_EQ(shell("find " + at("") + " -name '*.svg' -print0 | xargs -0 -n 1 xmllint --noout").code, 0);
  const Outcome layers = shell(
      "/usr/bin/python3 -c 'import ezdxf, sys\nfor name in sys.argv[1:]:\n  doc = ezdxf.readfile(name)\n"
      "  all = [layer.dxf.name for layer in doc.layers]\n  assert len(all) == len({one.lower() for one in all}), all\n"
      "  used = {e.dxf.layer for e in doc.modelspace()}\n  print(len([u for u in used if "
      "u.startswith(\"piece-\")]))' " +
      at("board.dxf"));
  EXPECT_EQ(layers.code, 0) << layers.err;
}

TEST_F(HostileBoard, HasNoFormulaInItsTables) {
  const Outcome cells = shell(
      "/usr/bin/python3 -c 'import csv, sys\nfor name in sys.argv[1:]:\n  for row in csv.reader(open(name)):\n"
      "    for cell in row:\n      assert not cell.startswith((\"=\", \"+\", \"@\")), cell\n      print(cell)' " +
      at("pieces.csv"));
  EXPECT_EQ(cells.code, 0) << cells.err;
  EXPECT_NE(cells.out.find("'" + shell_name), std::string::npos);
}

TEST_F(HostileBoard, HasReadablePapers) {
  const Outcome html = shell("xmllint --html --noout " + at("job-sheet.html"));
  EXPECT_EQ(html.code, 0) << html.err;
  EXPECT_EQ(bytes_of(*scratch / "out/job-sheet.html").find("<b>"), std::string::npos);
  const Outcome words = shell("pdftotext " + at("job-sheet.pdf") + " -");
  EXPECT_EQ(words.code, 0) << words.err;
  EXPECT_NE(words.out.find("R&D <b>"), std::string::npos);
}

TEST_F(HostileBoard, CommandsNoTerminal) {
  const std::string board = "'" + (*scratch / "board.toml").string() + "'";
  write_file(*scratch / "bad.toml",
             bytes_of(*scratch / "board.toml") +
                 "[\"a\\u001b[2J\\u009b\\u202e\"]\nx = 1\n[materials.\"\\u001b]0;x\"]\ndensity = -1\n");
  const std::string bad = "'" + (*scratch / "bad.toml").string() + "'";
  fs::copy_file(*scratch / "bad.toml", *scratch / "\x1b[2J\xC2\x9B.toml");
  const std::string odd_path = "'" + (*scratch / "\x1b[2J\xC2\x9B.toml").string() + "'";
  for (const std::string& line :
       {"check " + board, "check " + bad, "frets " + board, "frets " + bad, "compare " + board + " " + bad,
        "compare " + board + " '" + preset_path("reed-tenor").string() + "'", "check " + odd_path,
        "check --json " + bad, "export " + odd_path + " --to x", std::string("check '/\x1b[2J'"),
        std::string("new '\x1b[2J'"), std::string("'\x1b[2J'")}) {
    const Outcome outcome = sagitta(line);
    for (const std::string& said : {outcome.out, outcome.err}) {
      std::string lines = said;
      std::erase(lines, '\n');
      EXPECT_EQ(visible_text(lines), lines) << line;
    }
    EXPECT_NE(outcome.out + outcome.err, "") << line;
  }
}

}  // namespace
}  // namespace sagitta::test
