#pragma once

/// Vectors and 4 x 4 matrices of the picture, 32-bit, mm in the board's frame. Matrices are column-major as OpenGL's.

#include <array>
#include <cmath>

namespace sagitta::viewer {

struct Vec {
  float x = 0, y = 0, z = 0;
  friend bool operator==(const Vec&, const Vec&) = default;
};

constexpr Vec operator+(Vec a, Vec b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
constexpr Vec operator-(Vec a, Vec b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
constexpr Vec operator*(float s, Vec a) { return {s * a.x, s * a.y, s * a.z}; }
constexpr float dot(Vec a, Vec b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
constexpr Vec cross(Vec a, Vec b) { return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x}; }
inline float length(Vec a) { return std::sqrt(dot(a, a)); }
/// The vector at length 1; a vector of no length stays.
inline Vec unit(Vec a) {
  const float l = length(a);
  return l > 0 ? (1 / l) * a : a;
}

using Mat = std::array<float, 16>;

constexpr Mat identity() { return {1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1}; }
constexpr Mat operator*(const Mat& a, const Mat& b) {
  Mat c{};
  for (std::size_t col = 0; col < 4; ++col)
    for (std::size_t row = 0; row < 4; ++row)
      for (std::size_t k = 0; k < 4; ++k) c[4 * col + row] += a[4 * k + row] * b[4 * col + k];
  return c;
}

/// Clip coordinates of a point: x, y, z, w.
constexpr std::array<float, 4> clip(const Mat& m, Vec p) {
  return {m[0] * p.x + m[4] * p.y + m[8] * p.z + m[12], m[1] * p.x + m[5] * p.y + m[9] * p.z + m[13],
          m[2] * p.x + m[6] * p.y + m[10] * p.z + m[14], m[3] * p.x + m[7] * p.y + m[11] * p.z + m[15]};
}

/// The view from `eye` with the three unit axes of the picture.
inline Mat look(Vec eye, Vec right, Vec up, Vec back) {
  return {right.x, up.x, back.x, 0, right.y,          up.y,          back.y,          0,
          right.z, up.z, back.z, 0, -dot(right, eye), -dot(up, eye), -dot(back, eye), 1};
}
/// Perspective with the half height `tangent` at distance 1.
inline Mat perspective(float tangent, float aspect, float near, float far) {
  return {1 / (tangent * aspect),        0, 0, 0, 0, 1 / tangent, 0, 0, 0, 0, (far + near) / (near - far), -1, 0, 0,
          2 * far * near / (near - far), 0};
}
/// Parallel projection of a picture of half height `half` mm.
inline Mat parallel(float half, float aspect, float near, float far) {
  return {1 / (half * aspect),         0, 0, 0, 0, 1 / half, 0, 0, 0, 0, 2 / (near - far), 0, 0, 0,
          (far + near) / (near - far), 1};
}

}  // namespace sagitta::viewer
