#include "gui/Hand.hpp"

#include <signal.h>
#include <sys/prctl.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "Places.hpp"
#include "board/BoardFile.hpp"

namespace sagitta::test {

namespace fs = std::filesystem;
using viewer::InputEvent;

namespace {

double now() {
  using namespace std::chrono;
  return duration<double>(steady_clock::now().time_since_epoch()).count();
}

/// Starts Xvfb on a free display and waits for its number.
std::string start_server() {
  int report[2];
  if (::pipe(report) != 0) return "";
  const pid_t server = ::fork();
  if (server == 0) {
    ::prctl(PR_SET_PDEATHSIG, SIGTERM);
    ::close(report[0]);
    const std::string to = std::to_string(report[1]);
    if (!std::freopen("/dev/null", "w", stderr)) ::_exit(126);
    ::execlp("Xvfb", "Xvfb", "-displayfd", to.c_str(), "-screen", "0", "2600x1500x24", "-noreset", "-nolisten", "tcp",
             nullptr);
    ::_exit(127);
  }
  ::close(report[1]);
  std::string number;
  char c = 0;
  while (::read(report[0], &c, 1) == 1 && c != '\n') number += c;
  ::close(report[0]);
  return number.empty() ? "" : ":" + number;
}

InputEvent event(InputEvent::Kind kind) {
  InputEvent made;
  made.kind = kind;
  return made;
}

}  // namespace

bool have_display() {
  static const bool there = [] {
    if (std::getenv("SAGITTA_TEST_DISPLAY")) return ::setenv("DISPLAY", std::getenv("SAGITTA_TEST_DISPLAY"), 1) == 0;
    const std::string display = start_server();
    return !display.empty() && ::setenv("DISPLAY", display.c_str(), 1) == 0;
  }();
  return there;
}

Folder::Folder() {
  std::string name = (fs::temp_directory_path() / "sagitta-gui-XXXXXX").string();
  if (!::mkdtemp(name.data())) throw std::runtime_error("no temporary folder");
  path = name;
}
Folder::~Folder() {
  std::error_code trouble;
  fs::remove_all(path, trouble);
}

std::string text_of(const fs::path& file) {
  std::ostringstream text;
  text << std::ifstream(file, std::ios::binary).rdbuf();
  return text.str();
}
void write(const fs::path& file, const std::string& text) { std::ofstream(file, std::ios::binary) << text; }

Hand::Hand(const HandSpec& spec) {
  if (!have_display()) throw std::runtime_error("no X server: install xvfb");
  if (!spec.board.empty()) {
    file_ = folder_.path / (spec.board + ".toml");
    const fs::path presets = fs::path(places::source()) / "presets";
    fs::copy_file(presets / (spec.board + ".toml"), file_);
    for (const Inlay& inlay : read_board(file_.string()).board.inlays)
      if (!inlay.file.empty())
        fs::copy_file(presets / inlay.file, folder_.path / inlay.file, fs::copy_options::skip_existing);
  }
  viewer::AppSpec made;
  made.board = file_.string();
  made.settings = folder_.path / "config", made.state = folder_.path / "state";
  viewer::Settings settings;
  settings.way_shown = !spec.first_run, settings.desktop_dialogs = spec.desktop_dialogs;
  viewer::save_settings(made.settings, settings);
  viewer::WindowSpec window;
  window.width = spec.width, window.height = spec.height, window.debug = spec.debug;
  window_ = std::make_unique<viewer::Window>(window, queue_);
  app_ = std::make_unique<viewer::App>(made, window_.get(), queue_);
  if (spec.settle) wait();
}

void Hand::rest_and_frame(double most) {
  window_->wait(std::min(app_->rest(), most));
  if (!app_->only_looks()) app_->frame();
}

void Hand::frames(int count) {
  for (int i = 0; i < count; ++i) {
    window_->wait(0);
    app_->frame();
  }
}

void Hand::until(const std::function<bool()>& holds, double seconds) {
  const double end = now() + seconds;
  while (!holds()) {
    if (now() > end) throw std::runtime_error("waited in vain");
    frames(1);
    ::usleep(1000);
  }
}

void Hand::wait(double seconds) {
  frames(1);
  until([this] { return app_->settled(); }, seconds);
}

bool Hand::sees(const std::string& name) { return desk().ui.find(name) != nullptr; }

viewer::Seen Hand::see(const std::string& name) {
  until([&] { return queue_.empty(); });
  frames(1);
  const viewer::Seen* seen = desk().ui.find(name);
  for (int i = 0; i < 6 && seen && !seen->in_view; ++i) {
    desk().ui.reveal(name);
    frames(2);
    seen = desk().ui.find(name);
  }
  if (!seen) throw std::runtime_error("not there: " + name);
  if (!seen->in_view) throw std::runtime_error("stays hidden: " + name);
  return *seen;
}

void Hand::move(float x, float y) {
  InputEvent e = event(InputEvent::Kind::move);
  e.x = x, e.y = y;
  queue_.push(e);
}

void Hand::click_at(float x, float y) {
  move(x, y);
  button(true), button(false);
  until([&] { return queue_.empty(); });
  frames(2);
}

void Hand::right_click_at(float x, float y) {
  move(x, y);
  button(true, GLFW_MOUSE_BUTTON_RIGHT), button(false, GLFW_MOUSE_BUTTON_RIGHT);
  until([&] { return queue_.empty(); });
  frames(3);
}

void Hand::right_click(const std::string& name) {
  const viewer::Seen seen = see(name);
  right_click_at((seen.low.x + seen.high.x) / 2, (seen.low.y + seen.high.y) / 2);
}

void Hand::button(bool down, int which) {
  InputEvent e = event(InputEvent::Kind::button);
  e.code = which, e.down = down, e.mods = held_;
  queue_.push(e);
}

void Hand::click(const std::string& name) {
  const viewer::Seen seen = see(name);
  if (!seen.enabled) throw std::runtime_error("cannot be pressed now: " + name);
  click_at((seen.low.x + seen.high.x) / 2, (seen.low.y + seen.high.y) / 2);
}

void Hand::release() {
  button(false);
  until([&] { return queue_.empty(); });
  frames(2);
}

void Hand::drag(const std::string& name, float dx, float dy, bool let_go) {
  const viewer::Seen seen = see(name);
  drag_from((seen.low.x + seen.high.x) / 2, (seen.low.y + seen.high.y) / 2, dx, dy, let_go);
}

void Hand::drag_from(float x, float y, float dx, float dy, bool let_go) {
  move(x, y);
  button(true);
  constexpr int steps = 12;
  for (int i = 1; i <= steps; ++i) {
    move(x + dx * static_cast<float>(i) / steps, y + dy * static_cast<float>(i) / steps);
    until([&] { return queue_.empty(); });
    frames(1);
  }
  if (let_go) release();
}

void Hand::right_drag(float x, float y, float dx, float dy) {
  move(x, y);
  button(true, GLFW_MOUSE_BUTTON_RIGHT);
  constexpr int steps = 6;
  for (int i = 1; i <= steps; ++i) move(x + dx * static_cast<float>(i) / steps, y + dy * static_cast<float>(i) / steps);
  until([&] { return queue_.empty(); });
  frames(2);
  button(false, GLFW_MOUSE_BUTTON_RIGHT);
  until([&] { return queue_.empty(); });
  frames(3);
}

void Hand::press(int key, int mods) {
  for (const bool down : {true, false}) {
    InputEvent e = event(InputEvent::Kind::key);
    e.code = key, e.mods = mods, e.down = down;
    queue_.push(e);
  }
  if (mods != 0) {  // let go of the modifiers too
    InputEvent e = event(InputEvent::Kind::key);
    e.code = GLFW_KEY_LEFT_CONTROL;
    queue_.push(e);
  }
  until([&] { return queue_.empty(); });
  frames(3);
}

void Hand::hold_shift(bool down) {
  InputEvent e = event(InputEvent::Kind::key);
  e.code = GLFW_KEY_LEFT_SHIFT, e.down = down;
  held_ = down ? GLFW_MOD_SHIFT : 0;
  queue_.push(e);
  until([&] { return queue_.empty(); });
  frames(2);
}

void Hand::type(const std::string& text) {
  for (const char c : text) {
    InputEvent e = event(InputEvent::Kind::letter);
    e.code = static_cast<unsigned char>(c);
    queue_.push(e);
  }
  until([&] { return queue_.empty(); });
  frames(2);
}

void Hand::enter(const std::string& field, const std::string& text) {
  click(field);
  frames(2);
  type(text);
  press(GLFW_KEY_ENTER);
}

void Hand::open_group(int number) {
  press(GLFW_KEY_0 + number, GLFW_MOD_CONTROL);
  frames(3);
}

void Hand::choose(const std::string& field, const std::string& option) {
  click(field);
  frames(2);
  click(field + "/" + option);
}

void Hand::drop(const fs::path& path) {
  InputEvent e = event(InputEvent::Kind::drop);
  e.path = path.string();
  queue_.push(e);
  frames(3);
}

void Hand::close() {
  queue_.push(event(InputEvent::Kind::close));
  frames(4);
}

void Hand::wheel(float steps, float x, float y) {
  move(x, y);
  until([&] { return queue_.empty(); });
  frames(1);
  InputEvent e = event(InputEvent::Kind::wheel);
  e.y = steps;
  queue_.push(e);
  frames(3);
}

void Hand::resize(int width, int height) {
  window_->resize(width, height);
  until([&] { return window_->width() == width && window_->height() == height; }, 10);
  wait();
}

std::vector<std::uint8_t> Hand::picture() {
  wait();
  app_->frame();
  return app_->picture().pixels();
}

double Hand::changed(const std::vector<std::uint8_t>& a, const std::vector<std::uint8_t>& b) {
  if (a.size() != b.size() || a.empty()) return 1;
  constexpr int shade = 12;
  std::size_t different = 0;
  for (std::size_t i = 0; i < a.size(); i += 3)
    if (std::abs(a[i] - b[i]) > shade || std::abs(a[i + 1] - b[i + 1]) > shade || std::abs(a[i + 2] - b[i + 2]) > shade)
      ++different;
  return static_cast<double>(different) / (static_cast<double>(a.size()) / 3);
}

}  // namespace sagitta::test
