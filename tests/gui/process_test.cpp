/// The program as a process: killed while editing, without a display, pictures for scripts, a few real keys.

#include <fcntl.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "document/Recovery.hpp"
#include "document/Settings.hpp"
#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;

struct Ended {
  int code = -1;
  std::string errors;
};

/// Runs the shell command to its end; error output is caught.
Ended run(const std::string& command) {
  Folder folder;
  const fs::path errors = folder.path / "errors";
  const int status = std::system((command + " 2> " + errors.string()).c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, text_of(errors)};
}

fs::path left_copy(const fs::path& state) {
  if (fs::exists(state))
    for (const auto& entry : fs::directory_iterator(state))
      if (entry.path().extension() == ".toml") return entry.path();
  return {};
}

std::string preset(const std::string& name) { return places::source() + "/presets/" + name + ".toml"; }

TEST(Process, NoDisplayIsSaidPlainly) {
  const Ended ended = run("env -u DISPLAY -u WAYLAND_DISPLAY " + places::viewer());
  EXPECT_EQ(ended.code, 1);
  EXPECT_NE(ended.errors.find("no display"), std::string::npos);
  EXPECT_NE(ended.errors.find("--shot"), std::string::npos);
}

TEST(Process, AnOldOpenGlIsSaidPlainly) {
  ASSERT_TRUE(have_display());
  // Mesa, environment variables: MESA_GL_VERSION_OVERRIDE names the version that the driver offers.
  for (const std::string& line : {places::viewer(), places::viewer() + " --shot /tmp/never.png"}) {
    const Ended ended = run("MESA_GL_VERSION_OVERRIDE=2.1 " + line);
    EXPECT_EQ(ended.code, 1) << line;
    EXPECT_NE(ended.errors.find("OpenGL 3.3"), std::string::npos) << ended.errors;
  }
}

GLenum APIENTRY driver_was_reset() { return GL_GUILTY_CONTEXT_RESET; }

TEST(Process, AResetDriverKeepsTheBoard) {
  Hand hand;
  hand.open_group(3);
  hand.enter("Decisions/board.thickness", "6.25");
  viewer::gl::reset_status = driver_was_reset;
  std::string said;
  try {
    hand.frames(2);
  } catch (const viewer::DisplayError& error) {
    said = error.what();
  }
  viewer::gl::reset_status = nullptr;
  EXPECT_NE(said.find("offers the board"), std::string::npos);
  const fs::path copy = left_copy(hand.folder() / "state");
  ASSERT_FALSE(copy.empty());
  EXPECT_DOUBLE_EQ(read_board(copy.string()).board.board.thickness, 6.25);
}

TEST(Process, AShotHasItsSizeAndNeedsNoDisplay) {
  Folder folder;
  const fs::path file = folder.path / "a.png";
  const Ended ended = run("env -u DISPLAY " + places::viewer() + " " + preset("heron-six") + " --shot " +
                          file.string() + " --size 640x360 --stage slotted --view above");
  EXPECT_EQ(ended.code, 0) << ended.errors;
  const std::string png = text_of(file);
  ASSERT_GT(png.size(), 2000u);
  const auto number = [&](std::size_t at) {
    return static_cast<unsigned char>(png[at + 2]) * 256 + static_cast<unsigned char>(png[at + 3]);
  };
  EXPECT_EQ(number(16), 640);  // PNG, second edition, 11.2.2: IHDR holds width and height
  EXPECT_EQ(number(20), 360);
}

TEST(Process, AShotOfOnePanelIsItsRectangle) {
  Folder folder;
  const std::string shot = places::viewer() + " " + preset("heron-six") + " --shot " +
                           (folder.path / "a.png").string() + " --size 1000x700 --window --panel ";
  ASSERT_EQ(run(shot + "Bar").code, 0);
  const std::string png = text_of(folder.path / "a.png");
  const auto number = [&](std::size_t at) {
    return static_cast<unsigned char>(png[at + 2]) * 256 + static_cast<unsigned char>(png[at + 3]);
  };
  EXPECT_EQ(number(16), 1000);
  EXPECT_EQ(number(20), 41);  // letters of 15.5, 10 inside a button, 16 around it
  const Ended unknown = run(shot + "Cellar");
  EXPECT_EQ(unknown.code, 2);
  EXPECT_NE(unknown.errors.find("Cellar"), std::string::npos);
}

TEST(Process, AShotOfABrokenBoardSaysWhere) {
  Folder folder;
  write(folder.path / "bad.toml", "format = 1\n[scale]\nlenght = 648\n");
  const Ended ended =
      run(places::viewer() + " " + (folder.path / "bad.toml").string() + " --shot " + (folder.path / "a.png").string());
  EXPECT_EQ(ended.code, 2);
  EXPECT_NE(ended.errors.find("bad.toml:3:"), std::string::npos);
  EXPECT_FALSE(fs::exists(folder.path / "a.png"));
}

TEST(Process, UsageIsSaid) {
  EXPECT_EQ(run(places::viewer() + " --shot /tmp/x.png --size 12by3").code, 2);
  EXPECT_EQ(run(places::viewer() + " --shot /tmp/x.png --view sideways").code, 2);
  EXPECT_EQ(run(places::viewer() + " --nonsense").code, 2);
}

/// The program in its own process, with real keys from xdotool.
class Running {
 public:
  explicit Running(const fs::path& folder, const std::string& board) {
    process_ = ::fork();
    if (process_ != 0) return;
    ::setenv("XDG_CONFIG_HOME", (folder / "config").c_str(), 1);
    ::setenv("XDG_STATE_HOME", (folder / "state").c_str(), 1);
    ::execl(places::viewer().c_str(), places::viewer().c_str(), board.c_str(), nullptr);
    ::_exit(127);
  }
  ~Running() { kill(); }
  void kill() {
    if (process_ <= 0) return;
    ::kill(process_, SIGKILL);
    ::waitpid(process_, nullptr, 0);
    process_ = 0;
  }
  bool ends(double seconds) {
    for (double t = 0; t < seconds; t += 0.05) {
      if (::waitpid(process_, nullptr, WNOHANG) == process_) return process_ = 0, true;
      ::usleep(50000);
    }
    return false;
  }

 private:
  pid_t process_ = 0;
};

bool has_tool() { return std::system("which xdotool > /dev/null") == 0; }

void keys(const std::string& words) { ASSERT_EQ(std::system(("xdotool " + words).c_str()), 0) << words; }

std::string window_named(const std::string& name) {
  for (int i = 0; i < 200; ++i) {
    Folder folder;
    const fs::path out = folder.path / "id";
    if (std::system(("xdotool search --name '" + name + "' > " + out.string() + " 2> /dev/null").c_str()) == 0) {
      std::string id;
      std::ifstream(out) >> id;
      if (!id.empty()) return id;
    }
    ::usleep(100000);
  }
  return "";
}

/// Settings that skip the first-run page.
void seen_before(const fs::path& folder) {
  viewer::Settings settings;
  settings.way_shown = true;
  viewer::save_settings(folder / "config/sagitta", settings);
}

TEST(Process, KilledWhileEditingTheNextStartOffersTheCopy) {
  ASSERT_TRUE(have_display());
  if (!has_tool()) GTEST_SKIP() << "xdotool is not installed";
  Folder folder;
  fs::copy_file(preset("heron-six"), folder.path / "mine.toml");
  seen_before(folder.path);
  Board edited;
  {
    Running program(folder.path, (folder.path / "mine.toml").string());
    const std::string id = window_named("mine.toml - Sagitta");
    ASSERT_FALSE(id.empty());
    keys("windowfocus " + id + " sleep 0.5 key --delay 60 ctrl+3");
    keys("sleep 0.5 mousemove --window " + id + " 240 202 sleep 0.3 click 1 sleep 0.5 type --delay 60 6.2");
    keys("sleep 0.3 key --delay 60 Return");
    fs::path copy;
    for (int i = 0; i < 80 && copy.empty(); ++i) ::usleep(50000), copy = left_copy(folder.path / "state/sagitta");
    ASSERT_FALSE(copy.empty());
    edited = read_board(copy.string()).board;
    program.kill();
  }
  EXPECT_NE(edited, read_board((folder.path / "mine.toml").string()).board);
  const auto left = viewer::Recovery(folder.path / "state/sagitta").find_left();
  ASSERT_TRUE(left);
  EXPECT_EQ(left->board, folder.path / "mine.toml");
  viewer::InputQueue queue;
  viewer::AppSpec spec;
  spec.settings = folder.path / "config/sagitta", spec.state = folder.path / "state/sagitta";
  viewer::Window window({}, queue);
  viewer::App app(spec, &window, queue);
  for (int i = 0; i < 4; ++i) app.frame();
  ASSERT_EQ(app.desk().view.dialog, viewer::Dialog::left_over);
  const viewer::Seen* button = app.desk().ui.find("A board was left open/Take it up again");
  ASSERT_TRUE(button);
  viewer::InputEvent event;
  event.kind = viewer::InputEvent::Kind::move;
  event.x = (button->low.x + button->high.x) / 2, event.y = (button->low.y + button->high.y) / 2;
  queue.push(event);
  event.kind = viewer::InputEvent::Kind::button, event.down = true;
  queue.push(event);
  event.down = false;
  queue.push(event);
  for (int i = 0; i < 8; ++i) app.frame();
  edited.folder = app.desk().document.board().folder;
  EXPECT_EQ(app.desk().document.board(), edited);
  EXPECT_TRUE(app.desk().document.dirty());
  EXPECT_EQ(app.desk().document.path(), folder.path / "mine.toml");
}

TEST(Process, RealKeysQuitIt) {
  ASSERT_TRUE(have_display());
  if (!has_tool()) GTEST_SKIP() << "xdotool is not installed";
  Folder folder;
  seen_before(folder.path);
  Running program(folder.path, preset("reed-tenor"));
  const std::string id = window_named("reed-tenor.toml - Sagitta");
  ASSERT_FALSE(id.empty());
  keys("windowfocus " + id + " sleep 0.5 key --delay 60 ctrl+q");
  EXPECT_TRUE(program.ends(10));
}

}  // namespace
}  // namespace sagitta::test
