/// The programs as they are built: what keeps a memory fault from running foreign code. Read by `readelf` of GNU
/// binutils; what its lines mean stands in its manual and in the ELF specification, chapter 5 (dynamic linking).

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <string>

#include "Places.hpp"

namespace sagitta::test {
namespace {

using testing::ContainsRegex;
using testing::HasSubstr;
using testing::Not;

std::string answer_of(const std::string& command) {
  std::FILE* pipe = popen(command.c_str(), "r");
  if (pipe == nullptr) return "";
  std::string text;
  std::array<char, 4096> part{};
  for (std::size_t got; (got = std::fread(part.data(), 1, part.size(), pipe)) > 0;) text.append(part.data(), got);
  return pclose(pipe) == 0 ? text : "";
}

class Program : public testing::TestWithParam<std::string> {
 protected:
  static std::string elf(const std::string& what) {
    return answer_of("LC_ALL=C readelf --wide " + what + " '" + GetParam() + "'");
  }
};

TEST_P(Program, MayBeLoadedAnywhere) {
  EXPECT_THAT(elf("--file-header"), ContainsRegex("Type: +DYN"));
  EXPECT_THAT(elf("--dynamic"), ContainsRegex("FLAGS_1[^\n]* PIE"));
}

TEST_P(Program, KeepsItsJumpTablesReadOnly) {
  EXPECT_THAT(elf("--program-headers"), HasSubstr("GNU_RELRO"));
  EXPECT_THAT(elf("--dynamic"), ContainsRegex("FLAGS_1[^\n]* NOW"));
}

TEST_P(Program, HasAStackThatHoldsNoCode) {
  EXPECT_THAT(elf("--program-headers"), ContainsRegex("GNU_STACK [^\n]* RW  0x"));
}

TEST_P(Program, WatchesItsStack) { EXPECT_THAT(elf("--dyn-syms"), HasSubstr("__stack_chk_fail")); }

TEST_P(Program, ChecksTheLengthsThatItCopies) {
#ifdef SAGITTA_FORTIFIED
  EXPECT_THAT(elf("--dyn-syms"), ContainsRegex("__[a-z]+_chk@"));
#else
  GTEST_SKIP() << "built without the optimizer or with sanitizers, which check the same calls";
#endif
}

INSTANTIATE_TEST_SUITE_P(Each, Program, testing::Values(places::program(), places::solid_program(), places::viewer()));

/// The names of the kernel's libraries begin with TK (Open CASCADE's toolkits). The second program shows that the test
/// sees them.
TEST(Loading, TheKernelIsNoneOfTheProgramThatStartsFirst) {
  const auto needed = [](const std::string& program) {
    return answer_of("LC_ALL=C readelf --wide --dynamic '" + program + "' | grep NEEDED");
  };
  EXPECT_THAT(needed(places::program()), Not(HasSubstr("[libTK")));
  EXPECT_THAT(needed(places::program()), HasSubstr("[libc.so"));
  EXPECT_THAT(needed(places::solid_program()), HasSubstr("[libTK"));
}

}  // namespace
}  // namespace sagitta::test
