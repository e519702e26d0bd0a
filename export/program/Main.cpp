/// The program `sagitta`: the commands that need no geometry kernel; of the others it knows the names.

#include "cad/Interrupt.hpp"
#include "program/Guarded.hpp"
#include "program/KernelWord.hpp"
#include "program/RunCommand.hpp"

namespace {

using namespace sagitta;

/// In the list of commands; `main` does not come here with one.
AddCommand listed(const KernelWord& word) {
  return [&word](CLI::App& program) {
    return Command{program.add_subcommand(word.name, word.help), [] { return exit_fault; }};
  };
}

}  // namespace

int main(int argc, char** argv) {
  if (needs_kernel(argc, argv)) return become_kernel_program(argv);
  make_file_limit_an_error();
  return guarded([argc, argv] { return run_command(listed(export_word), listed(trial_word), argc, argv); });
}
