#include "overlay/EdgeDrawing.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "scene/NeckFit.hpp"

namespace sagitta::viewer {

namespace {

constexpr double seen_gap = 0.005;  ///< mm; a gap under this is closed
constexpr double neck_shown = 1.2;  ///< mm of the neck under the board
constexpr ImU32 pale = IM_COL32(240, 232, 208, 255), neck_ink = IM_COL32(205, 170, 122, 255);

ImU32 with_alpha(ImU32 colour, unsigned alpha) { return (colour & ~IM_COL32_A_MASK) | alpha << IM_COL32_A_SHIFT; }

/// A slot's end on this side of the board.
Point end_of(const Slot& slot, bool bass) { return bass ? slot.bass_end : slot.treble_end; }

/// The slot in the middle of the board.
const Slot* middle_slot(const Layout& layout) {
  const double middle = layout.heel_end / 2;
  const auto nearer = [&](const Slot& a, const Slot& b) {
    return std::abs(a.bass_end.x - middle) < std::abs(b.bass_end.x - middle);
  };
  const auto found = std::min_element(layout.slots.begin(), layout.slots.end(), nearer);
  return found == layout.slots.end() ? nullptr : &*found;
}

/// The slot that is dimensioned: where its end lies, and the wood's height above its floor there.
struct SlotEnd {
  double x = 0, floor = 0, depth = 0, inward = 0;
  bool open = true;
};

std::optional<SlotEnd> slot_end(const PreparedBoard& board, const EdgeView& edge) {
  const Layout& layout = board.layout();
  const Slot* slot = middle_slot(layout);
  if (!slot) return std::nullopt;
  const Point end = end_of(*slot, edge.side == bass_side(layout));
  SlotEnd found;
  found.x = end.x, found.open = !slot->blind;
  found.inward = layout.edge(edge.side, end.x) - std::abs(end.y);
  const double out = edge.side == 0 ? -1 : 1;
  if (const auto floor = highest_at(edge.wall, end.x)) {
    found.floor = *floor;
    found.depth = board.surface().lowest(end.x, out * layout.edge(edge.side, end.x)) - *floor;
  }
  return found;
}

std::string slot_words(const PreparedBoard& board, const EdgeView& edge, const Manner& manner) {
  const auto end = slot_end(board, edge);
  if (!end) return "none";
  if (!end->open) return shown(end->inward, manner, 2) + " inside";
  return shown(end->depth, manner, 2) + " deep";
}

std::string edge_words(const Board& board, const Manner& manner) {
  if (board.edges && board.edges->roll > 0) return "rolled, R " + shown(board.edges->roll, manner, 2);
  if (board.edges && board.edges->bevel > 0) return "bevelled, " + shown(board.edges->bevel, manner, 2);
  return "square";
}

std::string gap_words(const EdgeView& edge, const Manner& manner) {
  if (std::abs(edge.widest) < seen_gap) return "closed";
  return shown(std::abs(edge.widest), manner, 2) + (edge.widest > 0 ? " open" : " too high");
}

/// A band between two lines of stations.
void fill_band(const LongSheet& s, const std::vector<Point>& upper, const std::vector<Point>& lower, ImU32 ink) {
  const ImDrawListFlags flags = s.paint->Flags;
  s.paint->Flags &= ~ImDrawListFlags_AntiAliasedFill;  // no seams between its parts
  for (std::size_t i = 1; i < upper.size() && i < lower.size(); ++i) {
    const ImVec2 corners[] = {s.at(upper[i - 1].x, upper[i - 1].y), s.at(upper[i].x, upper[i].y),
                              s.at(lower[i].x, lower[i].y), s.at(lower[i - 1].x, lower[i - 1].y)};
    s.paint->AddConvexPolyFilled(corners, 4, ink);
  }
  s.paint->Flags = flags;
}

/// The neck's edge under the board's, and the gap between them in colour.
void draw_gap(const LongSheet& s, const EdgeView& edge) {
  if (edge.gap.empty()) return;
  std::vector<Point> neck, foot, glue;
  for (const GapStation& station : edge.gap) {
    glue.push_back({station.x, 0}), neck.push_back({station.x, -station.gap});
    foot.push_back({station.x, -std::max(edge.widest, 0.0) - neck_shown});
  }
  fill_band(s, neck, foot, with_alpha(neck_ink, 150));
  if (std::abs(edge.widest) < seen_gap) return;
  fill_band(s, glue, neck, with_alpha(s.ui.theme.accent, 150));
  s.upright(edge.widest_at, -edge.widest, 0, 1, gap_words(edge, s.manner));
}

void draw_binding(const LongSheet& s, const EdgeView& edge) {
  const auto& binding = s.board().board().binding;
  if (!binding) return;
  std::vector<Point> foot;
  for (const Point p : edge.top)
    foot.push_back({p.x, binding->height > 0 ? std::max(p.y - binding->height, 0.0) : 0.0});
  fill_band(s, edge.top, foot, with_alpha(pale, s.ui.theme.dark ? 56 : 255));
  s.path(edge.top, s.ui.theme.text, 1.2f), s.path(foot, s.ui.theme.text, 1.2f);
  const std::size_t at = edge.top.size() / 4;
  const double height = edge.top[at].y - foot[at].y;
  s.upright(edge.top[at].x, foot[at].y, edge.top[at].y, 1, "binding " + s.mm(height));
}

/// The face that a roll or a bevel leaves between the wall and the playing surface.
void draw_worked(const LongSheet& s, const EdgeView& edge) {
  if (edge.worked.empty()) return;
  fill_band(s, edge.worked, edge.top, s.ui.theme.accent_soft);
  s.path(edge.worked, s.ui.theme.quiet, 1), s.path(edge.top, s.ui.theme.quiet, 1);
  const std::size_t at = edge.top.size() * 3 / 4;
  const ImVec2 middle = s.at(edge.top[at].x, (edge.top[at].y + edge.worked[at].y) / 2);
  s.labels.put(middle - ImVec2(0, s.ui.px(26)), edge_words(s.board().board(), s.manner), middle);
}

void draw_side_dots(const LongSheet& s, const EdgeView& edge) {
  constexpr int corners = 24;
  bool told = false;
  for (const SideDot& dot : s.board().side_dots()) {
    if (dot.side != (edge.side == bass_side(s.board().layout()) ? 0 : 1)) continue;
    // The hole is made half way up the playing surface at the edge.
    const double middle = s.board().surface().height(dot.mouth) / 2;
    std::array<ImVec2, corners> rim;
    for (std::size_t i = 0; i < corners; ++i) {
      const double angle = 2 * std::numbers::pi * static_cast<double>(i) / corners;
      rim[i] = s.at(dot.mouth.x + dot.radius * std::cos(angle), middle + dot.radius * std::sin(angle));
    }
    s.paint->AddConvexPolyFilled(rim.data(), corners, s.ui.theme.text);
    s.ui.note_area("side dot " + std::to_string(dot.fret), rim[0], rim[0], s.mm(2 * dot.radius));
    if (!std::exchange(told, true))
      s.upright(dot.mouth.x, middle - dot.radius, middle + dot.radius, 1, "dot " + s.mm(2 * dot.radius));
  }
}

void draw_slot_end(const LongSheet& s, const EdgeView& edge) {
  const auto end = slot_end(s.board(), edge);
  if (!end || !end->open || end->depth <= 0) return;
  s.upright(end->x, end->floor, end->floor + end->depth, 1, s.mm(end->depth) + " deep");
}

/// The wall's height at both ends, beside the drawing.
void draw_ends(const LongSheet& s, const EdgeView& edge) {
  const float off = s.ui.px(12);
  const auto beside = [&](Point p, float side) {
    const double x = s.frame.x_at(s.at(p.x, 0).x + side * off);
    s.upright(x, 0, p.y, side, s.mm(p.y));
  };
  beside(edge.top.front(), -1), beside(edge.top.back(), 1);
}

}  // namespace

std::vector<Figure> edge_figures(const PreparedBoard& board, const EdgeView& edge, const NeckReading* neck,
                                 const Manner& manner) {
  std::vector<Figure> figures{
      {"Wall height", shown_bare(edge.top.front().y, manner, 2) + ", " + shown(edge.top.back().y, manner, 2)},
      {"Slot ends", slot_words(board, edge, manner)},
      {"Edge", edge_words(board.board(), manner)}};
  if (!edge.gap.empty()) figures.push_back({"Glue face", gap_words(edge, manner)});
  const auto fit = neck_fit(board, neck);
  if (!fit) return figures;
  const double over = fit->most[static_cast<std::size_t>(edge.side)].over;
  figures.push_back({over > 0 ? "Board over neck" : "Neck over board", shown(std::abs(over), manner, 2)});
  return figures;
}

LongExtent edge_extent(const PreparedBoard& board, const EdgeView& edge) {
  LongExtent e{board.layout().nut_end, board.layout().heel_end, 0, 0};
  for (const Point p : edge.top) e.take(p.y);
  for (const Point p : edge.worked) e.take(p.y);
  for (const SliceLine& line : edge.wall) e.take(line.a.y), e.take(line.b.y);
  if (!edge.gap.empty()) e.take(-std::max(edge.widest, 0.0) - neck_shown);
  return e;
}

void draw_edge(const LongSheet& s, const EdgeView& edge) {
  s.fill(edge.wall, s.ui.theme.field);
  draw_gap(s, edge);
  draw_worked(s, edge);
  s.lines(edge.wall, edge.ledge.empty() ? s.ui.theme.text : s.ui.theme.quiet, 1.2f);
  draw_binding(s, edge);
  s.lines(edge.ledge, s.ui.theme.text, 1.2f);
  draw_side_dots(s, edge);
  draw_slot_end(s, edge);
  draw_ends(s, edge);
  s.ui.note_area("edge drawing", s.low, s.high);
}

}  // namespace sagitta::viewer
