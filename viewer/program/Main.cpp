/// The program `sagitta-viewer`: opens a window on a board, or draws one picture of it without any display.

#include <CLI/CLI.hpp>
#include <cstdio>
#include <iostream>

#include "app/App.hpp"
#include "app/Shot.hpp"
#include "document/Folders.hpp"
#include "input/NeckReply.hpp"
#include "manual/Manual.hpp"
#include "program/ViewerManual.hpp"
#include "solid/Failure.hpp"
#include "text/TerminalText.hpp"
#include "window/Window.hpp"

namespace {

using namespace sagitta;
using namespace sagitta::viewer;

constexpr int no_display = 1, usage = 2;

/// "1280x800" -> width and height.
bool read_size(const std::string& text, int& width, int& height) {
  char rest = 0;
  return std::sscanf(text.c_str(), "%dx%d%c", &width, &height, &rest) == 2 && width >= 16 && height >= 16 &&
         width <= 16384 && height <= 16384;
}

int open_window(const std::string& board) {
  InputQueue queue;
  AppSpec spec;
  spec.board = board;
  spec.settings = settings_folder(), spec.state = state_folder();
  Window window({}, queue);
  App app(spec, &window, queue);
  while (!app.finished()) {
    if (!app.only_looks()) app.frame();
    window.wait(app.rest());
  }
  return 0;
}

/// What the command line says.
struct Said {
  ShotSpec shot;
  std::string size = "1280x800";
};

void add_shot_options(CLI::App& line, Said& said) {
  ShotSpec& shot = said.shot;
  auto* file = line.add_option("--shot", shot.file, "draw one picture into this PNG file, without a window")
                   ->type_name("FILE.png");
  line.add_option("--size", said.size, "of the picture, pixels")->type_name("WxH")->needs(file);
  line.add_option("--stage", shot.stage, "blank, pocketed, radiused, slotted, board or finished")
      ->type_name("NAME")
      ->needs(file);
  line.add_option("--view", shot.view, "bench, above, below, bass-edge, treble-edge, nut-end or heel-end")
      ->type_name("NAME")
      ->needs(file);
  auto* window = line.add_flag("--window", shot.window, "the whole window with its panels instead of the board alone")
                     ->needs(file);
  line.add_option("--panel", shot.panel, "of the window, only this panel: Decisions, Board, Stages, Checks")
      ->type_name("NAME")
      ->needs(window);
  line.add_flag("--dark", shot.dark, "dark colours")->needs(file);
  line.add_option("--text", shot.text_size, "text size, 1 is usual")
      ->type_name("SIZE")
      ->check(CLI::Range(least_text, most_text))
      ->needs(file);
  line.add_option("--cut", shot.cut, "cut the board across at this x, mm")->type_name("X")->needs(file);
  line.add_option("--decision", shot.decision, "the group of decisions that is open, 1 to 9; 0 for none")
      ->type_name("NUMBER")
      ->check(CLI::Range(0, 9))
      ->needs(file);
  line.add_option("--do", shot.commands, "run this command first, by its name; may be repeated")
      ->type_name("COMMAND")
      ->allow_extra_args(false)
      ->needs(file);
}

/// For packagers: the manual page and what shells complete, written from the same table as the help.
void add_manual(CLI::App& line) {
  line.add_option_function<std::string>(
          "--manual",
          [&line](const std::string& form) {
            std::cout << manual_text(viewer_table(line), form);
            throw CLI::Success();
          },
          "print the manual page (man), or what a shell completes (bash, zsh, fish)")
      ->type_name("FORM")
      ->check(CLI::IsMember(manual_forms()));
}

/// Draws the picture that was asked for, or opens the window; returns the exit code.
int show(Said& said) {
  ShotSpec& shot = said.shot;
  if (shot.decision >= 0) --shot.decision;
  if (!read_size(said.size, shot.width, shot.height)) {
    std::cerr << "sagitta-viewer: --size is width x height in pixels, each 16 to 16384: --size 1280x800\n";
    return usage;
  }
  if ((!shot.stage.empty() && !stage_named(shot.stage)) || (!shot.view.empty() && !view_named(shot.view))) {
    std::cerr << "sagitta-viewer: there is no such stage or view. See sagitta-viewer --help\n";
    return usage;
  }
  int code = 0;
  const auto wrong = failure_of([&] { code = shot.file.empty() ? open_window(shot.board) : make_shot(shot); });
  if (!wrong) return code;
  std::cerr << "sagitta-viewer: " << terminal_text(*wrong) << "\n";
  return no_display;
}

}  // namespace

int main(int argc, char** argv) {
  if (const auto code = run_as_neck_reader(argc, argv)) return *code;
  CLI::App line("See and shape a fretboard. Without a picture to draw it opens a window.", "sagitta-viewer");
  line.set_version_flag("--version", std::string("sagitta-viewer ") + SAGITTA_VERSION);
  Said said;
  line.add_option("BOARD", said.shot.board, "board file to open");
  add_shot_options(line, said);
  add_manual(line);
  try {
    line.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    return line.exit(error) == 0 ? 0 : usage;
  }
  return show(said);
}
