#pragma once

/// A hand at the real program: the viewer's own window on an X server, driven through its own input queue, by the names
/// of its widgets. What a hand could not do is an error: clicking what is hidden, disabled or not there.

#include <GLFW/glfw3.h>

#include <filesystem>
#include <memory>
#include <string>

#include "app/App.hpp"
#include "window/Window.hpp"

namespace sagitta::test {

/// Starts an X server of our own for the test program when none is given. Returns false when there is none to start.
bool have_display();

/// A folder that goes away with its owner.
struct Folder {
  Folder();
  ~Folder();
  std::filesystem::path path;
};

struct HandSpec {
  std::string board;  ///< a preset's name: its file is copied into the folder and opened
  int width = 1280, height = 800;
  bool first_run = false;  ///< leave the first-run page to come
  bool debug = true;
  bool settle = true;  ///< wait until everything is drawn
  bool desktop_dialogs = false;
};

class Hand {
 public:
  explicit Hand(const HandSpec& spec = {"heron-six"});

  viewer::Desk& desk() { return app_->desk(); }
  viewer::App& app() { return *app_; }
  const Board& board() { return desk().document.board(); }
  std::filesystem::path folder() const { return folder_.path; }
  std::filesystem::path file() const { return file_; }

  void frames(int count);
  /// Sleeps as the program would, at most so long, then draws one frame.
  void rest_and_frame(double most);
  /// Frames until nothing goes on any more; throws after the seconds.
  void wait(double seconds = 60);
  /// Frames until it holds; throws after the seconds.
  void until(const std::function<bool()>& holds, double seconds = 60);

  /// The widget as a hand sees it, scrolled to when it is out of sight. Throws when it is not there or stays hidden.
  viewer::Seen see(const std::string& name);
  bool sees(const std::string& name);
  std::string text(const std::string& name) { return see(name).text; }
  void click(const std::string& name);
  void click_at(float x, float y);
  /// Presses the right button there and lets it go.
  void right_click_at(float x, float y);
  /// The same in the middle of a widget.
  void right_click(const std::string& name);
  void drag(const std::string& name, float dx, float dy = 0, bool release = true);
  void drag_from(float x, float y, float dx, float dy, bool release = true);
  void right_drag(float x, float y, float dx, float dy);
  void release();
  void move(float x, float y);
  void press(int key, int mods = 0);
  /// Shift goes down and stays there, or comes up again.
  void hold_shift(bool down = true);
  void type(const std::string& text);
  /// Clicks a value, types over it, presses Enter.
  void enter(const std::string& field, const std::string& text);
  /// Opens a group of decisions, from 1.
  void open_group(int number);
  void choose(const std::string& field, const std::string& option);
  void drop(const std::filesystem::path& path);
  void close();
  /// Any event at all, as the window's callbacks would push it.
  void push(viewer::InputEvent event) { queue_.push(std::move(event)); }
  void wheel(float steps, float x, float y);
  void resize(int width, int height);

  /// Share of pixels that differ from an earlier picture by more than a shade.
  static double changed(const std::vector<std::uint8_t>& a, const std::vector<std::uint8_t>& b);
  std::vector<std::uint8_t> picture();

 private:
  void button(bool down, int which = 0);
  Folder folder_;
  std::filesystem::path file_;
  viewer::InputQueue queue_;
  int held_ = 0;  ///< modifiers
  std::unique_ptr<viewer::Window> window_;
  std::unique_ptr<viewer::App> app_;
};

std::string text_of(const std::filesystem::path& file);
void write(const std::filesystem::path& file, const std::string& text);

}  // namespace sagitta::test
