/// The inlay pieces as they lie in their pockets, for the picture.

#include <algorithm>
#include <cmath>

#include "inlay/Flatten.hpp"
#include "jobs/Dressing.hpp"
#include "plan/Feature.hpp"
#include "scene/Slabs.hpp"

namespace sagitta::viewer {

namespace {

constexpr double seen = 0.005;    ///< mm: finer corners are not drawn
constexpr double cell = 2;        ///< mm across, so that the top follows the surface
constexpr double slot_over = 50;  ///< mm that a slot is drawn longer than it is, to run through every piece

/// What one piece is dressed from.
struct Cutting {
  const PreparedBoard& board;
  WorkDone done;
};

/// What the slots have left of a piece, and the outline, once they are cut.
Region left_of(const Cutting& c, const InlayPiece& piece) {
  Region region = flattened(piece.piece);
  if (c.done.outline) region = intersection(region, flattened(Loops{c.board.layout().outline}));
  if (c.done.slots) {
    const Box box = bounds(region);
    for (const Slot& slot : c.board.slots()) {
      const double low = std::min(slot.bass_end.x, slot.treble_end.x),
                   high = std::max(slot.bass_end.x, slot.treble_end.x);
      if (high + slot.width < box.low.x || low - slot.width > box.high.x) continue;
      const Point along = unit(slot.treble_end - slot.bass_end), side = (slot.width / 2) * left_of(along);
      const bool through = c.board.board().slots.ends == SlotEnds::through;
      const Point a = slot.bass_end - (through ? slot_over : 0) * along,
                  b = slot.treble_end + (through ? slot_over : 0) * along;
      region = difference(region, filled({{a - side, b - side, b + side, a + side}}));
    }
  }
  return thinned(region, seen);
}

class PieceDresser {
 public:
  PieceDresser(const Cutting& cutting, const InlayPiece& piece, RenderMesh& skin)
      : c_(cutting),
        piece_(piece),
        skin_(skin),
        cloth_(appearance_of(cutting.board.board(), piece.material)),
        floor_(cutting.board.surface().thickness - piece.depth) {}

  void dress(const Region& region) {
    for (const Slab& slab : slabs(region)) add_top(slab);
    for (const Polygon& polygon : region)
      for (std::size_t i = 0; i < polygon.size(); ++i) add_wall(polygon[i], polygon[(i + 1) % polygon.size()]);
  }

 private:
  double surface_at(Point p) const {
    return c_.board.surface().exists(p.x, p.y) ? c_.board.surface().height(p.x, p.y) : c_.board.surface().thickness;
  }
  double top(Point p) const {
    const double thick = floor_ + piece_.thickness;
    return c_.done.radius ? std::min(thick, surface_at(p) + c_.done.on_top) : thick;
  }
  /// What will be left of the piece when everything is cut and sanded.
  float remaining(Point p) const {
    return static_cast<float>(std::min(floor_ + piece_.thickness, surface_at(p)) - floor_);
  }
  std::uint32_t vertex(Point p, double z, Vec normal) {
    const Vec place{static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(z)};
    skin_.vertices.push_back({place, normal, cloth_.colour, static_cast<float>(cloth_.finish), remaining(p)});
    return static_cast<std::uint32_t>(skin_.vertices.size() - 1);
  }
  void add_top(const Slab& slab) {
    const double wide = std::max(slab.high_a - slab.low_a, slab.high_b - slab.low_b);
    const int cells = std::max(1, static_cast<int>(std::ceil(wide / cell)));
    const auto place = [&](bool far, int k) {
      const double part = 1.0 * k / cells;
      return far ? Point{slab.b, slab.low_b + part * (slab.high_b - slab.low_b)}
                 : Point{slab.a, slab.low_a + part * (slab.high_a - slab.low_a)};
    };
    const auto normal = [&](Point p) {
      return c_.done.radius ? surface_normal(c_.board.surface(), p.x, p.y) : Vec{0, 0, 1};
    };
    for (int k = 0; k < cells; ++k) {
      std::uint32_t v[4];
      const Point corners[] = {place(false, k), place(true, k), place(true, k + 1), place(false, k + 1)};
      for (std::size_t i = 0; i < 4; ++i) v[i] = vertex(corners[i], top(corners[i]), normal(corners[i]));
      for (const std::uint32_t i : {0, 1, 2, 0, 2, 3}) skin_.triangles.push_back(v[i]);
    }
  }
  void add_wall(Point p, Point q) {
    const Point along = q - p;
    const Vec out = unit({static_cast<float>(along.y), static_cast<float>(-along.x), 0});
    const std::uint32_t v[] = {vertex(p, floor_, out), vertex(q, floor_, out), vertex(q, top(q), out),
                               vertex(p, top(p), out)};
    for (const std::uint32_t i : {0, 1, 2, 0, 2, 3}) skin_.triangles.push_back(v[i]);
  }

  const Cutting& c_;
  const InlayPiece& piece_;
  RenderMesh& skin_;
  Appearance cloth_;
  double floor_;
};

}  // namespace

RenderMesh dress_pieces(const PreparedBoard& board, Stage stage) {
  const Cutting cutting{board, work_done_at(board.board(), stage)};
  RenderMesh skin;
  if (!cutting.done.pockets) return skin;
  for (const InlayPiece& piece : board.pieces()) PieceDresser(cutting, piece, skin).dress(left_of(cutting, piece));
  skin.bound();
  return skin;
}

}  // namespace sagitta::viewer
