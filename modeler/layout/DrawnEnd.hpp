#pragma once

/// A heel end that is drawn in a file.

#include <optional>
#include <variant>

#include "layout/Layout.hpp"
#include "layout/Taper.hpp"

namespace sagitta {

/// The line of a drawn heel end as it was drawn: open, lines and arcs head to tail, from either end. mm, x toward the
/// bridge, y up.
struct DrawnEnd {
  Loop line;
};

/// The board's layout with this line as its heel end. Without one a board whose heel is drawn cannot be laid out.
std::variant<Layout, Faults> lay_out(const Board& board, const DrawnEnd& end);

/// The line where it lies on a right-handed board, from the edge at negative y to the one at positive y, what lies
/// outside the edges cut off: the middle of its height at y = 0, its crossing of y = 0 at the heel end. Empty, with
/// faults added, when it does not cross the board as it must.
std::optional<Loop> placed_end(const Board& board, const DrawnEnd& end, const Layout& layout, const Taper& taper,
                               Faults& faults);

}  // namespace sagitta
