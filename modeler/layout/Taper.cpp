#include "layout/Taper.hpp"

#include "layout/LastFret.hpp"
#include "layout/Measure.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Two places along the board and how far each edge lies from y = 0 there; the first place is x = 0.
struct Widths {
  std::array<double, 2> nut{}, there{};
  double x = 0;  ///< of the second place
  const char* nut_key = "";
  const char* key = "";
};

std::array<double, 2> beside(double spread, const LengthPair& margin) {
  return {spread / 2 + margin.first, spread / 2 + margin.second};
}

std::array<double, 2> halves(double width) { return {width / 2, width / 2}; }

std::optional<Widths> width_at_fret(const Shape& shape, const Layout& layout, Faults& faults) {
  const double fret = (*shape.width_at_fret)[0];
  const int last = last_fret(layout).fret;
  if (fret < 1 || fret > last || fret != std::floor(fret)) {
    faults.push_back({FaultCode::no_such_fret, "board.width_at_fret",
                      "there is no fret " + plain(fret) + " to measure the width at: the board has frets 1 to " +
                          std::to_string(last),
                      "name a fret that the board has"});
    return std::nullopt;
  }
  return Widths{halves(*shape.nut_width), halves((*shape.width_at_fret)[1]),
                layout.frets[static_cast<std::size_t>(fret)].middle.x, "board.nut_width", "board.width_at_fret"};
}

std::optional<Widths> widths(const Shape& shape, const Layout& layout, Faults& faults) {
  const double nut = layout.spread(0), heel = layout.spread(layout.heel_end), x = layout.heel_end;
  if (shape.edge_margin)
    return Widths{beside(nut, *shape.edge_margin), beside(heel, *shape.edge_margin), x, "board.edge_margin",
                  "board.edge_margin"};
  if (shape.nut_margin && shape.heel_margin)
    return Widths{beside(nut, *shape.nut_margin), beside(heel, *shape.heel_margin), x, "board.nut_margin",
                  "board.heel_margin"};
  if (shape.nut_width && shape.heel_width)
    return Widths{halves(*shape.nut_width), halves(*shape.heel_width), x, "board.nut_width", "board.heel_width"};
  if (shape.nut_width && shape.width_at_fret) return width_at_fret(shape, layout, faults);
  faults.push_back({FaultCode::missing_key, "board.edge_margin", "nothing says how wide the board is",
                    "give edge_margin, or nut_margin and heel_margin, or nut_width with heel_width or width_at_fret"});
  return std::nullopt;
}

/// False when the board is not wider than 0 there.
bool check_end(const Board& board, const char* key, const char* where, const Taper& taper, double x, double spread,
               Faults& faults) {
  const double width = taper.edge(0, x) + taper.edge(1, x);
  if (width <= 0)
    faults.push_back({FaultCode::no_width, key,
                      std::string("nothing is left of the board's width at the ") + where + "; it must be wider than 0",
                      "give a larger width or margin"});
  else if (spread > 2 * std::min(taper.edge(0, x), taper.edge(1, x)) + tolerance::same)
    faults.push_back({FaultCode::strings_outside, key,
                      "the outer strings are " + in_units(board, spread) + " apart at the " + where +
                          ", but the board is only " + in_units(board, width) +
                          " wide there: the strings lie outside its edges",
                      "make the board wider there, or bring the strings closer together"});
  return width > 0;
}

}  // namespace

bool Taper::crossed_by(Point direction) const {
  return direction.y > -slope[0] * direction.x && direction.y > slope[1] * direction.x;
}

Point Taper::meet(int side, double x, Point direction) const {
  if (direction.x == 0) return {x, sign(side) * edge(side, x)};
  const double t = sign(side) * edge(side, x) / (direction.y - sign(side) * slope[index(side)] * direction.x);
  return {x + t * direction.x, t * direction.y};
}

Taper taper_in(const Layout& layout) { return {layout.edge_at_nut, layout.edge_slope}; }

std::optional<Taper> taper_of(const Board& board, const Layout& layout, Faults& faults) {
  const Shape& shape = board.board;
  const auto wide = widths(shape, layout, faults);
  if (!wide) return std::nullopt;
  Taper taper{wide->nut, {}};
  for (const std::size_t side : {0u, 1u})
    taper.slope[side] = shape.edge_margin ? layout.spread_slope / 2 : (wide->there[side] - wide->nut[side]) / wide->x;
  const bool nut = check_end(board, wide->nut_key, "nut", taper, 0, layout.spread(0), faults);
  const bool heel =
      check_end(board, wide->key, "heel end", taper, layout.heel_end, layout.spread(layout.heel_end), faults);
  return nut && heel ? std::optional(taper) : std::nullopt;
}

}  // namespace sagitta
