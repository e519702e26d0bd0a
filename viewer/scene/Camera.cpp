#include "scene/Camera.hpp"

#include <algorithm>
#include <numbers>

namespace sagitta::viewer {

namespace {
constexpr float half_turn = std::numbers::pi_v<float>;
constexpr float steepest = half_turn / 2;
constexpr float tangent = 0.26795f;  // half of a 30 degree field: tan 15 degrees
constexpr float nearest = 2, farthest = 20000;
constexpr float fit_across = 0.93f, fit_up = 0.86f;  // of the picture that a fitted box fills at most
}  // namespace

std::string_view name(StandardView view) {
  switch (view) {
    case StandardView::above:
      return "above";
    case StandardView::below:
      return "below";
    case StandardView::bass_edge:
      return "bass-edge";
    case StandardView::treble_edge:
      return "treble-edge";
    case StandardView::nut_end:
      return "nut-end";
    case StandardView::heel_end:
      return "heel-end";
    case StandardView::bench:
      break;
  }
  return "bench";
}

std::optional<StandardView> view_named(std::string_view text) {
  for (const StandardView view : standard_views)
    if (name(view) == text) return view;
  return std::nullopt;
}

Vec Camera::right() const { return {std::cos(turn), std::sin(turn), 0}; }
Vec Camera::back() const { return {std::sin(turn) * std::cos(rise), -std::cos(turn) * std::cos(rise), std::sin(rise)}; }
Vec Camera::up() const { return cross(back(), right()); }

Mat Camera::matrix() const {
  const float aspect = width / std::max(height, 1.0f);
  const float reach = distance + 3000;
  const Mat seen = look(eye(), right(), up(), back());
  if (parallel) return viewer::parallel(distance * tangent, aspect, -reach, reach) * seen;
  return perspective(tangent, aspect, std::max(distance * 0.02f, 0.5f), reach) * seen;
}

Ray Camera::ray(Pixel at) const {
  const float half = distance * tangent, aspect = width / std::max(height, 1.0f);
  const float u = (2 * at.x / width - 1) * half * aspect, v = (1 - 2 * at.y / height) * half;
  const Vec through = target + u * right() + v * up();
  if (parallel) return {through + (distance + 2000) * back(), -1.0f * back()};
  return {eye(), unit(through - eye())};
}

std::optional<Pixel> Camera::project(Vec p) const {
  const auto c = clip(matrix(), p);
  if (c[3] <= 0) return std::nullopt;
  return Pixel{(c[0] / c[3] + 1) / 2 * width, (1 - c[1] / c[3]) / 2 * height};
}

float Camera::mm_per_pixel(Vec p) const {
  const float depth = parallel ? distance : std::max(dot(eye() - p, back()), 1.0f);
  return 2 * depth * tangent / std::max(height, 1.0f);
}

Camera Camera::orbited(float dx, float dy) const {
  Camera moved = *this;
  moved.turn -= dx * half_turn / std::max(width, 1.0f);
  moved.rise = std::clamp(rise + dy * half_turn / std::max(height, 1.0f), -steepest, steepest);
  return moved;
}

Camera Camera::panned(float dx, float dy) const {
  const float step = mm_per_pixel(target);
  Camera moved = *this;
  moved.target = target - (dx * step) * right() + (dy * step) * up();
  return moved;
}

Camera Camera::zoomed(float factor, Pixel pointer) const {
  Camera moved = *this;
  moved.distance = std::clamp(distance * factor, nearest, farthest);
  const float kept = moved.distance / distance;
  const float half = distance * tangent, aspect = width / std::max(height, 1.0f);
  const float u = (2 * pointer.x / width - 1) * half * aspect, v = (1 - 2 * pointer.y / height) * half;
  moved.target = target + ((1 - kept) * u) * right() + ((1 - kept) * v) * up();
  return moved;
}

Camera Camera::facing(StandardView view) const {
  Camera moved = *this;
  switch (view) {
    case StandardView::above:
      moved.turn = 0, moved.rise = steepest;
      break;
    case StandardView::below:
      moved.turn = 0, moved.rise = -steepest;
      break;
    case StandardView::bass_edge:
      moved.turn = 0, moved.rise = 0;
      break;
    case StandardView::treble_edge:
      moved.turn = half_turn, moved.rise = 0;
      break;
    case StandardView::nut_end:
      moved.turn = -half_turn / 2, moved.rise = 0;
      break;
    case StandardView::heel_end:
      moved.turn = half_turn / 2, moved.rise = 0;
      break;
    case StandardView::bench:
      moved.turn = -0.36f, moved.rise = 0.74f;
      break;
  }
  return moved;
}

Camera Camera::fitted(Vec low, Vec high) const {
  const float aspect = width / std::max(height, 1.0f);
  const float u = tangent * aspect * fit_across, v = tangent * fit_up;
  const Vec centre = 0.5f * (low + high);
  // Seen from an eye at (x, y, z) along right, up and back, a corner (a, b, c) lies within the picture's sides when
  // |a - x| <= u (z - c) and |b - y| <= v (z - c); a parallel projection is the same without c.
  float left = farthest * -1, top = left, rightmost = left, bottom = left;
  for (int corner = 0; corner < 8; ++corner) {
    const Vec p{corner & 1 ? high.x : low.x, corner & 2 ? high.y : low.y, corner & 4 ? high.z : low.z};
    const float a = dot(p - centre, right()), b = dot(p - centre, up()), c = parallel ? 0 : dot(p - centre, back());
    rightmost = std::max(rightmost, a + u * c), left = std::max(left, u * c - a);
    top = std::max(top, b + v * c), bottom = std::max(bottom, v * c - b);
  }
  Camera moved = *this;
  moved.distance = std::clamp(std::max((rightmost + left) / (2 * u), (top + bottom) / (2 * v)), nearest, farthest);
  moved.target = centre + ((rightmost - left) / 2) * right() + ((top - bottom) / 2) * up();
  return moved;
}

}  // namespace sagitta::viewer
