#pragma once

/// A texture that can be drawn into.

#include <cstdint>
#include <vector>

#include "gpu/Object.hpp"

namespace sagitta::viewer {

/// A picture to draw into: a colour texture with depth, multisampled while drawing when `samples` > 0.
class Target {
 public:
  /// Makes room for width x height pixels (both > 0); keeps what is there when nothing changes.
  void resize(int width, int height, int samples);
  /// Directs drawing here and sets the viewport.
  void bind() const;
  /// Ends drawing: brings the samples together into the texture and directs drawing back to the window.
  void resolve() const;
  GLuint texture() const { return colour_.id(); }
  int width() const { return width_; }
  int height() const { return height_; }
  /// RGB rows from the top, 3 bytes a pixel.
  std::vector<std::uint8_t> pixels() const;

 private:
  int width_ = 0, height_ = 0, samples_ = -1;
  Texture colour_;
  Framebuffer plain_, sampled_;
  Renderbuffer depth_, sampled_colour_, sampled_depth_;
};

/// RGB rows from the top of the framebuffer bound for reading.
std::vector<std::uint8_t> read_pixels(int width, int height);

}  // namespace sagitta::viewer
