/// The program `sagitta-solid`: all commands, those that need the geometry kernel among them. `sagitta` becomes it for
/// these, and for its manual, which lists the options of all.

#include "cad/Interrupt.hpp"
#include "input/NeckReply.hpp"
#include "program/KernelGuarded.hpp"
#include "program/RunCommand.hpp"

namespace {

using namespace sagitta;

int run(int argc, char** argv) {
  CLI::App program{program_description};
  introduce(program);
  const Cancel cancel = catch_interrupts();
  const Command commands[] = {check_command(program),    frets_command(program),   export_command(program, cancel),
                              new_command(program),      presets_command(program), keys_command(program),
                              findings_command(program), compare_command(program), trial_command(program, cancel),
                              rescue_command(program)};
  return run_command(program, commands, argc, argv);
}

}  // namespace

int main(int argc, char** argv) {
  if (const auto code = run_as_neck_reader(argc, argv)) return *code;
  return kernel_guarded([argc, argv] { return run(argc, argv); });
}
