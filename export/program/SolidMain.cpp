/// The program `sagitta-solid`: all commands, those that need the geometry kernel among them. `sagitta` becomes it for
/// these, and for its manual, which lists the options of all.

#include "cad/Interrupt.hpp"
#include "input/NeckReply.hpp"
#include "program/KernelGuarded.hpp"
#include "program/RunCommand.hpp"

namespace {

using namespace sagitta;

int run(int argc, char** argv) {
  const Cancel cancel = catch_interrupts();
  return run_command([&](CLI::App& program) { return export_command(program, cancel); },
                     [&](CLI::App& program) { return trial_command(program, cancel); }, argc, argv);
}

}  // namespace

int main(int argc, char** argv) {
  if (const auto code = run_as_neck_reader(argc, argv)) return *code;
  return kernel_guarded([argc, argv] { return run(argc, argv); });
}
