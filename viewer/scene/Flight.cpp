#include "scene/Flight.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sagitta::viewer {

namespace {

constexpr float whole_turn = 2 * std::numbers::pi_v<float>;
constexpr float bench_turn = -0.36f, bench_rise = 0.74f;
/// Height of the picture at the target, for a camera one mm away: twice the tangent of half its field of 30 degrees.
constexpr float field = 0.5359f;

float mix(float a, float b, float s) { return a + s * (b - a); }

}  // namespace

Camera Flight::at(double time) const {
  if (over(time)) return to;
  const auto part = static_cast<float>(std::clamp((time - began) / lasts, 0.0, 1.0));
  const float s = part * part * (3 - 2 * part);
  Camera camera = to;
  camera.target = from.target + s * (to.target - from.target);
  camera.turn = from.turn + s * std::remainder(to.turn - from.turn, whole_turn);
  camera.rise = mix(from.rise, to.rise, s);
  camera.distance = from.distance * std::pow(to.distance / from.distance, s);
  return camera;
}

Camera near_look(const Camera& camera, Vec place, bool from_treble, float across) {
  Camera moved = camera;
  moved.target = place;
  moved.turn = from_treble ? whole_turn / 2 + bench_turn : bench_turn;
  moved.rise = bench_rise;
  const float aspect = camera.width / std::max(camera.height, 1.0f);
  moved.distance = across / field / std::max(aspect, 1.0f);
  return moved;
}

}  // namespace sagitta::viewer
