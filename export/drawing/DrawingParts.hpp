#pragma once

/// The figures of a drawing, operation by operation, in the board's frame. mm.

#include <string>
#include <utility>
#include <vector>

#include "board/Board.hpp"
#include "drawing/Drawing.hpp"
#include "layout/Layout.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// Holes in the waste for pins that the blank is put back on. They fit one way round only. mm.
struct Dowel {
  Point centre;
  double radius = 0;
};

/// One dowel in the waste at each end of the blank: at the nut end on the blank's centre line, at the heel end off it
/// toward the treble, so that a blank turned round or over does not go on. None when the waste is too short or too
/// narrow for them.
std::vector<Dowel> dowels_of(const Layout& layout);
/// Waste that a dowel needs between the radius cut and the end of the blank. mm.
double waste_for_dowels();

/// The rectangle that the radius is cut over.
Figure radius_area_figure(const Layout& layout);
/// From one end of the cut to the other: past the edges by the overrun for a through slot, between the centres of the
/// round ends for a blind one.
std::vector<Figure> slot_middle_figures(const std::vector<Slot>& slots);
/// What the slots cover; through slots end square to themselves, past the edges by the overrun.
std::vector<Figure> slot_outline_figures(const std::vector<Slot>& slots);
/// A line from edge to edge at each fret's place, for boards on which no slots are cut.
std::vector<Figure> fret_place_figures(const Layout& layout);
std::vector<Figure> nut_seat_figures(const Layout& layout);
Figure outline_figure(const Layout& layout);
/// Where the board stays tied to the blank while its outline is cut: short pieces of the long edges, clear of slots and
/// side dots.
std::vector<Figure> tab_figures(const Layout& layout);
/// The line that each long edge is cut back to, past the ends by the overrun. Open: the cut is open to the outside.
std::vector<Figure> binding_figures(const PreparedBoard& ready);
/// Holes in the edge's wall seen from above, from mouth to floor.
std::vector<Figure> side_dot_figures(const std::vector<SideDot>& dots);
std::vector<Figure> pin_figures(const Layout& layout);
/// Where the builder's own cuts are made from.
enum class CutLayer { top, through, below };
std::vector<Figure> cut_figures(const PreparedBoard& ready, CutLayer layer);
/// The board's centre line, over the blank's whole length.
Figure centre_line_figure(const Layout& layout);
/// The middle of the blank, across and along; the latter not where it is the board's centre line.
std::vector<Figure> blank_centre_figures(const Layout& layout);
Figure blank_figure(const Layout& layout);
std::vector<Figure> dowel_figures(const Layout& layout);
/// Where clamps may stand: the corners of the blank that no cutter reaches. None where the waste is too small.
std::vector<Figure> clamp_figures(const PreparedBoard& ready);

/// True when both draw the same thing, wherever they begin.
bool same_figure(const Figure& a, const Figure& b);

}  // namespace sagitta
