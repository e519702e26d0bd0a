// Drawings that are refused, each with a message that says where and what to do.

#include <chrono>

#include "Drawing.hpp"

namespace sagitta::test {
namespace {

struct Case {
  const char* name;
  std::string text;
  const char* said;
};

std::string nested(int depth) {
  std::string open, close;
  for (int i = 0; i < depth; ++i) {
    open += "<g>";
    close += "</g>";
  }
  return open + "<circle r='5'/>" + close;
}

std::string copies() {
  std::string text = "<defs><rect id='a0' width='1' height='1'/>";
  for (int i = 1; i < 25; ++i) {
    const std::string from = "<use href='#a" + std::to_string(i - 1) + "'/>";
    text += "<g id='a" + std::to_string(i) + "'>" + from + from + "</g>";
  }
  return text + "</defs><use href='#a24'/>";
}

const Case cases[] = {
    {"empty", "", "not sound XML"},
    {"no xml", "reeds and waves", "not sound XML"},
    {"cut off", "<svg><g>", "not sound XML"},
    {"not svg", "<html/>", "not <svg>"},
    {"entities", "<!DOCTYPE svg [<!ENTITY a 'aaaa'>]>\n<svg>&a;</svg>", "entities"},
    {"style sheet of another file", "<?xml-stylesheet href='a.css'?><svg/>", "another file"},
    {"import", page("<style>@import url(a.css);</style>"), "another file"},
    {"use from outside", page("<use xlink:href='birds.svg#heron'/>"), "outside the file"},
    {"picture from outside", page("<image xlink:href='file:///etc/passwd'/>"), "outside the file"},
    {"script from outside", page("<script xlink:href='http://example.org/a.js'/>"), "outside the file"},
    {"too deep", page(nested(65)), "64 deep"},
    {"copies itself", page("<g id='a'><use href='#a'/></g>"), "64 deep"},
    {"copies of copies", page(copies()), "200,000"},
    {"path without a moveto", page("<path d='L 5 5'/>"), "must begin with M"},
    {"path with a word", page("<path d='M 0 0 L heron'/>"), "a number was expected"},
    {"path cut off", page("<path d='M 0 0 L 5'/>"), "a number was expected"},
    {"path with an unknown letter", page("<path d='M 0 0 X 5 5'/>"), "a path command was expected"},
    {"bad flag", page("<path d='M 0 0 A 5 5 0 2 0 5 5'/>"), "a flag"},
    {"huge number", page("<path d='M 0 0 L 1e300 5'/>"), "a number was expected"},
    {"odd points", page("<polygon points='0,0 1'/>"), "a number was expected"},
    {"bad length", page("<rect width='wide' height='5'/>"), "no length"},
    {"font length", page("<rect width='3em' height='5'/>"), "no length"},
    {"negative size", page("<circle r='-5'/>"), "negative"},
    {"bad transform", page("<g transform='twist(3)'><circle r='5'/></g>"), "twist(3)"},
    {"transform that runs away", page("<g transform='scale(1e9)'><g transform='scale(1e9)'><circle r='5'/></g></g>"),
     "more than can be drawn"},
    {"a kilometre", page("<circle r='1e7'/>"), "kilometre"},
    {"no size", "<svg viewBox='0 0 0 10'/>", "viewBox"},
    {"nonsense size", "<svg width='wide'/>", "no size"},
};

TEST(Refused, SaysWhy) {
  for (const Case& one : cases) {
    const auto read = svg_artwork(one.text);
    const Faults* faults = std::get_if<Faults>(&read);
    ASSERT_TRUE(faults) << one.name;
    ASSERT_FALSE(faults->empty()) << one.name;
    EXPECT_NE(words(*faults).find(one.said), std::string::npos) << one.name << ": " << words(*faults);
    for (const Fault& fault : *faults) EXPECT_FALSE(fault.hint.empty()) << one.name;
  }
}

TEST(Refused, NamesTheLine) {
  const auto read = svg_artwork(page("<g>\n\n<path id='wing' d='M 0 0 L heron'/></g>"));
  EXPECT_NE(words(std::get<Faults>(read)).find("line 4, <path id=\"wing\">: d, character 9"), std::string::npos)
      << words(std::get<Faults>(read));
}

TEST(Refused, SixtyFourDeepIsStillRead) {
  EXPECT_EQ(good(svg_artwork(page(nested(63))), "63 groups and a circle").regions.size(), 1U);
}

TEST(Refused, LargerThanTheLimits) {
  EXPECT_NE(words(std::get<Faults>(svg_artwork(std::string(largest_drawing + 1, ' ')))).find("16 MiB"),
            std::string::npos);
  std::string path = "<path d='M0 0";
  for (std::size_t i = 0; i <= most_segments; ++i) path += "h1v1";
  EXPECT_NE(words(std::get<Faults>(svg_artwork(page(path + "z'/>")))).find("200,000 segments"), std::string::npos);
}

// A hostile drawing ends in a message, not in a long wait: every chord crosses every other.
TEST(Refused, ThousandsOfCrossingsEndSoon) {
  std::string path = "<path d='M0 0";
  for (int i = 0; i < 20000; ++i)
    path += i % 2 ? "L0 " + std::to_string(i) + ".5" : "L100 " + std::to_string(20000 - i);
  const auto start = std::chrono::steady_clock::now();
  const auto read = svg_artwork(page(path + "z'/>"));
  EXPECT_LT(std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count(), 30);
  ASSERT_TRUE(std::holds_alternative<Faults>(read));
  EXPECT_NE(words(std::get<Faults>(read)).find("cross each other too often"), std::string::npos);
}

}  // namespace
}  // namespace sagitta::test
