#pragma once

/// Pictures of the window and of its panels, written without a display.

#include <string>
#include <vector>

namespace sagitta::viewer {

struct ShotSpec {
  std::string board, file;
  int width = 1280, height = 800;
  std::string stage, view;  ///< names; "" for the finished outline and the bench
  bool window = false;      ///< the whole window with its panels instead of the board alone
  std::string panel;        ///< with the window: only the rectangle of this panel or dialog, by its name: "Stages"
  bool dark = false;
  double text_size = 1;
  int decision = -2;                  ///< with the window: the group that is open, from 0; -2 leaves it
  double cut = -1e9;                  ///< with a cutting plane at this x, mm
  std::vector<std::string> commands;  ///< run before drawing, by their names: "height shade"
};

/// Draws a picture without a display and writes it as PNG. Returns the program's exit code: 0, 2 for a board that
/// cannot be read or built, 3 when the file cannot be written. Says what is wrong on the error output.
int make_shot(const ShotSpec& spec);

}  // namespace sagitta::viewer
