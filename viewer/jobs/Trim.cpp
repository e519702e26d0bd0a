#include <algorithm>
#include <cmath>
#include <numbers>

#include "jobs/Dressing.hpp"
#include "plan/OutlinedStage.hpp"

namespace sagitta::viewer {

namespace {

constexpr int stations = 48;
/// The board file does not say what binding and side dots are made of: they are shown as pale plastic, dots in a
/// binding as dark.
constexpr Appearance pale{{240, 232, 208, 255}, Finish::plastic}, dark{{38, 34, 32, 255}, Finish::plastic};
constexpr float whole = 1e3f;  ///< more than any thickness: the shading of what is left takes it for untouched

/// A strip along one long edge, from so far to so far inward of it, square to the edge.
struct Strip {
  int side = 0;
  double from = 0, to = 0;
  Appearance cloth;
};

class TrimDresser {
 public:
  TrimDresser(const PreparedBoard& board, RenderMesh& skin)
      : layout_(board.layout()), surface_(board.surface()), skin_(skin) {}

  void add(const Strip& strip, double height) {
    const auto i = static_cast<std::size_t>(strip.side);
    const double out = strip.side == 0 ? -1 : 1, square = std::hypot(1.0, layout_.edge_slope[i]);
    const auto place = [&](int k, double inward) {
      const double x = layout_.nut_end + (layout_.heel_end - layout_.nut_end) * k / stations;
      return Point{x, out * (layout_.edge(strip.side, x) - square * inward)};
    };
    for (int k = 0; k < stations; ++k) {
      const Point a = place(k, strip.from), b = place(k + 1, strip.from), c = place(k + 1, strip.to),
                  d = place(k, strip.to);
      quad({up(a), up(b), up(c), up(d)}, {normal(a), normal(b), normal(c), normal(d)}, strip.cloth, out > 0);
      const Vec side{0, static_cast<float>(out), 0};
      quad({up(a), up(b), down(b, height), down(a, height)}, {side, side, side, side}, strip.cloth, out < 0);
    }
    for (const int k : {0, stations}) {
      const Point a = place(k, strip.from), d = place(k, strip.to);
      const Vec end{k == 0 ? -1.0f : 1.0f, 0, 0};
      quad({up(a), up(d), down(d, height), down(a, height)}, {end, end, end, end}, strip.cloth, (k == 0) == (out > 0));
    }
  }

  /// A disc in the wall of an edge.
  void add(const SideDot& dot, const Appearance& cloth) {
    constexpr int corners = 20;
    constexpr double proud = 0.02;  // mm, so that the wall does not cover it
    const Point along{-dot.inward.y, dot.inward.x}, mouth = dot.mouth - proud * dot.inward;
    const double middle = surface_.height(dot.mouth) / 2;  // as the hole is made, also under a rolled edge
    const Vec out{static_cast<float>(-dot.inward.x), static_cast<float>(-dot.inward.y), 0};
    const auto start = static_cast<std::uint32_t>(skin_.vertices.size());
    for (int i = 0; i < corners; ++i) {
      const double angle = 2 * std::numbers::pi * i / corners;
      const Point p = mouth + dot.radius * std::cos(angle) * along;
      put({static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(middle + dot.radius * std::sin(angle))},
          out, cloth);
    }
    for (std::uint32_t i = 1; i + 1 < corners; ++i)
      for (const std::uint32_t v : {start, start + i + 1, start + i}) skin_.triangles.push_back(v);
  }

 private:
  double top(Point p) const { return surface_.exists(p.x, p.y) ? surface_.lowest(p) : surface_.thickness; }
  Vec up(Point p) const { return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(top(p))}; }
  /// The strip's lower edge: `height` below its top, or the glue face where it goes all the way.
  Vec down(Point p, double height) const {
    const double z = height > 0 ? std::max(top(p) - height, 0.0) : 0;
    return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(z)};
  }
  Vec normal(Point p) const { return surface_normal(surface_, p.x, p.y); }
  void put(Vec place, Vec normal, const Appearance& cloth) {
    skin_.vertices.push_back({place, normal, cloth.colour, static_cast<float>(cloth.finish), whole});
  }
  void quad(const std::array<Vec, 4>& corners, const std::array<Vec, 4>& normals, const Appearance& cloth, bool turn) {
    const auto start = static_cast<std::uint32_t>(skin_.vertices.size());
    for (std::size_t i = 0; i < 4; ++i) put(corners[i], normals[i], cloth);
    if (turn)
      for (const std::uint32_t v : {0u, 2u, 1u, 0u, 3u, 2u}) skin_.triangles.push_back(start + v);
    else
      for (const std::uint32_t v : {0u, 1u, 2u, 0u, 2u, 3u}) skin_.triangles.push_back(start + v);
  }

  const Layout& layout_;
  const Surface& surface_;
  RenderMesh& skin_;
};

}  // namespace

void dress_trim(const PreparedBoard& prepared, Stage stage, RenderMesh& skin) {
  const Board& board = prepared.board();
  if (!is_outlined(stage)) return;
  TrimDresser dresser(prepared, skin);
  if (board.binding)
    for (const int side : {0, 1}) {
      double inward = board.binding->width;
      dresser.add({side, 0, inward, pale}, board.binding->height);
      for (std::size_t i = 0; i < board.binding->lines.size(); ++i) {
        const auto& names = board.binding->line_materials;
        const Appearance cloth = i < names.size() ? appearance_of(board, names[i]) : pale;
        dresser.add({side, inward, inward + board.binding->lines[i], cloth}, board.binding->height);
        inward += board.binding->lines[i];
      }
    }
  for (const SideDot& dot : prepared.side_dots()) dresser.add(dot, board.binding ? dark : pale);
  skin.bound();
}

}  // namespace sagitta::viewer
