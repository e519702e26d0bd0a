/// Hands that do anything: random events through the real input queue. In the suite a short run of three seeds;
/// MONKEY_EVENTS=10000 build/bin/test_gui --gtest_filter='*Monkey*' is the long one.

#include <gtest/gtest.h>
#include <malloc.h>

#include <cstdlib>
#include <functional>
#include <random>
#include <stdexcept>

#include "gui/Hand.hpp"

namespace sagitta::test {
namespace {

namespace fs = std::filesystem;
using viewer::InputEvent;
using Kind = InputEvent::Kind;

double heap_mb() { return static_cast<double>(::mallinfo2().uordblks + ::mallinfo2().hblkhd) / 1e6; }

std::string square_svg(const std::string& colour) {
  return "<svg xmlns='http://www.w3.org/2000/svg' width='9mm' height='9mm' viewBox='0 0 9 9'>"
         "<rect width='9' height='9' fill='" +
         colour + "'/></svg>";
}

class Monkey : public Hand {
 public:
  explicit Monkey(unsigned seed) : random_(seed) {
    ::setenv("PATH", (folder() / "no-programs").c_str(), 1);  // the desktop's programs stay out of it
    write(folder() / "square.svg", square_svg("#305080"));
    write(folder() / "broken.svg", "<svg");
    write(folder() / "broken.toml", "[board]\nthickness = \"thick\"\n");
    write(folder() / "notes.txt", "not a board");
  }
  ~Monkey() { ::setenv("PATH", path_.c_str(), 1); }

  void play(int events) {
    for (int done = 0; done < events;) {
      for (int i = below(4); i >= 0; --i, ++done) act();
      type("");  // frames until all of it is taken: what is not taken would pile up
      stay_at_home();
      if (below(400) == 0) desk().settings.text_size = 0.75 + 0.25 * below(6);
    }
  }
  /// All keys and buttons up, every dialog closed, the first board again.
  void come_to_rest() {
    for (const int which : {0, 1, 2}) push_button(which, false);
    for (const int key : {GLFW_KEY_LEFT_SHIFT, GLFW_KEY_LEFT_CONTROL, GLFW_KEY_LEFT_ALT}) push_key(key, false, 0);
    told("keys", [&] {
      for (int i = 0; i < 6; ++i) press(GLFW_KEY_ESCAPE);
    });
    desk().sending.cancel();
    told("the export's end", [&] { until([&] { return !desk().sending.state().running; }, 600); });
    desk().asked = {viewer::asked::OpenBoard{first_}};
    desk().results.comparison.reset();
    desk().view = {};
    desk().settings.text_size = 1;
    told("rest", [&] { wait(900); });  // others may work on this machine
    // What the pages keep once they were opened, the papers above all, is of this one board before and after.
    desk().paperwork.want(board(), "A4", false, desk().wake);
    desk().comparing.want({desk().results.good, desk().results.good}, desk().wake);
    told("the pages", [&] { wait(900); });
    frames(3);  // what is shown of them is theirs too
  }
  void keep_first() {
    first_ = folder() / "first.toml";
    fs::copy_file(file(), first_);
  }

 private:
  /// Says what was waited for in vain.
  static void told(const char* what, const std::function<void()>& waiting) {
    try {
      waiting();
    } catch (const std::runtime_error& error) {
      throw std::runtime_error(std::string(what) + ": " + error.what());
    }
  }
  int below(int n) { return static_cast<int>(random_() % static_cast<unsigned>(n)); }
  void push_key(int key, bool down, int mods) {
    InputEvent e;
    e.kind = Kind::key, e.code = key, e.down = down, e.mods = mods;
    push(e);
  }
  void push_button(int which, bool down) {
    InputEvent e;
    e.kind = Kind::button, e.code = which, e.down = down;
    push(e);
  }
  /// Near a widget that is in view, or anywhere.
  void push_move() {
    InputEvent e;
    e.kind = Kind::move;
    e.x = static_cast<float>(below(app().width())), e.y = static_cast<float>(below(app().height()));
    const auto& seen = desk().ui.all();
    if (below(3) > 0 && !seen.empty()) {
      const viewer::Seen& one = std::next(seen.begin(), below(static_cast<int>(seen.size())))->second;
      if (one.frame >= desk().ui.frame() - 1)
        e.x = (one.low.x + one.high.x) / 2 + static_cast<float>(below(7) - 3), e.y = (one.low.y + one.high.y) / 2;
    }
    push(e);
  }
  void push_any_key() {
    static const int keys[] = {GLFW_KEY_ENTER, GLFW_KEY_TAB,   GLFW_KEY_ESCAPE, GLFW_KEY_LEFT,     GLFW_KEY_RIGHT,
                               GLFW_KEY_UP,    GLFW_KEY_DOWN,  GLFW_KEY_F1,     GLFW_KEY_F6,       GLFW_KEY_F8,
                               GLFW_KEY_F9,    GLFW_KEY_SPACE, GLFW_KEY_PERIOD, GLFW_KEY_BACKSPACE};
    static const int mods[] = {0,           0, 0, GLFW_MOD_CONTROL, GLFW_MOD_SHIFT, GLFW_MOD_CONTROL | GLFW_MOD_SHIFT,
                               GLFW_MOD_ALT};
    const int key = below(2) ? keys[below(std::size(keys))] : GLFW_KEY_A + below(26),
              mod = mods[below(std::size(mods))];
    push_key(key, true, mod), push_key(key, false, mod);
    push_key(GLFW_KEY_LEFT_CONTROL, false, 0), push_key(GLFW_KEY_LEFT_SHIFT, false, 0);
  }
  /// A drawing program saves the drawing that lies on the board: another one, a torn one, or none.
  void redraw() {
    const fs::path drawing = folder() / "square.svg";
    const int how = below(4);
    std::error_code gone;
    if (how == 0) fs::remove(drawing, gone);
    if (how == 1) write(drawing, "<svg><rect");
    if (how > 1) write(drawing, square_svg(how == 2 ? "#c02020" : "#20a020"));
  }
  void push_drop() {
    static const char* const names[] = {"square.svg", "broken.svg",  "broken.toml",
                                        "notes.txt",  "nowhere.svg", "heron-six.toml"};
    InputEvent e;
    e.kind = Kind::drop, e.path = (folder() / names[below(std::size(names))]).string();
    push(e);
  }
  void act() {
    const int what = below(100);
    if (what < 35) return push_move();
    if (what < 50) return push_move(), push_button(0, true), push_button(0, false);
    if (what < 60) return push_button(below(3), below(2) == 0);
    if (what < 66) {
      InputEvent e;
      e.kind = Kind::wheel, e.y = static_cast<float>(below(5) - 2);
      return push(e);
    }
    if (what < 84) return push_any_key();
    if (what < 97) {
      InputEvent e;
      e.kind = Kind::letter, e.code = below(2) ? '0' + below(10) : " -,/ab\"x"[below(8)];
      return push(e);
    }
    if (what < 98) return push_drop();
    if (what < 99) return redraw();
    InputEvent e;
    e.kind = Kind::close;
    push(e);
  }
  /// Nothing is read or written outside the test's own folder, and the window stays open.
  void stay_at_home() {
    desk().quit = false;
    const std::string home = folder().string();
    if (!desk().forms.browsing.folder.starts_with(home)) desk().forms.browsing.folder = home;
    if (desk().forms.browsing.name.find('/') != std::string::npos) desk().forms.browsing.name.clear();
    if (!desk().forms.sending.folder.starts_with(home)) desk().forms.sending.folder = home + "/export";
    if (desk().document.board().inlays.size() > 6) {
      Board draft = desk().document.board();
      draft.inlays.resize(6);
      desk().document.change(draft, "Test");
    }
  }

  std::mt19937 random_;
  std::string path_ = std::getenv("PATH");
  fs::path first_;
};

class AMonkey : public testing::TestWithParam<unsigned> {};

TEST_P(AMonkey, BreaksNothing) {
  const char* wanted = std::getenv("MONKEY_EVENTS");
  const int events = wanted ? std::atoi(wanted) : 150;
  Monkey monkey(GetParam());
  monkey.keep_first();
  monkey.play(std::min(events / 5, 500));  // what is made once is made now
  monkey.come_to_rest();
  const double before = heap_mb();
  monkey.play(events);
  monkey.come_to_rest();
  const double grown = heap_mb() - before;
  std::printf("seed %u: %d events, heap %.1f MB, grown %.2f MB\n", GetParam(), events, before, grown);
  EXPECT_LT(grown, 20);
  EXPECT_EQ(viewer::gl::errors(), 0) << viewer::gl::latest_error();
  EXPECT_TRUE(monkey.desk().results.current());
}

INSTANTIATE_TEST_SUITE_P(Seeds, AMonkey, testing::Values(1u, 2u, 3u));

}  // namespace
}  // namespace sagitta::test
