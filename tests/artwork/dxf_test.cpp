// DXF drawings written by another program (ezdxf) at test time, read back to the same areas; and bad ones by hand.

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>

#include "Drawing.hpp"
#include "Places.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;

/// The folder that draw_dxf.py has filled, once for all tests.
const fs::path& drawings() {
  static const fs::path folder = [] {
    const fs::path made = fs::temp_directory_path() / ("sagitta-dxf-" + std::to_string(std::random_device()()));
    fs::create_directories(made);
    const std::string command =
        "/usr/bin/python3 '" + places::tests() + "/artwork/draw_dxf.py' '" + made.string() + "'";
    if (std::system(command.c_str()) != 0) ADD_FAILURE() << command << " failed: is python3-ezdxf there (.ci/setup)?";
    return made;
  }();
  return folder;
}

std::vector<std::string> split(const std::string& line) {
  std::vector<std::string> parts;
  std::istringstream in(line);
  for (std::string part; std::getline(in, part, ',');) parts.push_back(part);
  parts.resize(5);
  return parts;
}

std::vector<std::string> sorted_words(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> all;
  for (std::string word; in >> word;) all.push_back(word);
  std::sort(all.begin(), all.end());
  return all;
}

TEST(Dxf, EnclosesWhatWasDrawn) {
  std::ifstream table(drawings() / "cases.csv");
  int count = 0;
  for (std::string row; std::getline(table, row); ++count) {
    const auto part = split(row);
    const std::string& name = part[0];
    const Artwork art = good(read_artwork(drawings() / name), name);
    expect_sound(art, name);
    // splines are within 1e-5 of their size; ezdxf's own chords within 1e-6 mm
    EXPECT_NEAR(area(art), std::stod(part[1]), 5e-5 * std::stod(part[1]) + 1e-9) << name;
    std::string colours;
    std::size_t outlines = 0;
    for (const DrawnRegion& region : art.regions) {
      colours += region.colour.substr(1) + " ";
      outlines += region.outlines.size();
    }
    const auto found = sorted_words(colours), wanted = sorted_words(part[2]);
    ASSERT_EQ(found.size(), wanted.size()) << name;
    for (std::size_t i = 0; i < found.size(); ++i) EXPECT_EQ(found[i], wanted[i]) << name;
    EXPECT_EQ(outlines, std::stoul(part[3])) << name;
    const std::string said = words(art.notes);
    if (part[4].empty())
      EXPECT_EQ(said, "") << name;
    else
      EXPECT_NE(said.find(part[4]), std::string::npos) << name << " says: " << said;
  }
  EXPECT_GE(count, 30);
  fs::remove_all(drawings());
}

struct Case {
  const char* name;
  std::string text;
  const char* said;
};

std::string entities(const std::string& inside, const std::string& blocks = "") {
  return "0\nSECTION\n2\nBLOCKS\n" + blocks + "0\nENDSEC\n0\nSECTION\n2\nENTITIES\n" + inside + "0\nENDSEC\n0\nEOF\n";
}

TEST(Dxf, RefusesWithAReason) {
  const std::string loop = "0\nBLOCK\n2\na\n10\n0\n20\n0\n0\nINSERT\n2\na\n0\nENDBLK\n";
  const std::string copies = "0\nBLOCK\n2\na\n0\nCIRCLE\n10\n0\n20\n0\n40\n1\n0\nENDBLK\n";
  const Case cases[] = {
      {"empty", "", "no SECTION"},
      {"not a DXF", "reeds\nand\nwaves\n", "a group code"},
      {"binary", std::string("0\nSECTION\0\1", 12), "binary form"},
      {"cut off", "0\nSECTION\n2\nENTITIES\n0\nLINE\n10", "cut off"},
      {"a word for a number", entities("0\nLINE\n10\nheron\n"), "line 14: a number was expected, not \"heron\""},
      {"a block that holds itself", entities("0\nINSERT\n2\na\n", loop), "64 deep"},
      {"a field of copies", entities("0\nINSERT\n2\na\n70\n30000\n71\n30000\n", copies), "copies counted"},
      {"a kilometre", entities("0\nCIRCLE\n10\n0\n20\n0\n40\n1e7\n"), "kilometre"},
  };
  for (const Case& one : cases) {
    const auto read = dxf_artwork(one.text);
    const Faults* faults = std::get_if<Faults>(&read);
    ASSERT_TRUE(faults) << one.name;
    EXPECT_NE(words(*faults).find(one.said), std::string::npos) << one.name << ": " << words(*faults);
    for (const Fault& fault : *faults) EXPECT_FALSE(fault.hint.empty()) << one.name;
  }
}

TEST(Dxf, SaysWhatItLeavesOut) {
  const Case cases[] = {
      {"unknown block", entities("0\nINSERT\n2\ngone\n"), "\"gone\" is not in the drawing"},
      {"an open chain, its middle first",
       entities("0\nLINE\n10\n10\n20\n0\n11\n20\n21\n0\n0\nLINE\n10\n0\n20\n0\n11\n10\n21\n0\n0\nLINE\n10\n20\n20\n"
                "0\n11\n30\n21\n0\n"),
       "from x = 30 mm, y = 0 mm to x = 0 mm, y = 0 mm"},
      {"hatch", entities("0\nHATCH\n8\n0\n"), "HATCH"},
      {"no radius", entities("0\nCIRCLE\n10\n0\n20\n0\n40\n0\n"), "without a radius"},
      {"tilted", entities("0\nCIRCLE\n10\n0\n20\n0\n40\n1\n210\n1\n220\n0\n230\n0\n"), "tilted"},
      {"mesh", entities("0\nPOLYLINE\n70\n64\n0\nSEQEND\n"), "mesh"},
      {"spline by points", entities("0\nSPLINE\n71\n3\n11\n0\n21\n0\n"), "only by points on it"},
      {"spline with bad knots", entities("0\nSPLINE\n71\n3\n40\n0\n10\n0\n20\n0\n"), "knots do not fit"},
  };
  for (const Case& one : cases) {
    const Artwork art = good(dxf_artwork(one.text), one.name);
    EXPECT_TRUE(art.regions.empty()) << one.name;
    EXPECT_NE(words(art.notes).find(one.said), std::string::npos) << one.name << ": " << words(art.notes);
  }
}

// 30 / 25.4 = 1.1811; ends are joined within 0.01 mm, 0.0004 in.
TEST(Dxf, TellsPlacesAndGapsInTheUnitsThatAreAskedFor) {
  const std::string text = entities("0\nLINE\n10\n0\n20\n0\n11\n30\n21\n0\n");
  const std::string notes = words(good(dxf_artwork(text, Units::inch), "an open line").notes);
  for (const char* said : {"x = 0 in", "x = 1.1811 in", "0.0004 in"})
    EXPECT_NE(notes.find(said), std::string::npos) << said << ": " << notes;
  EXPECT_EQ(notes.find(" mm"), std::string::npos) << notes;
}

}  // namespace
}  // namespace sagitta::test
