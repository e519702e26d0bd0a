/// The program `sagitta`: the commands that need no geometry kernel; of the others it knows the names.

#include "cad/Interrupt.hpp"
#include "program/Guarded.hpp"
#include "program/KernelWord.hpp"
#include "program/RunCommand.hpp"

namespace {

using namespace sagitta;

/// In the list of commands; `main` does not come here with one.
Command listed(CLI::App& program, const KernelWord& word) {
  return {program.add_subcommand(word.name, word.help), [] { return exit_fault; }};
}

int run(int argc, char** argv) {
  CLI::App program{program_description};
  introduce(program);
  const Command commands[] = {check_command(program),    frets_command(program),   listed(program, export_word),
                              new_command(program),      presets_command(program), keys_command(program),
                              findings_command(program), compare_command(program), listed(program, trial_word),
                              rescue_command(program)};
  return run_command(program, commands, argc, argv);
}

}  // namespace

int main(int argc, char** argv) {
  if (needs_kernel(argc, argv)) return become_kernel_program(argv);
  make_file_limit_an_error();
  return guarded([argc, argv] { return run(argc, argv); });
}
