#include <Standard_Failure.hxx>
#include <iostream>

#include "export/Folder.hpp"
#include "export/Interrupt.hpp"
#include "export/JobPart.hpp"
#include "export/NeckProcess.hpp"
#include "export/Repeat.hpp"
#include "export/program/Command.hpp"
#include "solid/Solid.hpp"

namespace {

using namespace sagitta;

int complain(const std::string& message, int code) {
  std::cerr << "sagitta: " << message << "\n";
  return code;
}

/// Runs the work. The one place where what the libraries throw is caught and put into words.
int guarded(const std::function<int()>& run) try {
  const int code = run();
  std::cout.flush();
  return std::cout ? code : complain("the output could not be written; is the disk full?", exit_failed);
} catch (const UsageError& error) {
  return complain(error.what(), exit_input);
} catch (const PartError& error) {
  return complain(error.what(), exit_input);
} catch (const RepeatError& error) {
  return complain(error.what(), exit_input);
} catch (const FolderError& error) {
  return complain(error.what(), exit_failed);
} catch (const Interrupted& error) {
  return complain(std::string(error.what()) + "; nothing was written", exit_failed);
} catch (const BuildError& error) {
  return complain("the solid of stage \"" + error.stage + "\" could not be made near " + error.feature +
                      ". The board file is sound; this is a fault of the program: please report it with the file.",
                  exit_failed);
} catch (const std::bad_alloc&) {
  return complain("there is not enough memory for this board", exit_failed);
} catch (const std::exception& error) {
  return complain("something went wrong that the program did not foresee: please report it with the board file. (" +
                      std::string(error.what()) + ")",
                  exit_failed);
} catch (const Standard_Failure&) {
  return complain("the geometry kernel gave up on this board: please report it with the board file", exit_failed);
}

int run(int argc, char** argv) {
  CLI::App program{"Sagitta makes exact solids of a fretboard from one board file."};
  program.name("sagitta");
  program.set_version_flag("--version", std::string("sagitta ") + SAGITTA_VERSION);
  program.require_subcommand(1);
  program.footer(
      "Begin with: sagitta new heron-six > my-board.toml, change it, then: sagitta export my-board.toml --to folder");
  const Cancel cancel = catch_interrupts();
  const Command commands[] = {check_command(program),    frets_command(program),   export_command(program, cancel),
                              new_command(program),      presets_command(program), keys_command(program),
                              findings_command(program), compare_command(program), trial_command(program, cancel)};
  try {
    program.parse(argc, argv);
  } catch (const CLI::Success& asked) {
    return program.exit(asked);
  } catch (const CLI::ParseError& error) {
    return complain(
        std::string(error.what()) + "\nsagitta --help lists the commands; sagitta COMMAND --help explains one",
        exit_input);
  }
  for (const Command& command : commands)
    if (command.app->parsed()) return command.run();
  return exit_input;
}

}  // namespace

int main(int argc, char** argv) {
  if (const auto code = run_as_neck_reader(argc, argv)) return *code;
  return guarded([argc, argv] { return run(argc, argv); });
}
