#include "overlay/InlayMarks.hpp"

#include <imgui_internal.h>

#include <algorithm>

#include "inlay/ArcSplineFit.hpp"
#include "inlay/Flatten.hpp"
#include "overlay/BoardMarks.hpp"
#include "scene/Slabs.hpp"

namespace sagitta::viewer {

namespace {

constexpr double over = 0.05;   ///< mm above the surface that the shading lies
constexpr double seen = 0.005;  ///< mm: finer corners are not drawn

Vec on(const Surface& surface, double x, double y) {
  const double z = surface.exists(x, y) ? surface.height(x, y) : surface.thickness;
  return {static_cast<float>(x), static_cast<float>(y), static_cast<float>(z + over)};
}

}  // namespace

void draw_lost(const PictureState& state) {
  if (!state.view.lost || !state.results.good || !state.results.good->fitted) return;
  const Surface& surface = state.results.good->prepared->surface();
  const ImU32 ink = (state.ui.theme.accent & ~IM_COL32_A_MASK) | 190u << IM_COL32_A_SHIFT;
  double all = 0;
  for (const RegionFigures& figure : state.results.good->prepared->inlays().figures) {
    all += figure.lost_area;
    for (const Slab& s : slabs(thinned(figure.lost, seen))) {
      const Vec corners[] = {on(surface, s.a, s.low_a), on(surface, s.b, s.low_b), on(surface, s.b, s.high_b),
                             on(surface, s.a, s.high_a)};
      ImVec2 points[4];
      bool before = true;
      for (std::size_t i = 0; i < 4; ++i) {
        const auto at = in_window(state.view.camera, corners[i], state.low);
        before = before && at;
        if (at) points[i] = *at;
      }
      if (before) ImGui::GetWindowDrawList()->AddConvexPolyFilled(points, 4, ink);
    }
  }
  state.ui.note_area("lost area", state.low, state.low, shown_number(all, 3));
}

const InlayPiece* piece_at(const Inlays& inlays, Point place) {
  for (const InlayPiece& piece : inlays.pieces) {
    const Box box = bounds(piece.piece);
    if (place.x < box.low.x || place.x > box.high.x || place.y < box.low.y || place.y > box.high.y) continue;
    if (contains(flattened(piece.piece), place)) return &piece;
  }
  return nullptr;
}

double left_of_piece(const InlayPiece& piece, const Surface& surface, Point place) {
  const double floor = surface.thickness - piece.depth;
  const double top = surface.exists(place.x, place.y) ? surface.height(place.x, place.y) : surface.thickness;
  return std::min(piece.thickness, top - floor);
}

void draw_piece_reading(const PictureState& state, Labels& labels) {
  const StageModel* stage = state.results.at(state.view.stage);
  if (state.view.shade != Shade::remaining || !stage || !state.results.good->fitted) return;
  const ImVec2 pointer = ImGui::GetIO().MousePos;
  const auto hit = cast(stage->mesh, state.view.camera.ray({pointer.x - state.low.x, pointer.y - state.low.y}));
  if (!hit) return;
  const Point place{hit->place.x, hit->place.y};
  const InlayPiece* piece = piece_at(state.results.good->prepared->inlays(), place);
  if (!piece) return;
  const double left = left_of_piece(*piece, state.results.good->prepared->surface(), place);
  const std::string text =
      piece->name + ": " + (left > 0 ? shown(left, state.manner, 2) + " left here" : "sanded through here");
  labels.put(pointer - ImVec2(0, state.ui.px(26)), text, pointer);
  state.ui.note_area("piece reading", pointer, pointer, text);
}

}  // namespace sagitta::viewer
