#include "cad/StlFile.hpp"

#include <bit>
#include <cmath>
#include <cstdint>

namespace sagitta {
namespace {

constexpr std::size_t header_size = 80;
constexpr std::size_t triangle_size = 50;

using Vector = std::array<float, 3>;

void put(std::string& bytes, std::uint32_t value) {
  for (int shift = 0; shift < 32; shift += 8) bytes += static_cast<char>((value >> shift) & 0xff);
}

void put(std::string& bytes, const Vector& vector) {
  for (const float value : vector) put(bytes, std::bit_cast<std::uint32_t>(value));
}

/// Unit normal of a triangle seen counter-clockwise; zero when its area is zero.
Vector normal(const Vector& a, const Vector& b, const Vector& c) {
  double u[3], v[3];
  for (std::size_t i = 0; i < 3; ++i) {
    u[i] = double{b[i]} - double{a[i]};
    v[i] = double{c[i]} - double{a[i]};
  }
  const double n[3] = {u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
  const double size = std::hypot(n[0], n[1], n[2]);
  if (size == 0) return {0, 0, 0};
  // Adding zero turns a negative zero into a plain one, so that equal normals are equal bytes.
  return {static_cast<float>(n[0] / size) + 0.0F, static_cast<float>(n[1] / size) + 0.0F,
          static_cast<float>(n[2] / size) + 0.0F};
}

std::string header(const std::string& title) {
  std::string text = "Sagitta, mm: ";
  for (const char c : title)
    if (c >= ' ' && c <= '~' && text.size() < header_size) text += c;
  text.resize(header_size, ' ');
  return text;
}

}  // namespace

std::string stl_bytes(const Mesh& mesh, const std::string& title) {
  std::string bytes = header(title);
  bytes.reserve(header_size + 4 + triangle_size * mesh.triangles.size());
  put(bytes, static_cast<std::uint32_t>(mesh.triangles.size()));
  for (const auto& [i, j, k] : mesh.triangles) {
    const Vector &a = mesh.points[i], &b = mesh.points[j], &c = mesh.points[k];
    put(bytes, normal(a, b, c));
    put(bytes, a);
    put(bytes, b);
    put(bytes, c);
    bytes.append(2, '\0');
  }
  return bytes;
}

}  // namespace sagitta
