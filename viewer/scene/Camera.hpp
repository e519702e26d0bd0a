#pragma once

/// Where the board is seen from: a point looked at, two angles and a distance. A plain value.

#include <optional>
#include <string_view>

#include "scene/Vec.hpp"

namespace sagitta::viewer {

enum class StandardView { above, below, bass_edge, treble_edge, nut_end, heel_end, bench };
inline constexpr StandardView standard_views[] = {
    StandardView::bench,   StandardView::above,    StandardView::bass_edge, StandardView::treble_edge,
    StandardView::nut_end, StandardView::heel_end, StandardView::below};
/// "bench", "above", "bass-edge", ... as on the command line.
std::string_view name(StandardView view);
std::optional<StandardView> view_named(std::string_view name);

struct Ray {
  Vec from, along;  ///< along is of length 1
};

/// A place in the picture: 0 .. width from the left, 0 .. height from the top.
struct Pixel {
  float x = 0, y = 0;
};

struct Camera {
  Vec target{200, 0, 0};
  float turn = -1.1f;    ///< about z, radians; 0 looks along +y with x to the right
  float rise = 0.62f;    ///< above the bench, radians, -pi/2 .. pi/2
  float distance = 700;  ///< mm from the target
  bool parallel = false;
  float width = 800, height = 500;  ///< of the picture, pixels

  Vec right() const;
  Vec up() const;
  Vec back() const;
  Vec eye() const { return target + distance * back(); }
  Mat matrix() const;
  Ray ray(Pixel at) const;
  /// Where a point of the board lands in the picture; nothing when it lies behind the eye.
  std::optional<Pixel> project(Vec p) const;
  /// mm across one pixel at a point's depth.
  float mm_per_pixel(Vec p) const;

  /// The pointer moved by so many pixels.
  Camera orbited(float dx, float dy) const;
  Camera panned(float dx, float dy) const;
  /// Closer (factor < 1) or farther, keeping the point under the pointer where it is.
  Camera zoomed(float factor, Pixel pointer) const;
  Camera facing(StandardView view) const;
  /// Moved along its own directions so that the box fills the picture with a margin.
  Camera fitted(Vec low, Vec high) const;
  friend bool operator==(const Camera&, const Camera&) = default;
};

}  // namespace sagitta::viewer
