/// The program `sagitta-solid`: the commands that need the geometry kernel. `sagitta` becomes it.

#include "cad/Interrupt.hpp"
#include "input/NeckReply.hpp"
#include "program/KernelGuarded.hpp"
#include "program/RunCommand.hpp"

namespace {

using namespace sagitta;

int run(int argc, char** argv) {
  CLI::App program{"The commands of sagitta that make solids; call sagitta."};
  program.name("sagitta");
  program.require_subcommand(1);
  const Cancel cancel = catch_interrupts();
  const Command commands[] = {export_command(program, cancel), trial_command(program, cancel)};
  return run_command(program, commands, argc, argv);
}

}  // namespace

int main(int argc, char** argv) {
  if (const auto code = run_as_neck_reader(argc, argv)) return *code;
  return kernel_guarded([argc, argv] { return run(argc, argv); });
}
