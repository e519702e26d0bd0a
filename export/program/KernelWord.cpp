#include "program/KernelWord.hpp"

#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <string_view>

#include "input/NeckReply.hpp"
#include "program/Command.hpp"
#include "program/Guarded.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

bool reads_neck(const char* word) { return std::string_view(word) == neck_word; }

/// The kernel asks for memory in very many small pieces: the allocator of its parallel library gives them in less time
/// than the system's. Strangers' files are read with the system's, which checks more.
void choose_allocator() { ::setenv("MMGT_OPT", "2", 0); }

}  // namespace

bool needs_kernel(int argc, char** argv) {
  if (argc < 2) return false;
  const std::string_view word = argv[1];
  return word == export_word.name || word == trial_word.name || word.starts_with(manual_option) || reads_neck(argv[1]);
}

int become_kernel_program(char** argv) {
  std::error_code error;
  const fs::path own = fs::read_symlink("/proc/self/exe", error);
  const fs::path other = (own.parent_path() / SAGITTA_SOLID).lexically_normal();
  if (!reads_neck(argv[1])) choose_allocator();
  ::execv(other.c_str(), argv);
  return complain("the part of the program that makes solids cannot be started: " + other.string() +
                      " is missing or damaged; install Sagitta again",
                  exit_failed);
}

}  // namespace sagitta
