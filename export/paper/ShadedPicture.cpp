#include "paper/ShadedPicture.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <numbers>
#include <string>

#include "plane/ParallelFor.hpp"

namespace sagitta {
namespace {

using Vector = std::array<double, 3>;

constexpr int samples = 3;              ///< each pixel is painted as so many by so many
constexpr double margin = 0.03;         ///< white beside the bodies, of the width
constexpr double crease = 0.75;         ///< cosine between normals beyond which two triangles show a line
constexpr double line_darkness = 0.45;  ///< what a line leaves of the light
constexpr double paper_light = 0.5;     ///< of full light, the least that a printed body gives back
constexpr double turn = -22 * std::numbers::pi / 180, rise = 38 * std::numbers::pi / 180;

double inner(const Vector& a, const Vector& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }
Vector difference(const Vector& a, const Vector& b) { return {a[0] - b[0], a[1] - b[1], a[2] - b[2]}; }
Vector outer(const Vector& a, const Vector& b) {
  return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}
Vector unit_of(const Vector& a) {
  const double size = std::sqrt(inner(a, a));
  return size > 0 ? Vector{a[0] / size, a[1] / size, a[2] / size} : Vector{0, 0, 1};
}

/// Where the eye is: unit vectors to the right and up in the picture, and toward the eye.
struct Eye {
  Vector right{std::cos(turn), std::sin(turn), 0};
  Vector up{-std::sin(turn) * std::sin(rise), std::cos(turn) * std::sin(rise), std::cos(rise)};
  Vector toward{std::sin(turn) * std::cos(rise), -std::cos(turn) * std::cos(rise), std::sin(rise)};
};

/// Parts of one, linear in light.
Vector light_of(const std::string& colour) {
  Vector parts{};
  for (std::size_t i = 0; i < 3; ++i)
    parts[i] = std::pow(std::stoi(colour.substr(1 + 2 * i, 2), nullptr, 16) / 255.0, 2.2);
  return parts;
}

/// A key light over the left shoulder, and a sky that is brighter above. Dark wood is shown lighter than it is, or its
/// cuts would not be seen.
Vector shade(const Vector& colour, const Vector& normal) {
  static const Vector key = unit_of({-0.45, -0.35, 0.82});
  const double light = 0.30 + 0.22 * normal[2] + 0.62 * std::max(0.0, inner(normal, key));
  Vector shown{};
  for (std::size_t i = 0; i < 3; ++i) shown[i] = std::min(1.0, (0.055 + 0.945 * colour[i]) * light);
  return shown;
}

/// A triangle in the picture's samples, x to the right, y up, z toward the eye.
struct Flat {
  std::array<Vector, 3> corners;
  int face = 0;  ///< of the smooth patch that it belongs to
  Vector light{};
};

/// Some rows of the picture at a time, so that what is painted on stays small: whole pictures are a hundred megabytes
/// of samples, and to fetch that from the system takes longer than to paint them.
class Band {
 public:
  /// Rows of samples from `low` up to `high`, counted from the picture's lower edge.
  void begin(int width, int low, int high) {
    width_ = width;
    low_ = low;
    high_ = high;
    const std::size_t size = static_cast<std::size_t>(width) * (high - low);
    depth_.assign(size, -1e300);
    seen_.assign(size, nullptr);
  }

  void fill(const Flat& flat) {
    const std::array<Vector, 3>& p = flat.corners;
    const double area = (p[1][0] - p[0][0]) * (p[2][1] - p[0][1]) - (p[1][1] - p[0][1]) * (p[2][0] - p[0][0]);
    if (area <= 0) return;  // turned away
    const auto whole = [](double value, int least, int most) {
      return std::clamp(static_cast<int>(std::ceil(value)), least, most);
    };
    const auto [low, high] = std::minmax({p[0][1], p[1][1], p[2][1]});
    for (int y = whole(low - 0.5, low_, high_); y < whole(high - 0.5, low_, high_); ++y) {
      const double py = y + 0.5;
      double from = 1e300, to = -1e300;
      for (std::size_t k = 0; k < 3; ++k) {
        const Vector &a = p[k], &b = p[(k + 1) % 3];
        if ((a[1] <= py) == (b[1] <= py)) continue;
        const double x = a[0] + (py - a[1]) / (b[1] - a[1]) * (b[0] - a[0]);
        from = std::min(from, x);
        to = std::max(to, x);
      }
      const auto weight = [&](const Vector& a, const Vector& b, double px) {
        return ((b[0] - a[0]) * (py - a[1]) - (b[1] - a[1]) * (px - a[0])) / area;
      };
      for (int x = whole(from - 0.5, 0, width_); x < whole(to - 0.5, 0, width_); ++x) {
        const double px = x + 0.5;
        const double z =
            weight(p[1], p[2], px) * p[0][2] + weight(p[2], p[0], px) * p[1][2] + weight(p[0], p[1], px) * p[2][2];
        const std::size_t at = place(x, y);
        if (z <= depth_[at]) continue;
        depth_[at] = z;
        seen_[at] = &flat;
      }
    }
  }

  /// A pixel's light: that of its samples, each darkened where its right or upper neighbour shows another face.
  Vector pixel(int column, int row) const {
    if (const Flat* const* all = alone(column * samples, row * samples)) return *all ? (*all)->light : Vector{1, 1, 1};
    Vector sum{};
    for (int i = 0; i < samples * samples; ++i) {
      const Vector here = light(column * samples + i % samples, row * samples + i / samples);
      for (std::size_t k = 0; k < 3; ++k) sum[k] += here[k] / (samples * samples);
    }
    return sum;
  }

 private:
  std::size_t place(int x, int y) const { return static_cast<std::size_t>(y - low_) * width_ + x; }

  /// What all samples of a pixel, and those to the right of it and above, show alike; null where they differ.
  const Flat* const* alone(int x, int y) const {
    const Flat* const* first = &seen_[place(x, y)];
    const int right = std::min(x + samples, width_ - 1), above = std::min(y + samples, high_ - 1);
    for (int row = y; row <= above; ++row)
      for (std::size_t at = place(x, row), last = place(right, row); at <= last; ++at)
        if (seen_[at] != *first) return nullptr;
    return first;
  }

  static int face(const Flat* flat) { return flat ? flat->face : -1; }

  Vector light(int x, int y) const {
    const std::size_t at = place(x, y);
    const int own = face(seen_[at]);
    const bool right = x + 1 < width_ && face(seen_[at + 1]) != own;
    const bool above = y + 1 < high_ && face(seen_[at + width_]) != own;
    Vector light = seen_[at] ? seen_[at]->light : Vector{1, 1, 1};
    if (right || above)
      for (double& part : light) part *= line_darkness;
    return light;
  }

  int width_ = 0, low_ = 0, high_ = 0;
  std::vector<double> depth_;
  std::vector<const Flat*> seen_;  ///< null: nothing
};

/// sRGB of light; neighbours are mostly alike, and the last answer is kept.
class Encoding {
 public:
  const std::array<std::uint8_t, 3>& operator()(const Vector& light) {
    if (light == last_) return bytes_;
    last_ = light;
    for (std::size_t k = 0; k < 3; ++k)
      bytes_[k] = static_cast<std::uint8_t>(std::lround(255 * std::pow(std::min(1.0, light[k]), 1 / 2.2)));
    return bytes_;
  }

 private:
  Vector last_{-1, -1, -1};
  std::array<std::uint8_t, 3> bytes_{};
};

/// The rows of a picture from `low` up to `high`, counted from its lower edge.
void paint_rows(Picture& picture, const std::vector<Flat>& flats, int low, int high) {
  Band band;
  Encoding encoded;
  // One row of samples more: lines are drawn where the row above shows another face.
  band.begin(samples * picture.width, samples * low, std::min(samples * picture.height, samples * high + 1));
  for (const Flat& flat : flats) band.fill(flat);
  auto to = picture.pixels.begin() + 3 * static_cast<std::ptrdiff_t>(picture.width) * (picture.height - high);
  for (int row = high - 1; row >= low; --row)
    for (int column = 0; column < picture.width; ++column) {
      const auto& bytes = encoded(band.pixel(column, row));
      to = std::copy(bytes.begin(), bytes.end(), to);
    }
}

/// The picture of the triangles, in bands from the top, side by side.
Picture painted(const std::vector<Flat>& flats, int width, int height) {
  constexpr int band_rows = 24;
  Picture picture{width, height, {}};
  picture.pixels.resize(3 * static_cast<std::size_t>(width) * height);
  parallel_for((height + band_rows - 1) / band_rows, [&](int i) {
    const int high = height - i * band_rows;
    paint_rows(picture, flats, std::max(0, high - band_rows), high);
  });
  return picture;
}

Vector point_of(const Mesh& mesh, std::uint32_t i) { return {mesh.points[i][0], mesh.points[i][1], mesh.points[i][2]}; }

Vector normal_of(const Mesh& mesh, const std::array<std::uint32_t, 3>& t) {
  const Vector a = point_of(mesh, t[0]);
  return unit_of(outer(difference(point_of(mesh, t[1]), a), difference(point_of(mesh, t[2]), a)));
}

/// A number for the smooth patch that each triangle belongs to: neighbours whose normals differ little share one.
std::vector<int> patches_of(const Mesh& mesh) {
  std::vector<int> patch(mesh.triangles.size());
  for (std::size_t i = 0; i < patch.size(); ++i) patch[i] = static_cast<int>(i);
  const auto root = [&](int i) {
    while (patch[i] != i) i = patch[i] = patch[patch[i]];
    return i;
  };
  std::map<std::pair<std::uint32_t, std::uint32_t>, int> sides;
  for (int i = 0; i < static_cast<int>(patch.size()); ++i)
    for (std::size_t k = 0; k < 3; ++k) {
      const std::uint32_t a = mesh.triangles[i][k], b = mesh.triangles[i][(k + 1) % 3];
      const auto [other, fresh] = sides.try_emplace(std::minmax(a, b), i);
      if (!fresh && inner(normal_of(mesh, mesh.triangles[i]), normal_of(mesh, mesh.triangles[other->second])) > crease)
        patch[root(i)] = root(other->second);
    }
  for (std::size_t i = 0; i < patch.size(); ++i) patch[i] = root(static_cast<int>(i));
  return patch;
}

struct Frame {
  double left = 1e300, right = -1e300, low = 1e300, high = -1e300;
};

Frame frame_of(const std::vector<PaintedBody>& bodies, const Eye& eye) {
  Frame frame;
  for (const PaintedBody& body : bodies)
    for (std::uint32_t i = 0; i < body.mesh->points.size(); ++i) {
      const Vector p = point_of(*body.mesh, i);
      frame.left = std::min(frame.left, inner(p, eye.right));
      frame.right = std::max(frame.right, inner(p, eye.right));
      frame.low = std::min(frame.low, inner(p, eye.up));
      frame.high = std::max(frame.high, inner(p, eye.up));
    }
  return frame;
}

}  // namespace

Picture paint(const std::vector<PaintedBody>& bodies, int width) {
  const Eye eye;
  const Frame frame = frame_of(bodies, eye);
  const double scale = samples * width * (1 - 2 * margin) / (frame.right - frame.left);
  const double border = samples * width * margin;
  const int height = static_cast<int>(std::ceil((scale * (frame.high - frame.low) + 2 * border) / samples));
  std::vector<Flat> flats;
  int first = 0;
  for (const PaintedBody& body : bodies) {
    const Vector colour = light_of(body.colour);
    const std::vector<int> patches = patches_of(*body.mesh);
    for (std::size_t i = 0; i < patches.size(); ++i) {
      std::array<Vector, 3> corners;
      for (std::size_t k = 0; k < 3; ++k) {
        const Vector p = point_of(*body.mesh, body.mesh->triangles[i][k]);
        corners[k] = {border + scale * (inner(p, eye.right) - frame.left),
                      border + scale * (inner(p, eye.up) - frame.low), scale * inner(p, eye.toward)};
      }
      flats.push_back({corners, first + patches[i], shade(colour, normal_of(*body.mesh, body.mesh->triangles[i]))});
    }
    first += static_cast<int>(patches.size());
  }
  return painted(flats, width, height);
}

std::string on_paper(const std::string& colour) {
  std::string lighter = "#";
  for (const double part : light_of(colour)) {
    char digits[3];
    std::snprintf(digits, sizeof digits, "%02x",
                  static_cast<unsigned>(std::lround(255 * std::pow(paper_light + (1 - paper_light) * part, 1 / 2.2))));
    lighter += digits;
  }
  return lighter;
}

}  // namespace sagitta
