#pragma once

/// Everything that hands do, in the order in which they did it. The window's callbacks push here, tests push here, and
/// each frame drains as much as one frame of the interface can tell apart.

#include <deque>
#include <string>
#include <vector>

namespace sagitta::viewer {

/// A key with its modifiers, as GLFW numbers them.
struct Chord {
  int key = 0;
  int mods = 0;
  friend bool operator==(const Chord&, const Chord&) = default;
};

struct InputEvent {
  enum class Kind { move, button, wheel, key, letter, drop, close, wake, leave };
  Kind kind = Kind::wake;
  float x = 0, y = 0;  ///< move: pointer; wheel: steps
  int code = 0;        ///< button, key or code point
  bool down = false;
  int mods = 0;
  std::string path = {};  ///< drop
};

/// What came in besides the interface's own state.
struct Drained {
  std::vector<Chord> pressed;  ///< keys that went down or repeated
  std::vector<std::string> dropped;
  bool close = false;
  bool uncovered = false;  ///< the window was covered or resized
  int events = 0;
};

class InputQueue {
 public:
  void push(InputEvent event) { events_.push_back(std::move(event)); }
  bool empty() const { return events_.empty(); }
  /// Hands events to the interface (ImGui's io), stopping where two of them would blur into one: at a second change of
  /// the same key or button, at a move after a button, at a button after a move, and at a letter after a key.
  Drained drain();

 private:
  std::deque<InputEvent> events_;
};

}  // namespace sagitta::viewer
