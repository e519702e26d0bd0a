#include "package/Progress.hpp"

#include <unistd.h>

#include <cstdio>

#include "text/TerminalText.hpp"

namespace sagitta {
namespace {

constexpr std::chrono::milliseconds patience{500};
/// Back to the line's beginning and clear it (ECMA-48: CR, EL).
constexpr const char* clear_line = "\r\x1b[K";

}  // namespace

Progress::Progress(int steps) : terminal_(isatty(STDERR_FILENO) != 0), steps_(steps) {}

Progress::~Progress() {
  if (shown_) std::fputs(clear_line, stderr);
}

void Progress::step(const std::string& what) {
  ++done_;
  if (!terminal_ || std::chrono::steady_clock::now() - start_ < patience) return;
  std::fprintf(stderr, "%s%d of %d: %s", clear_line, done_, steps_, terminal_text(what).c_str());
  std::fflush(stderr);
  shown_ = true;
}

}  // namespace sagitta
