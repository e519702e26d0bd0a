#pragma once

/// ImGui with its context and its renderer.

#include <cstdint>

#include "widgets/Ui.hpp"

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
  /// Ends the frame's layout. True when it differs from the one drawn last: other words, colours or places, or another
  /// `pictures`, the count of changes of the pictures that it shows.
  bool lay_out(float width, float height, std::uint64_t pictures);
  /// Draws what was laid out into the framebuffer that is bound.
  void draw(float width, float height, ImU32 background);

 private:
  float scale_ = 0;
  bool dark_ = false;
  double last_ = -1;
  std::uint64_t seen_ = 0;  ///< what was laid out last, as a number
};

}  // namespace sagitta::viewer
