// Texts that are not fit to be parsed, syntax errors and repeated keys: each is the one problem.

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "SampleBoard.hpp"
#include "board/BoardFile.hpp"
#include "board/Edit.hpp"
#include "board/SourceText.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

Problem only_problem(const std::string& text) {
  const BoardFile file = sample::read(text);
  EXPECT_EQ(file.problems.size(), 1u) << sample::told(file.problems);
  return file.problems.empty() ? Problem() : file.problems[0];
}

void expect(const Problem& problem, int line, int column, FaultCode code) {
  EXPECT_EQ(std::pair(problem.line, problem.column), std::pair(line, column)) << problem.message;
  EXPECT_EQ(fault_word(problem.code), fault_word(code)) << problem.message;
}

TEST(Source, SyntaxErrorsStandAlone) {
  expect(only_problem("format = 1\nunits = \n"), 2, 9, FaultCode::not_well_formed);
  expect(only_problem("format = 1\n  nonsense\n[scale]\nlenght = 1"), 2, 11, FaultCode::not_well_formed);
  expect(only_problem("format = 1\nname = \"open\n"), 2, 13, FaultCode::not_well_formed);
  expect(only_problem("format = 1\n[scale\n"), 2, 7, FaultCode::not_well_formed);
}

TEST(Source, RepeatedKeysAndTables) {
  Problem problem = only_problem("format = 1\n[scale]\n  length = 648\n  length = 650\n");
  expect(problem, 4, 3, FaultCode::named_twice);
  EXPECT_EQ(problem.key, "length");
  problem = only_problem("format = 1\n[scale]\nlength = 648\n[scale]\nfrets = 22\n");
  expect(problem, 4, 1, FaultCode::named_twice);
}

TEST(Source, Encodings) {
  expect(only_problem("format = 1\nname = \"\xC3\xA4\xFF\"\n"), 2, 10, FaultCode::not_text);
  expect(only_problem(std::string("\xFF\xFE"
                                  "f\0",
                                  4)),
         1, 1, FaultCode::not_text);
  expect(only_problem(std::string("format = 1\n\0", 12)), 2, 1, FaultCode::not_text);
  expect(only_problem("name = \"\xED\xA0\x80\"\n"), 1, 9, FaultCode::not_text);
  expect(only_problem("name = \"\xC0\xAF\"\n"), 1, 9, FaultCode::not_text);
}

TEST(Source, AByteOrderMarkIsReadOverAndKept) {
  const std::string mark = "\xEF\xBB\xBF";
  const BoardFile file = sample::read(mark + sample::text);
  EXPECT_TRUE(file.sound()) << sample::told(file.problems);
  EXPECT_EQ(file.board, sample::read(sample::text).board);
  expect(only_problem(mark + sample::with("format = 1", "format = 2")), 1, 10, FaultCode::not_allowed);
  Board other = file.board;
  other.scale.frets = 21;
  EXPECT_EQ(edit_text(mark + sample::text, file.board, other), mark + edit_text(sample::text, file.board, other));
}

TEST(Source, SizeAndDepth) {
  expect(only_problem(std::string(largest_file + 1, '#')), 1, 1, FaultCode::too_many);
  EXPECT_FALSE(sample::read(std::string(largest_file, '#')).problems.empty());
  EXPECT_FALSE(look_over(std::string(largest_file, '#'), ""));
  const auto dotted = [](int dots) {
    std::string key = "a";
    for (int i = 0; i < dots; ++i) key += ".a";
    return key;
  };
  EXPECT_FALSE(look_over("x = 1\n" + dotted(32) + " = 1\n", ""));
  expect(only_problem("x = 1\n" + dotted(33) + " = 1\n"), 2, 1, FaultCode::too_many);
  expect(only_problem("[" + dotted(100000) + "]\n"), 1, 2, FaultCode::too_many);
  expect(only_problem("x = { " + dotted(40) + " = 1 }\n"), 1, 6, FaultCode::too_many);
  EXPECT_FALSE(look_over("x = \"" + dotted(100) + "\" # " + dotted(100) + "\ny = '''\n" + dotted(100) + "'''\n", ""));
  expect(only_problem("x = " + std::string(100000, '[') + "\n"), 1, 261, FaultCode::not_well_formed);
}

class Folder : public testing::Test {
 protected:
  Folder() : path_(fs::temp_directory_path() / ("sagitta_source_" + std::to_string(::getpid()))) {
    fs::create_directories(path_);
  }
  ~Folder() override { fs::remove_all(path_); }
  std::string write(const std::string& name, const std::string& text) {
    std::ofstream(path_ / name, std::ios::binary) << text;
    return (path_ / name).string();
  }
  fs::path path_;
};

TEST_F(Folder, MissingFilesAndFolders) {
  const auto missing = read_board((path_ / "nothing.toml").string());
  ASSERT_EQ(missing.problems.size(), 1u);
  EXPECT_EQ(missing.problems[0].code, FaultCode::no_such_file);
  const auto folder = read_board(path_.string());
  ASSERT_EQ(folder.problems.size(), 1u);
  EXPECT_EQ(folder.problems[0].code, FaultCode::is_folder);
  const auto device = read_board("/dev/null");
  ASSERT_EQ(device.problems.size(), 1u);
  EXPECT_EQ(device.problems[0].code, FaultCode::no_plain_file);
}

TEST_F(Folder, UnreadableFile) {
  const std::string file = write("locked.toml", sample::text);
  fs::permissions(file, fs::perms::none);
  // The superuser may read everything: look as nobody then.
  constexpr uid_t nobody = 65534;
  const bool super = ::geteuid() == 0;
  ASSERT_TRUE(!super || ::seteuid(nobody) == 0);
  const auto locked = read_board(file);
  ASSERT_TRUE(!super || ::seteuid(0) == 0);
  ASSERT_EQ(locked.problems.size(), 1u);
  EXPECT_EQ(locked.problems[0].code, FaultCode::forbidden);
}

TEST_F(Folder, ASoundFileIsRead) {
  const auto file = read_board(write("heron.toml", sample::text));
  EXPECT_TRUE(file.sound()) << sample::told(file.problems);
  EXPECT_EQ(file.board.folder, path_.string());
}

TEST_F(Folder, BasesAreMerged) {
  write("base.toml", sample::text);
  const auto file =
      read_board(write("own.toml", "format = 1\nbase = \"base.toml\"\nname = \"Crane\"\n[scale]\nlength = 630\n"));
  ASSERT_TRUE(file.sound()) << sample::told(file.problems);
  EXPECT_EQ(file.board.name, "Crane");
  EXPECT_EQ(file.board.base, "base.toml");
  EXPECT_EQ(file.board.scale.length, 630);
  EXPECT_EQ(file.board.scale.frets, 22);
  ASSERT_EQ(file.board.inlays.size(), 1u);
  EXPECT_EQ(file.places.at("scale.frets").file, (path_ / "base.toml").string());
}

TEST_F(Folder, ListsOfTablesReplaceTheBases) {
  write("base.toml", sample::text);
  const auto file = read_board(write("own.toml",
                                     "format = 1\nbase = \"base.toml\"\n[[inlays]]\nshape = \"block\"\nfrets = "
                                     "[12]\nalong = 9\nacross = 40\ndepth = 2\n"));
  ASSERT_TRUE(file.sound()) << sample::told(file.problems);
  ASSERT_EQ(file.board.inlays.size(), 1u);
  EXPECT_EQ(file.board.inlays[0].shape, InlayShape::block);
  const auto none = read_board(write("none.toml", "format = 1\nbase = \"base.toml\"\ninlays = []\n"));
  ASSERT_TRUE(none.sound()) << sample::told(none.problems);
  EXPECT_TRUE(none.board.inlays.empty());
}

TEST_F(Folder, AnotherFormPushesTheBasesAside) {
  write("base.toml", sample::text);
  const auto file = read_board(write("own.toml",
                                     "format = 1\nbase = \"base.toml\"\n[scale]\nbass = 686\ntreble = 648\n"
                                     "[board]\nnut_width = 43\nheel_width = 57\n[surface]\nprofile = \"single\"\n"));
  ASSERT_TRUE(file.sound()) << sample::told(file.problems);
  EXPECT_FALSE(file.board.scale.length);
  EXPECT_FALSE(file.board.board.edge_margin);
  EXPECT_FALSE(file.board.surface.radius_at_heel);
}

TEST_F(Folder, AWidthAtAFretStandsInForTheBasesHeelWidthAndKeepsItsNutWidth) {
  write("base.toml", sample::with("edge_margin = 3.2", "nut_width = 43\nheel_width = 57"));
  for (const char* nut : {"", "nut_width = 44\n"}) {
    const auto file = read_board(write(
        "own.toml", std::string("format = 1\nbase = \"base.toml\"\n[board]\n") + nut + "width_at_fret = [12, 52]\n"));
    ASSERT_TRUE(file.sound()) << sample::told(file.problems);
    EXPECT_EQ(file.board.board.nut_width, *nut ? 44 : 43);
    EXPECT_FALSE(file.board.board.heel_width);
    ASSERT_TRUE(file.board.board.width_at_fret);
  }
  write("base.toml", sample::with("edge_margin = 3.2", "nut_width = 43\nwidth_at_fret = [12, 52]"));
  const auto heel = read_board(write("own.toml", "format = 1\nbase = \"base.toml\"\n[board]\nheel_width = 57\n"));
  ASSERT_TRUE(heel.sound()) << sample::told(heel.problems);
  EXPECT_EQ(heel.board.board.nut_width, 43);
  EXPECT_FALSE(heel.board.board.width_at_fret);
  const auto margin =
      read_board(write("own.toml", "format = 1\nbase = \"base.toml\"\n[board]\nedge_margin = [3, 4]\n"));
  ASSERT_TRUE(margin.sound()) << sample::told(margin.problems);
  EXPECT_FALSE(margin.board.board.nut_width);
  EXPECT_FALSE(margin.board.board.width_at_fret);
}

TEST_F(Folder, WhatAFretlessBoardDoesNotUseOfItsBaseIsDropped) {
  std::string base = sample::with("[slots]", "[wire]\ncrown_width = 2\n[slots]");
  base = sample::with("width = 0.584", "width = 0.6\nends = \"blind\"\nedge_left = 2", base);
  base = sample::with("radius_at_heel = 406.4", "radius_at_heel = 406.4\nfall_from_fret = 14\nfall = 0.3", base);
  write("base.toml", sample::with("edge_margin = 3.2", "edge_margin = 3.2\nheel = \"fret\"", base));
  const auto file = read_board(write("own.toml",
                                     "format = 1\nbase = \"base.toml\"\n[scale]\nfrets = 0\n[board]\n"
                                     "past_last_fret = 480\n"));
  ASSERT_TRUE(file.sound()) << sample::told(file.problems);
  EXPECT_TRUE(file.board.inlays.empty());
  EXPECT_FALSE(file.board.side_dots);
  EXPECT_FALSE(file.board.surface.fall_from_fret);
  EXPECT_FALSE(file.board.surface.fall);
  EXPECT_EQ(file.board.board.heel, Heel::square);
  EXPECT_EQ(file.board.slots, Slots());
  EXPECT_EQ(file.board.wire, Wire());
  const auto lines = read_board(
      write("lines.toml", "format = 1\nbase = \"base.toml\"\n[slots]\ncut = \"lines\"\nline_thickness = 0.5\n"));
  ASSERT_TRUE(lines.sound()) << sample::told(lines.problems);
  EXPECT_EQ(lines.board.wire, Wire());
  EXPECT_EQ(lines.board.slots.width, 0.6);
  EXPECT_EQ(lines.board.inlays.size(), 1u);
}

TEST_F(Folder, EachFileHasItsOwnUnits) {
  write("base.toml", sample::text);
  const auto file =
      read_board(write("own.toml", "format = 1\nbase = \"base.toml\"\nunits = \"in\"\n[scale]\nlength = 25.5\n"));
  ASSERT_TRUE(file.sound()) << sample::told(file.problems);
  EXPECT_EQ(file.board.scale.length, 647.7);
  EXPECT_EQ(file.board.board.thickness, 6.35);
  const auto heir = read_board(write("heir.toml", "format = 1\nbase = \"own.toml\"\n[scale]\nlength = 25\n"));
  ASSERT_TRUE(heir.sound()) << sample::told(heir.problems);
  EXPECT_EQ(heir.board.scale.length, 635);
}

TEST_F(Folder, ProblemsInABasePointIntoIt) {
  const std::string base = write("base.toml", sample::with("thickness = 6.35", "thickness = 0.25"));
  const auto file = read_board(write("own.toml", "format = 1\nbase = \"base.toml\"\n"));
  ASSERT_EQ(file.problems.size(), 1u) << sample::told(file.problems);
  EXPECT_EQ(file.problems[0].file, base);
  EXPECT_EQ(file.problems[0].line, 15);
}

TEST_F(Folder, MissingBase) {
  const std::string own = write("own.toml", "format = 1\nbase = \"gone.toml\"\n[scale]\nfrets = 97\n");
  const auto file = read_board(own);
  ASSERT_EQ(file.problems.size(), 2u) << sample::told(file.problems);
  EXPECT_EQ(file.problems[0].key, "base");
  EXPECT_EQ(std::pair(file.problems[0].line, file.problems[0].column), std::pair(2, 8));
  EXPECT_EQ(file.problems[0].code, FaultCode::no_such_file);
  EXPECT_EQ(file.problems[1].key, "scale.frets");
}

TEST_F(Folder, BrokenBase) {
  const std::string base = write("base.toml", "format = 1\nx = \n");
  const auto file = read_board(write("own.toml", "format = 1\nbase = \"base.toml\"\n"));
  ASSERT_EQ(file.problems.size(), 1u) << sample::told(file.problems);
  EXPECT_EQ(file.problems[0].file, base);
}

TEST_F(Folder, BasesInACircle) {
  write("a.toml", "format = 1\nbase = \"b.toml\"\n");
  const std::string b = write("b.toml", "format = 1\nbase = \"./a.toml\"\n");
  const auto file = read_board((path_ / "a.toml").string());
  ASSERT_EQ(file.problems.size(), 1u) << sample::told(file.problems);
  EXPECT_EQ(file.problems[0].file, b);
  EXPECT_EQ(file.problems[0].code, FaultCode::bases_too_deep);
  const auto own = read_board(write("own.toml", "base = \"own.toml\"\n"));
  ASSERT_EQ(own.problems.size(), 1u) << sample::told(own.problems);
  EXPECT_EQ(own.problems[0].code, FaultCode::bases_too_deep);
}

TEST_F(Folder, BasesTooDeep) {
  for (int i = 0; i < 20; ++i)
    write("b" + std::to_string(i) + ".toml", "base = \"b" + std::to_string(i + 1) + ".toml\"\n");
  write("b20.toml", sample::text);
  EXPECT_TRUE(read_board((path_ / "b4.toml").string()).sound());
  const auto file = read_board((path_ / "b3.toml").string());
  ASSERT_EQ(file.problems.size(), 1u) << sample::told(file.problems);
  EXPECT_EQ(file.problems[0].code, FaultCode::bases_too_deep);
}

TEST_F(Folder, FilesOfABaseStartFromItsFolder) {
  fs::create_directories(path_ / "shared");
  write("shared/base.toml", sample::with("shape = \"dot\"", "shape = \"artwork\"\nfile = \"heron.svg\"\nalong = 20"));
  const auto file = read_board(write("own.toml", "format = 1\nbase = \"shared/base.toml\"\n"));
  ASSERT_TRUE(file.sound()) << sample::told(file.problems);
  EXPECT_EQ(file.board.inlays[0].file, "shared/heron.svg");
}

}  // namespace
}  // namespace sagitta
