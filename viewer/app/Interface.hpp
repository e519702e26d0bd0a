#pragma once

#include "panels/Ui.hpp"

namespace sagitta::viewer {

class Window;

/// ImGui and its drawing, from making to freeing. The clipboard is the window's, when there is one.
class Interface {
 public:
  explicit Interface(Window* window);
  ~Interface();
  Interface(const Interface&) = delete;
  Interface& operator=(const Interface&) = delete;

  /// Letters, colours and spacing for this scale; does nothing while neither changes.
  void dress(Ui& ui, float scale, bool dark);
  void begin(float width, float height, double seconds);
  /// Draws into the framebuffer that is bound.
  void finish(float width, float height, ImU32 background);

 private:
  float scale_ = 0;
  bool dark_ = false;
  double last_ = -1;
};

}  // namespace sagitta::viewer
