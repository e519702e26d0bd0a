#pragma once

/// The figures of a drawing, operation by operation, in the board's frame. mm.

#include <string>
#include <utility>
#include <vector>

#include "export/Drawing.hpp"

namespace sagitta {

/// The rectangle that the radius is cut over.
Figure radius_area_figure(const Layout& layout);
/// From one end of the cut to the other: past the edges by the overrun for a through slot, between the centres of the
/// round ends for a blind one.
std::vector<Figure> slot_middle_figures(const std::vector<Slot>& slots);
/// What the slots cover; through slots end square to themselves, past the edges by the overrun.
std::vector<Figure> slot_outline_figures(const std::vector<Slot>& slots);
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
