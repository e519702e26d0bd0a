#include "layout/Taper.hpp"

#include "layout/Measure.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

struct Widths {
  double nut = 0, heel = 0;
  const char* nut_key = "";
  const char* heel_key = "";
};

std::optional<Widths> widths(const Shape& shape, double nut_spread, double heel_spread) {
  if (shape.edge_margin)
    return Widths{nut_spread + shape.edge_margin->sum(), heel_spread + shape.edge_margin->sum(), "board.edge_margin",
                  "board.edge_margin"};
  if (shape.nut_margin && shape.heel_margin)
    return Widths{nut_spread + shape.nut_margin->sum(), heel_spread + shape.heel_margin->sum(), "board.nut_margin",
                  "board.heel_margin"};
  if (shape.nut_width && shape.heel_width)
    return Widths{*shape.nut_width, *shape.heel_width, "board.nut_width", "board.heel_width"};
  return std::nullopt;
}

void check_end(const char* key, const char* where, double width, double spread, Faults& faults) {
  if (width <= 0)
    faults.push_back(
        {FaultCode::no_width, key,
         std::string("the board is ") + in_mm(width) + " wide at the " + where + "; it must be wider than 0",
         "give a larger width or margin"});
  else if (spread > width + tolerance::same)
    faults.push_back({FaultCode::strings_outside, key,
                      "the outer strings are " + in_mm(spread) + " apart at the " + where + ", but the board is only " +
                          in_mm(width) + " wide there: the strings lie outside its edges",
                      "make the board wider there, or bring the strings closer together"});
}

}  // namespace

bool Taper::crossed_by(Point direction) const { return direction.y > std::abs(slope * direction.x); }

Point Taper::meet(int side, double x, Point direction) const {
  if (direction.x == 0) return {x, side * half(x)};
  const double t = side * half(x) / (direction.y - side * slope * direction.x);
  return {x + t * direction.x, t * direction.y};
}

std::optional<Taper> taper_of(const Shape& shape, double spread, double spread_slope, double heel_end, Faults& faults) {
  const double heel_spread = spread + spread_slope * heel_end;
  const auto wide = widths(shape, spread, heel_spread);
  if (!wide) {
    faults.push_back({FaultCode::missing_key, "board.edge_margin", "nothing says how wide the board is",
                      "give edge_margin, or nut_margin and heel_margin, or nut_width and heel_width"});
    return std::nullopt;
  }
  check_end(wide->nut_key, "nut", wide->nut, spread, faults);
  check_end(wide->heel_key, "heel end", wide->heel, heel_spread, faults);
  if (wide->nut <= 0 || wide->heel <= 0) return std::nullopt;
  const double slope = shape.edge_margin ? spread_slope / 2 : (wide->heel - wide->nut) / (2 * heel_end);
  return Taper{wide->nut / 2, slope};
}

}  // namespace sagitta
