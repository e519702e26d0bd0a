#include "app/Shot.hpp"

#include <unistd.h>

#include <algorithm>
#include <iostream>

#include "app/App.hpp"
#include "app/Commands.hpp"
#include "decisions/ChecksPanel.hpp"
#include "document/WholeFile.hpp"
#include "paper/PngFile.hpp"
#include "paper/ShadedPicture.hpp"
#include "text/TerminalText.hpp"
#include "window/Window.hpp"

namespace sagitta::viewer {

namespace {

constexpr int most_frames = 4000;

void print(const std::vector<Problem>& problems) {
  for (const Problem& p : problems) {
    const std::string place =
        p.file.empty() ? "" : p.file + ":" + std::to_string(p.line) + ":" + std::to_string(p.column) + ": ";
    std::cerr << terminal_text(place + p.key + (p.key.empty() ? "" : ": ") + p.message + (p.hint.empty() ? "" : " ") +
                               p.hint)
              << "\n";
  }
}

int write(const std::string& file, int width, int height, const std::vector<std::uint8_t>& rows) {
  const std::string why = write_whole(file, png_bytes({width, height, rows}));
  if (why.empty()) return 0;
  std::cerr << "sagitta-viewer: " << terminal_text(why) << "\n";
  return 3;
}

/// The pixels of a rectangle of the window.
std::vector<std::uint8_t> cropped(const std::vector<std::uint8_t>& rows, int width, int x, int y, int w, int h) {
  std::vector<std::uint8_t> out;
  for (int row = y; row < y + h; ++row) {
    const auto from = rows.begin() + 3 * (static_cast<std::ptrdiff_t>(row) * width + x);
    out.insert(out.end(), from, from + 3 * static_cast<std::ptrdiff_t>(w));
  }
  return out;
}

int write_window(App& app, const ShotSpec& spec) {
  if (spec.panel.empty()) return write(spec.file, spec.width, spec.height, app.snapshot());
  const Seen* seen = app.desk().ui.find(spec.panel);
  if (!seen)
    return std::cerr << "sagitta-viewer: there is no panel \"" << terminal_text(spec.panel) << "\" to be seen.\n", 2;
  const int x = std::max(static_cast<int>(seen->low.x), 0), y = std::max(static_cast<int>(seen->low.y), 0);
  const int w = std::min(static_cast<int>(seen->high.x), spec.width) - x;
  const int h = std::min(static_cast<int>(seen->high.y), spec.height) - y;
  if (w <= 0 || h <= 0) return std::cerr << "sagitta-viewer: the panel has no room at this size.\n", 2;
  return write(spec.file, w, h, cropped(app.snapshot(), spec.width, x, y, w, h));
}

/// Runs frames until everything is made and drawn.
void settle(App& app) {
  for (int i = 0; i < most_frames; ++i) {
    app.frame();
    if (app.settled() && i > 3) return;
    ::usleep(2000);
  }
}

}  // namespace

int make_shot(const ShotSpec& spec) {
  const HiddenContext context;
  InputQueue queue;
  AppSpec made;
  made.board = spec.board;
  made.plain = true;
  made.width = spec.width, made.height = spec.height;
  App app(made, nullptr, queue);
  Desk& desk = app.desk();
  if (!desk.versions.unopened.problems.empty()) return print(desk.versions.unopened.problems), 2;
  desk.settings.dark = spec.dark;
  desk.settings.text_size = spec.text_size;
  if (spec.decision > -2) desk.view.decision = spec.decision;
  if (const auto stage = stage_named(spec.stage)) desk.view.stage = *stage;
  if (const auto view = view_named(spec.view)) desk.view.camera = desk.view.camera.facing(*view);
  if (spec.cut > -1e8) desk.view.cut_across(true), desk.view.cut = spec.cut;
  desk.view.say("");
  app.whole_picture(!spec.window);
  settle(app);
  for (const std::string& command : spec.commands) {
    if (!command_named(command))
      return std::cerr << "sagitta-viewer: there is no command \"" << terminal_text(command) << "\".\n", 2;
    desk.ask(command);
    settle(app);
  }
  if (const auto problems = problems_of(desk.versions.unopened, desk.results); !problems.empty() && !spec.window)
    return print(problems), 2;
  if (spec.window) return write_window(app, spec);
  return write(spec.file, app.picture().width(), app.picture().height(), app.picture().pixels());
}

}  // namespace sagitta::viewer
