#include "picture/Scene.hpp"

#include <random>
#include <vector>

#include "picture/Shading.hpp"

namespace sagitta::viewer {

namespace {

constexpr int noise_size = 256;
constexpr float bench_reach = 4000;
constexpr float uncut = -1e9f;

float linear(float c) { return std::pow(c, 2.2f); }
std::array<float, 3> linear(const std::array<float, 4>& c) { return {linear(c[0]), linear(c[1]), linear(c[2])}; }

/// Smooth noise that repeats: three octaves of random values, each spread over the texture by bilinear weights.
std::vector<std::uint8_t> noise_values() {
  std::vector<float> sum(noise_size * noise_size, 0);
  std::mt19937 random(7);
  float weight = 0.5f;
  for (int cells = 64; cells <= noise_size; cells *= 2, weight *= 0.6f) {
    std::vector<float> knots(static_cast<std::size_t>(cells * cells));
    for (float& k : knots) k = static_cast<float>(random() % 1024) / 1023.0f;
    const auto knot = [&](int i, int j) { return knots[static_cast<std::size_t>((i % cells) * cells + j % cells)]; };
    const int step = noise_size / cells;
    for (int y = 0; y < noise_size; ++y)
      for (int x = 0; x < noise_size; ++x) {
        const int i = y / step, j = x / step;
        const float u = static_cast<float>(y % step) / static_cast<float>(step);
        const float v = static_cast<float>(x % step) / static_cast<float>(step);
        const float su = u * u * (3 - 2 * u), sv = v * v * (3 - 2 * v);
        sum[static_cast<std::size_t>(y * noise_size + x)] +=
            weight * ((1 - su) * ((1 - sv) * knot(i, j) + sv * knot(i, j + 1)) +
                      su * ((1 - sv) * knot(i + 1, j) + sv * knot(i + 1, j + 1)));
      }
  }
  std::vector<std::uint8_t> values;
  for (const float s : sum) values.push_back(static_cast<std::uint8_t>(std::min(255.0f, s / 0.98f * 255)));
  return values;
}

Texture noise_texture() {
  Texture made = Texture::make();
  const std::vector<std::uint8_t> values = noise_values();
  glBindTexture(GL_TEXTURE_2D, made.id());
  glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
  glTexImage2D(GL_TEXTURE_2D, 0, GL_R8, noise_size, noise_size, 0, GL_RED, GL_UNSIGNED_BYTE, values.data());
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR_MIPMAP_NEAREST);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
  glGenerateMipmap(GL_TEXTURE_2D);
  return made;
}

Mat raised(float by) {
  Mat m = identity();
  m[14] = by;
  return m;
}

}  // namespace

Scene::Scene()
    : things_(things_vertex(), things_fragment()),
      lines_(lines_vertex(), lines_fragment()),
      bench_(bench_vertex(), bench_fragment(false)),
      quick_bench_(bench_vertex(), bench_fragment(true)),
      noise_(noise_texture()),
      bench_surface_(VertexArray::make()),
      bench_corners_(Buffer::make()) {
  const float r = bench_reach, z = -0.05f;
  const float corners[] = {-r, -r, z, r, -r, z, -r, r, z, r, -r, z, r, r, z, -r, r, z};
  glBindVertexArray(bench_surface_.id());
  glBindBuffer(GL_ARRAY_BUFFER, bench_corners_.id());
  glBufferData(GL_ARRAY_BUFFER, sizeof corners, corners, GL_STATIC_DRAW);
  glEnableVertexAttribArray(0);
  glVertexAttribPointer(0, 3, GL_FLOAT, GL_FALSE, 0, nullptr);
  glBindVertexArray(0);
}

void Scene::draw(const Target& target, const Camera& camera, const Showing& showing, const Ink& ink) const {
  target.bind();
  glDisable(GL_SCISSOR_TEST);
  glDisable(GL_BLEND);
  glEnable(GL_DEPTH_TEST);
  glDepthMask(GL_TRUE);
  glDepthFunc(GL_LEQUAL);
  glClearColor(ink.far[0], ink.far[1], ink.far[2], 1);
  glClear(GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
  glActiveTexture(GL_TEXTURE0);
  glBindTexture(GL_TEXTURE_2D, noise_.id());
  if (showing.bench && camera.rise > 0.02f) draw_bench(showing.quick ? quick_bench_ : bench_, camera, ink);
  if (showing.cut) glEnable(GL_CLIP_DISTANCE0);
  draw_things(camera, showing, ink);
  draw_lines(camera, showing, ink);
  glDisable(GL_CLIP_DISTANCE0);
  glDisable(GL_DEPTH_TEST);
  glUseProgram(0);
  target.resolve();
}

void Scene::draw_bench(const Program& bench, const Camera& camera, const Ink& ink) const {
  bench.use();
  bench.set("view", camera.matrix());
  bench.set("noise", 0);
  for (std::size_t i = 0; i < 4; ++i) {
    const auto& a = footprint_[i];
    const auto& b = footprint_[(i + 1) % 4];
    const float dx = b[0] - a[0], dy = b[1] - a[1], l = std::max(std::hypot(dx, dy), 1e-3f);
    const std::array<float, 4> side{dy / l, -dx / l, (dy * a[0] - dx * a[1]) / l, 0};
    const char* const names[] = {"sides[0]", "sides[1]", "sides[2]", "sides[3]"};
    bench.set(names[i], side);
  }
  bench.set("bench_colour", ink.bench);
  bench.set("far_colour", ink.far);
  bench.set("middle", std::array<float, 2>{camera.target.x, camera.target.y});
  bench.set("reach", std::min(camera.distance * 2.2f, bench_reach));
  bench.set("shadow", ink.shadow);
  glBindVertexArray(bench_surface_.id());
  glDrawArrays(GL_TRIANGLES, 0, 6);
  glBindVertexArray(0);
}

void Scene::draw_things(const Camera& camera, const Showing& showing, const Ink& ink) const {
  const Vec eye = camera.eye(), back = camera.back();
  things_.use();
  things_.set("view", camera.matrix());
  things_.set("noise", 0);
  things_.set("eye", std::array<float, 3>{eye.x, eye.y, eye.z});
  things_.set("back", std::array<float, 3>{back.x, back.y, back.z});
  things_.set("parallel_rays", camera.parallel ? 1 : 0);
  things_.set("cutting", showing.cut ? 1 : 0);
  things_.set("cut", showing.cut.value_or(uncut));
  things_.set("span", showing.span);
  const auto accent = linear(ink.accent);
  const bool height = showing.shade == Shade::height, left = showing.shade == Shade::remaining;
  constexpr std::array<float, 3> light{0.85f, 0.82f, 0.74f}, dark{0.012f, 0.02f, 0.035f}, blue{0.01f, 0.05f, 0.16f};
  things_.set("low_colour", height ? dark : left ? accent : blue);
  things_.set("high_colour", height || left ? light : accent);
  glEnable(GL_POLYGON_OFFSET_FILL);
  glPolygonOffset(1, 1);
  for (const Part part : {Part::body, Part::pieces, Part::frets, Part::strings, Part::neck}) {
    const auto i = static_cast<std::size_t>(part);
    const bool neck = part == Part::neck;
    if (!showing.parts[i] || (neck && !showing.neck_solid)) continue;
    const bool pieces = part == Part::pieces, remaining = showing.shade == Shade::remaining;
    const bool shaded = pieces ? height || remaining : part == Part::body && !remaining;
    things_.set("view", camera.matrix() * raised(pieces ? showing.lift : neck ? -showing.apart : 0));
    things_.set("shade", shaded ? static_cast<int>(showing.shade) : 0);
    things_.set("opacity", 1.0f);
    parts_[i].draw_triangles();
  }
  things_.set("view", camera.matrix());
  glDisable(GL_POLYGON_OFFSET_FILL);
  if (showing.parts[static_cast<std::size_t>(Part::neck)] && !showing.neck_solid) {
    things_.set("view", camera.matrix() * raised(-showing.apart));
    glEnable(GL_BLEND);
    glBlendFunc(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA);
    glDepthMask(GL_FALSE);
    things_.set("shade", 0);
    things_.set("opacity", 0.38f);
    parts_[static_cast<std::size_t>(Part::neck)].draw_triangles();
    glDepthMask(GL_TRUE);
    glDisable(GL_BLEND);
  }
}

void Scene::draw_lines(const Camera& camera, const Showing& showing, const Ink& ink) const {
  lines_.use();
  lines_.set("view", camera.matrix());
  lines_.set("cut", showing.cut.value_or(uncut));
  glEnable(GL_BLEND);
  glBlendFunc(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA);
  if (showing.edges) {
    lines_.set("ink", ink.edge);
    parts_[static_cast<std::size_t>(Part::body)].draw_edges();
    lines_.set("ink", std::array<float, 4>{ink.edge[0], ink.edge[1], ink.edge[2], 0.4f});
    lines_.set("view", camera.matrix() * raised(-showing.apart));
    if (showing.parts[static_cast<std::size_t>(Part::neck)]) parts_[static_cast<std::size_t>(Part::neck)].draw_edges();
    lines_.set("view", camera.matrix());
  }
  if (showing.parts[static_cast<std::size_t>(Part::other)]) {
    lines_.set("ink", ink.accent);
    glDisable(GL_DEPTH_TEST);
    parts_[static_cast<std::size_t>(Part::other)].draw_edges();
    glEnable(GL_DEPTH_TEST);
  }
  glDisable(GL_BLEND);
}

}  // namespace sagitta::viewer
