#include <algorithm>
#include <numbers>

#include "board/SlotCut.hpp"
#include "jobs/Dressing.hpp"
#include "layout/SlotLines.hpp"
#include "scene/NeckFit.hpp"

namespace sagitta::viewer {

namespace {

constexpr float turn = 2 * std::numbers::pi_v<float>;
constexpr Colour wire_colour{200, 198, 192, 255}, string_colour{186, 186, 184, 255}, nut_colour{236, 226, 203, 255};
constexpr Colour line_colour{232, 214, 178, 255};

Vec at_height(Point p, double z) { return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(z)}; }

double height_on(const Surface& s, Point p) { return s.exists(p.x, p.y) ? s.height(p) : s.thickness; }
/// Of the wood, with rolled and bevelled edges.
double wood_height(const Surface& s, Point p) { return s.exists(p.x, p.y) ? s.lowest(p) : s.thickness; }

/// Adds a strip of render mesh through rings of points; each ring has the same number of points and normals.
class Sweep {
 public:
  Sweep(RenderMesh& skin, Colour colour, Finish finish) : skin_(skin), colour_(colour), finish_(finish) {}

  void ring(const std::vector<Vec>& points, const std::vector<Vec>& normals) {
    const auto start = static_cast<std::uint32_t>(skin_.vertices.size());
    const auto count = static_cast<std::uint32_t>(points.size());
    for (std::size_t i = 0; i < points.size(); ++i)
      skin_.vertices.push_back({points[i], normals[i], colour_, static_cast<float>(finish_), 0});
    if (started_)
      for (std::uint32_t i = 0; i + 1 < count; ++i) {
        const std::uint32_t a = last_ + i, b = start + i;
        for (const std::uint32_t v : {a, b, b + 1, a, b + 1, a + 1}) skin_.triangles.push_back(v);
      }
    last_ = start, started_ = true;
  }

 private:
  RenderMesh& skin_;
  Colour colour_;
  Finish finish_;
  bool started_ = false;
  std::uint32_t last_ = 0;
};

/// What stands on the surface at a fret's place.
struct Bar {
  float width, height, lean;  ///< lean: how its ends are filed, the tangent of their bevel
  Colour colour;
  Finish finish;
};

Bar bar_of(const Board& board) {
  constexpr float usual_bevel = 0.6f;  // about 30 degrees
  constexpr float flush = 0.02f;       // a line is level with the wood; lifted so that it is seen
  const Wire& wire = board.wire;
  if (slot_cut(board) == SlotCut::lines)
    return {static_cast<float>(line_thickness(board)), flush, 0, line_colour, Finish::wood};
  return {static_cast<float>(wire.crown_width), static_cast<float>(wire.crown_height), usual_bevel, wire_colour,
          Finish::metal};
}

/// Closes a bar's end: a fan round the first of its points. `out`: the normal.
void add_cap(RenderMesh& skin, const std::vector<Vec>& points, Vec out, const Bar& bar) {
  const auto start = static_cast<std::uint32_t>(skin.vertices.size());
  for (const Vec p : points) skin.vertices.push_back({p, out, bar.colour, static_cast<float>(bar.finish), 0});
  for (std::uint32_t i = 1; i + 1 < points.size(); ++i)
    for (const std::uint32_t v : {start, start + i, start + i + 1}) skin.triangles.push_back(v);
}

/// A crowned bar from one point to another, standing on the surface; ends leaning in as they are filed.
void add_bar(RenderMesh& skin, const Bar& bar, const Surface& surface, Point from, Point to) {
  constexpr int along = 20, around = 8;
  const float lean = bar.lean;
  const Point direction = unit(to - from), across = left_of(direction);
  const float half = bar.width / 2, tall = bar.height;
  Sweep sweep(skin, bar.colour, bar.finish);
  for (int i = 0; i <= along; ++i) {
    const double s = static_cast<double>(i) / along;
    const Point middle = between(from, to, s);
    const double base = wood_height(surface, middle);
    std::vector<Vec> points, normals;
    for (int j = 0; j <= around; ++j) {
      const float angle = turn / 2 * static_cast<float>(j) / around;
      const float u = half * std::cos(angle), h = tall * std::sin(angle);
      const float in = i == 0 ? lean * h : i == along ? -lean * h : 0;
      const Point p = middle + static_cast<double>(u) * across + static_cast<double>(in) * direction;
      points.push_back(at_height(p, base + h));
      normals.push_back(unit({static_cast<float>(across.x) * std::cos(angle) * tall,
                              static_cast<float>(across.y) * std::cos(angle) * tall, std::sin(angle) * half}));
    }
    sweep.ring(points, normals);
    if (i > 0 && i < along) continue;
    const float away = i == 0 ? -1.0f : 1.0f;
    add_cap(skin, points, unit({away * static_cast<float>(direction.x), away * static_cast<float>(direction.y), lean}),
            bar);
  }
}

/// The bars at a fret's place: one along each part of its slot, to the finished edges where the heel end does not cut
/// it. Without a slot there is none.
void add_fret(RenderMesh& skin, const Bar& bar, const PreparedBoard& board, const FretLine& fret) {
  for (const Slot& slot : board.layout().slots)
    if (slot.fret == fret.fret)
      add_bar(skin, bar, board.surface(), slot.bass_open ? slot.bass_end : fret.bass_edge,
              slot.treble_open ? slot.treble_end : fret.treble_edge);
}

void add_tube(RenderMesh& skin, Vec a, Vec b, float radius, Colour colour) {
  constexpr int sides = 8;
  const Vec along = unit(b - a), side = unit(cross({0, 0, 1}, along)), up = cross(along, side);
  Sweep sweep(skin, colour, Finish::metal);
  for (const Vec end : {a, b}) {
    std::vector<Vec> points, normals;
    for (int j = 0; j <= sides; ++j) {
      const float angle = turn * static_cast<float>(j) / sides;
      const Vec n = std::cos(angle) * side + std::sin(angle) * up;
      points.push_back(end + radius * n);
      normals.push_back(n);
    }
    sweep.ring(points, normals);
  }
}

double string_radius(const Board& board, std::size_t i) {
  if (i < board.strings.gauges.size()) return board.strings.gauges[i] / 2;
  const double n = std::max(board.strings.count - 1, 1);
  return 0.6 - 0.45 * static_cast<double>(i) / n;  // bass to treble, for the picture only
}

void add_strings(RenderMesh& skin, const Board& board, const Layout& layout, const Surface& surface) {
  constexpr double over_crown = 0.4, beyond = 40, action = 6;
  const double end = std::min(layout.mean_scale, layout.heel_end + beyond);
  for (std::size_t i = 0; i < layout.strings.size(); ++i) {
    const LineSegment& line = layout.strings[i];
    const double low = height_on(surface, line.a) + bar_of(board).height + over_crown;
    const double share = (end - line.a.x) / std::max(line.b.x - line.a.x, 1.0);
    const Point stop = between(line.a, line.b, share);
    const double high = low + action * share;
    add_tube(skin, at_height(line.a, low), at_height(stop, high), static_cast<float>(string_radius(board, i)),
             string_colour);
  }
}

void add_box(RenderMesh& skin, const std::array<Point, 4>& corners, double floor, const std::array<double, 4>& top,
             Colour colour, Finish finish) {
  const auto quad = [&](Vec a, Vec b, Vec c, Vec d) {
    const Vec n = unit(cross(b - a, c - a));
    const auto start = static_cast<std::uint32_t>(skin.vertices.size());
    for (const Vec p : {a, b, c, d}) skin.vertices.push_back({p, n, colour, static_cast<float>(finish), 0});
    for (const std::uint32_t i : {0u, 1u, 2u, 0u, 2u, 3u}) skin.triangles.push_back(start + i);
  };
  std::array<Vec, 4> low, high;
  for (std::size_t i = 0; i < 4; ++i) low[i] = at_height(corners[i], floor), high[i] = at_height(corners[i], top[i]);
  quad(high[0], high[1], high[2], high[3]);
  for (std::size_t i = 0; i < 4; ++i) quad(low[i], low[(i + 1) % 4], high[(i + 1) % 4], high[i]);
}

void add_nut(RenderMesh& skin, const Board& board, const Layout& layout, const Surface& surface) {
  if (!layout.nut) return;
  const NutGround& nut = *layout.nut;
  const double lean = std::max(std::abs(nut.direction.y), 0.2);
  const double low = layout.edge(0, nut.face.x) / lean, high = layout.edge(1, nut.face.x) / lean;
  const Point back = nut.shelf ? nut.face - Point{board.nut.width, 0} : nut.back;
  const std::array<Point, 4> corners{back - low * nut.direction, nut.face - low * nut.direction,
                                     nut.face + high * nut.direction, back + high * nut.direction};
  const double rise = bar_of(board).height + 1.0;
  std::array<double, 4> top{};
  for (std::size_t i = 0; i < 4; ++i) top[i] = height_on(surface, corners[i]) + rise;
  add_box(skin, corners, surface.thickness - nut.depth, top, nut_colour, Finish::bone);
}

/// The neck of a board that names no file of it.
void add_neck(RenderMesh& skin, const PreparedBoard& prepared) {
  const Board& board = prepared.board();
  const Layout& layout = prepared.layout();
  constexpr int along = 24, around = 20;
  constexpr float depth_at_nut = 15, depth_at_heel = 18;  // for the picture only
  double end = layout.heel_end;
  if (board.neck && board.neck->joint_fret && *board.neck->joint_fret < static_cast<int>(layout.frets.size()))
    end = layout.frets[static_cast<std::size_t>(*board.neck->joint_fret)].middle.x;
  const auto fit = neck_fit(prepared, nullptr);
  Sweep sweep(skin, neck_colour, Finish::wood);
  for (int i = 0; i <= along; ++i) {
    const double s = static_cast<double>(i) / along, x = layout.nut_end + s * (end - layout.nut_end);
    const auto half = [&](std::size_t side) {
      return static_cast<float>(fit ? neck_edge(*fit, layout, side, x) : layout.edge(static_cast<int>(side), x));
    };
    const float bass = half(0), treble = half(1);
    const float depth = depth_at_nut + static_cast<float>(s) * (depth_at_heel - depth_at_nut);
    std::vector<Vec> points, normals;
    for (int j = 0; j <= around; ++j) {
      const float angle = turn / 2 * static_cast<float>(j) / around;
      const float wide = std::cos(angle) > 0 ? bass : treble;
      points.push_back({static_cast<float>(x), -wide * std::cos(angle), -depth * std::sin(angle) - 0.1f});
      normals.push_back(unit({0, -std::cos(angle) * depth, -std::sin(angle) * wide}));
    }
    sweep.ring(points, normals);
  }
}

}  // namespace

Fittings dress_fittings(const PreparedBoard& prepared, const NeckReading* neck, const NeckWood* wood) {
  const Board& board = prepared.board();
  const Layout& layout = prepared.layout();
  const Surface& surface = prepared.surface();
  Fittings fittings;
  for (const FretLine& fret : layout.frets)
    if (slot_cut(board) != SlotCut::none && (fret.fret > 0 || board.scale.zero_fret))
      add_fret(fittings.frets, bar_of(board), prepared, fret);
  add_strings(fittings.strings, board, layout, surface);
  add_nut(fittings.strings, board, layout, surface);
  if (!board.neck || board.neck->file.empty())
    add_neck(fittings.neck, prepared), fittings.neck_as = NeckAs::sketch;
  else if (neck && neck->shape && is_measured(*neck->shape) && wood && wood->failure.empty())
    fittings.neck = dress_neck_wood(*wood), fittings.neck_as = NeckAs::solid;
  for (RenderMesh* skin : {&fittings.frets, &fittings.strings, &fittings.neck}) skin->bound();
  return fittings;
}

}  // namespace sagitta::viewer
