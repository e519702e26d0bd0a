#pragma once

/// The commands of the program and its exit codes.

#include <CLI/CLI.hpp>
#include <functional>

#include "board/BoardFile.hpp"
#include "board/InputPath.hpp"
#include "paper/PdfBook.hpp"
#include "plane/Cancel.hpp"

namespace sagitta {

/// What the program's exit code means.
enum Exit : int {
  exit_good = 0,
  exit_stop = 1,     ///< check, export --refuse-stops: some finding says stop
  exit_input = 2,    ///< wrong usage, or a board that cannot be read or built
  exit_failed = 3,   ///< something could not be written, or was interrupted
  exit_fault = 4,    ///< a fault of the program: a result is not sound, and nothing was written
  exit_changed = 5,  ///< check --before: the next cut may be made, with changed numbers
};

/// An exit code as the manual explains it.
struct ExitMeaning {
  Exit code;
  const char* meaning;
};

inline constexpr ExitMeaning exit_meanings[] = {
    {exit_good, "all went well"},
    {exit_stop,
     "a finding says stop (`check`, `export --refuse-stops`), or the next cut must not be made (`check --before`)"},
    {exit_input, "wrong usage, a board that cannot be read or built, or nothing to write"},
    {exit_failed, "something could not be written, or the run was stopped"},
    {exit_fault, "a fault of the program: a result is not sound, and nothing was written"},
    {exit_changed, "`check --before`: the next cut may be made with the changed numbers that are printed"},
};

/// The command line was understood but asks for something that cannot be; what() says what to ask for instead.
struct UsageError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// One word of the command line: its options hang on `app`; `run` does the work and gives the exit code.
struct Command {
  CLI::App* app = nullptr;
  std::function<int()> run;
};

/// Adds --allow-outside to a command that reads a board; `chosen` must live as long as the command.
void add_outside_flag(CLI::App& app, Outside& chosen);

/// Adds --units to a command that prints lengths; `chosen` must live as long as the command.
void add_units_option(CLI::App& app, std::string& chosen, const std::string& help);
/// The file's board told in the units that --units chose; as it is when nothing was chosen.
BoardFile told_in(BoardFile file, const std::string& chosen);

/// "there is no preset "x" (did you mean y?)": of a word that is none of those known.
std::string unknown(const std::string& kind, const std::string& word, const std::vector<std::string>& known);

/// Each adds its word to the program.
Command check_command(CLI::App& program);
Command frets_command(CLI::App& program);
Command export_command(CLI::App& program, const Cancel& cancel);
Command presets_command(CLI::App& program);
Command new_command(CLI::App& program);
Command keys_command(CLI::App& program);
Command findings_command(CLI::App& program);
Command compare_command(CLI::App& program);
Command rescue_command(CLI::App& program);
Command trial_command(CLI::App& program, const Cancel& cancel);

/// The paper of that name. Throws UsageError.
Paper paper_wanted(const std::string& name);

}  // namespace sagitta
