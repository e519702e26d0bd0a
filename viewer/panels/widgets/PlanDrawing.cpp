#include "widgets/PlanDrawing.hpp"

#include <algorithm>
#include <charconv>

#include "board/Materials.hpp"
#include "board/ShapeKeys.hpp"
#include "inlay/Flatten.hpp"
#include "scene/Slabs.hpp"

namespace sagitta::viewer {

namespace {

constexpr float drawing_share = 0.8f;  // of the board's width that a drawing's frame keeps within
constexpr ImU32 other_wood = IM_COL32(94, 70, 52, 255);
// How far drawn outlines may lie off an arc, mm.
constexpr double chord_of_board = 0.2, chord_of_piece = 0.03;

/// Its colour "#rrggbb" as the material has it.
ImU32 colour_of(const Board& board, const std::string& name, ImU32 other) {
  const std::string hex = material(board, name).colour;
  unsigned rgb = 0;
  if (hex.size() != 7 || std::from_chars(hex.data() + 1, hex.data() + 7, rgb, 16).ec != std::errc()) return other;
  return IM_COL32(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255, 255);
}

/// What is drawn on the wood: light on dark wood, dark on light.
struct Inks {
  ImU32 wood, wire, string;
};

Inks inks_of(const Board& board) {
  const ImU32 wood = colour_of(board, board.blank.material, other_wood);
  const ImVec4 c = ImGui::ColorConvertU32ToFloat4(wood);
  const bool dark = 0.299f * c.x + 0.587f * c.y + 0.114f * c.z < 0.5f;
  return {wood, dark ? IM_COL32(222, 219, 212, 255) : IM_COL32(52, 48, 44, 255),
          dark ? IM_COL32(255, 255, 255, 60) : IM_COL32(0, 0, 0, 60)};
}

std::vector<Point> points_of(const Loop& loop) {
  std::vector<Point> points;
  for (const CurveSegment& segment : loop) {
    const int steps = segment.is_arc() ? 24 : 1;
    for (int i = 0; i < steps; ++i) points.push_back(segment.at(1.0 * i / steps));
  }
  return points;
}

std::vector<ImVec2> points_of(const Loop& loop, const PlanFrame& frame) {
  std::vector<ImVec2> pixels;
  for (const Point p : points_of(loop)) pixels.push_back(frame.at(p));
  return pixels;
}

/// A region filled without smoothing, so that no seams show between its slabs.
void fill_region(ImDrawList* paint, const Loops& loops, const PlanFrame& frame, ImU32 ink, double chord) {
  const ImDrawListFlags flags = paint->Flags;
  paint->Flags &= ~ImDrawListFlags_AntiAliasedFill;
  for (const Slab& s : slabs(flattened(loops, chord))) {
    const ImVec2 corners[] = {frame.at({s.a, s.low_a}), frame.at({s.b, s.low_b}), frame.at({s.b, s.high_b}),
                              frame.at({s.a, s.high_a})};
    paint->AddConvexPolyFilled(corners, 4, ink);
  }
  paint->Flags = flags;
}

/// The board's outline, filled, with a smooth rim over it.
void fill_wood(ImDrawList* paint, const Layout& layout, const PlanFrame& frame, ImU32 wood, ImU32 rim_ink) {
  fill_region(paint, {layout.outline}, frame, wood, chord_of_board);
  const std::vector<ImVec2> rim = points_of(layout.outline, frame);
  paint->AddPolyline(rim.data(), static_cast<int>(rim.size()), rim_ink, ImDrawFlags_Closed, 1.5f);
}

/// Half a piece's size along and across, mm; a drawing counts as an oblong.
Point half_size(const Inlay& inlay) {
  double along = 0, across = 0;
  for (const InlaySize& size : sizes_of(inlay)) {
    if (size.key == "across" || size.key == "diameter") across = size.value;
    if (size.key != "across") along = size.value;
  }
  if (across <= 0) across = along;
  if (along <= 0) along = across;
  return {std::max(along, 1.0) / 2, std::max(across, 1.0) / 2};
}

void draw_marker(ImDrawList* paint, const Board& board, const Layout& layout, const Marker& marker,
                 const PlanFrame& frame, ImU32 ink) {
  const Inlay& inlay = board.inlays[static_cast<std::size_t>(marker.inlay)];
  const Point half = half_size(inlay);
  const ImVec2 at = frame.at(marker.centre);
  if (inlay.shape == InlayShape::dot)
    return paint->AddCircleFilled(at, std::max(static_cast<float>(half.x) * frame.scale, 1.0f), ink);
  const ImVec2 reach(static_cast<float>(half.x) * frame.scale, static_cast<float>(half.y) * frame.scale);
  if (inlay.shape == InlayShape::artwork) {
    const float room = static_cast<float>(layout.half_width(marker.centre.x)) * frame.scale * drawing_share,
                in = std::min(1.0f, room / std::max(reach.y, 1.0f));
    const ImVec2 frame_of(reach.x * in, reach.y * in);
    return paint->AddRect({at.x - frame_of.x, at.y - frame_of.y}, {at.x + frame_of.x, at.y + frame_of.y}, ink, 3, 0,
                          1.5f);
  }
  const ImVec2 corners[] = {
      {at.x - reach.x, at.y}, {at.x, at.y - reach.y}, {at.x + reach.x, at.y}, {at.x, at.y + reach.y}};
  if (inlay.shape == InlayShape::diamond) return paint->AddConvexPolyFilled(corners, 4, ink);
  paint->AddRectFilled({at.x - reach.x, at.y - reach.y}, {at.x + reach.x, at.y + reach.y}, ink);
}

/// The pieces as they are fitted, else what the layout alone knows of them.
void draw_inlays(ImDrawList* paint, const Theme& theme, const Board& board, const Layout& layout,
                 const PlanFrame& frame, const PlanMarks& marks) {
  const ImU32 other = inks_of(board).wire;
  const auto ink = [&](int inlay, const std::string& of) {
    const bool named = marks.named.kind == FeatureId::Kind::inlay && marks.named.index == inlay;
    return named ? theme.accent : colour_of(board, of, other);
  };
  if (marks.inlays) {
    for (const InlayPiece& piece : marks.inlays->pieces)
      fill_region(paint, piece.piece, frame, ink(piece.inlay, piece.material), chord_of_piece);
    return;
  }
  for (const Marker& marker : layout.markers)
    draw_marker(paint, board, layout, marker, frame,
                ink(marker.inlay, board.inlays[static_cast<std::size_t>(marker.inlay)].material));
}

}  // namespace

PlanFrame plan_frame(const Layout& layout, ImVec2 low, ImVec2 high) {
  Box box;
  for (const CurveSegment& segment : layout.outline)
    for (const Point p : {bounds(segment).low, bounds(segment).high}) box.add(p);
  const Point size = box.high - box.low;
  PlanFrame frame;
  frame.low = low, frame.high = high;
  frame.scale = std::min((high.x - low.x) / static_cast<float>(std::max(size.x, 1.0)),
                         (high.y - low.y) / static_cast<float>(std::max(size.y, 1.0)));
  const Point middle = 0.5 * (box.low + box.high);
  frame.origin = {(low.x + high.x) / 2 - static_cast<float>(middle.x) * frame.scale,
                  (low.y + high.y) / 2 + static_cast<float>(middle.y) * frame.scale};
  return frame;
}

std::vector<std::vector<Point>> telling_lines(const Layout& layout, const Inlays* inlays) {
  std::vector<std::vector<Point>> lines;
  const auto closed = [&](std::vector<Point> line) {
    if (line.empty()) return;
    line.push_back(line.front());
    lines.push_back(std::move(line));
  };
  closed(points_of(layout.outline));
  for (const Slot& slot : layout.slots) lines.push_back({slot.bass_end, slot.treble_end});
  if (!inlays) return lines;
  for (const InlayPiece& piece : inlays->pieces)
    for (const Polygon& polygon : flattened(piece.piece, chord_of_piece)) closed(polygon);
  return lines;
}

void draw_plan(ImDrawList* paint, const Theme& theme, const Board& board, const Layout& layout, const PlanFrame& frame,
               const PlanMarks& marks) {
  const Inks inks = inks_of(board);
  fill_wood(paint, layout, frame, inks.wood, theme.rim);
  using Kind = FeatureId::Kind;
  const float fine = std::clamp(frame.scale, 0.75f, 1.5f);
  for (const Slot& slot : layout.slots) {
    const bool named = marks.named.kind == Kind::slot && marks.named.fret == slot.fret;
    paint->AddLine(frame.at(slot.bass_end), frame.at(slot.treble_end), named ? theme.accent : inks.wire,
                   named ? 2.5f * fine : fine);
  }
  draw_inlays(paint, theme, board, layout, frame, marks);
  for (const LineSegment& string : layout.strings) {
    const double part = std::min(1.0, layout.heel_end / std::max(string.b.x, 1.0));
    paint->AddLine(frame.at(string.a), frame.at(between(string.a, string.b, part)), inks.string, 1);
  }
  if (marks.cut) {
    const float x = frame.at({*marks.cut, 0}).x;
    paint->AddLine({x, frame.low.y}, {x, frame.high.y}, theme.accent, 2);
  }
  for (const Point place : marks.finding) paint->AddCircle(frame.at(place), 7, theme.accent, 0, 2);
}

}  // namespace sagitta::viewer
