#include "artwork/Spline.hpp"

#include <algorithm>
#include <array>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// More pieces are no outline.
constexpr std::size_t most_pieces = 200'000;

/// A pole with its weight: x w, y w, w.
struct Pole {
  double x = 0, y = 0, w = 1;
};

Pole mix(const Pole& a, const Pole& b, double t) {
  return {a.x + t * (b.x - a.x), a.y + t * (b.y - a.y), a.w + t * (b.w - a.w)};
}

bool is_sound(const Spline& spline) {
  const std::size_t degree = static_cast<std::size_t>(std::clamp(spline.degree, 0, 11));
  if (spline.degree < 1 || spline.degree > 10 || spline.poles.size() <= degree) return false;
  if (spline.knots.size() != spline.poles.size() + degree + 1) return false;
  if (!spline.weights.empty() && spline.weights.size() != spline.poles.size()) return false;
  for (const double weight : spline.weights)
    if (!(weight > tolerance::same)) return false;
  return std::is_sorted(spline.knots.begin(), spline.knots.end());
}

/// The blossom of the span that ends at knot `span` + 1: its value for `degree` arguments. OverlaySource: de Boor's
/// scheme with one argument a level; the control points of a Bezier piece are its values for ends of the span.
class Blossom {
 public:
  explicit Blossom(const Spline& spline) : spline_(spline) {
    for (std::size_t i = 0; i < spline.poles.size(); ++i) {
      const double w = spline.weights.empty() ? 1 : spline.weights[i];
      poles_.push_back({spline.poles[i].x * w, spline.poles[i].y * w, w});
    }
  }

  Pole at(std::size_t span, const std::vector<double>& arguments) const {
    const std::size_t degree = arguments.size();
    std::vector<Pole> row(poles_.begin() + static_cast<std::ptrdiff_t>(span - degree),
                          poles_.begin() + static_cast<std::ptrdiff_t>(span + 1));
    for (std::size_t level = 1; level <= degree; ++level)
      for (std::size_t j = degree; j >= level; --j) {
        const std::size_t i = span - degree + j;
        const double low = spline_.knots[i], high = spline_.knots[i + degree + 1 - level];
        row[j] = mix(row[j - 1], row[j], high > low ? (arguments[level - 1] - low) / (high - low) : 0);
      }
    return row[degree];
  }

  Point point(std::size_t span, double t) const {
    const Pole p = at(span, std::vector<double>(static_cast<std::size_t>(spline_.degree), t));
    return {p.x / p.w, p.y / p.w};
  }

  /// d/dt, from the blossom: degree times the difference of two neighbours over the span.
  Point slope(std::size_t span, double t) const {
    const double a = spline_.knots[span], b = spline_.knots[span + 1];
    std::vector<double> arguments(static_cast<std::size_t>(spline_.degree), t);
    const Pole p = at(span, arguments);
    arguments.back() = a;
    const Pole low = at(span, arguments);
    arguments.back() = b;
    const Pole high = at(span, arguments);
    const double scale = spline_.degree / (b - a);
    const Pole d{scale * (high.x - low.x), scale * (high.y - low.y), scale * (high.w - low.w)};
    return {(d.x - p.x / p.w * d.w) / p.w, (d.y - p.y / p.w * d.w) / p.w};
  }

  const Spline& spline() const { return spline_; }

 private:
  const Spline& spline_;
  std::vector<Pole> poles_;
};

Bezier exact_piece(const Blossom& blossom, std::size_t span) {
  const double a = blossom.spline().knots[span], b = blossom.spline().knots[span + 1];
  const auto pole = [&](std::vector<double> arguments) {
    const Pole p = blossom.at(span, arguments);
    return Point{p.x / p.w, p.y / p.w};
  };
  if (blossom.spline().degree == 3) return {pole({a, a, a}), pole({a, a, b}), pole({a, b, b}), pole({b, b, b})};
  const Point from = pole(std::vector<double>(static_cast<std::size_t>(blossom.spline().degree), a));
  const Point to = pole(std::vector<double>(static_cast<std::size_t>(blossom.spline().degree), b));
  if (blossom.spline().degree == 1) return {from, between(from, to, 1.0 / 3), between(from, to, 2.0 / 3), to};
  const Point control = pole({a, b});
  return {from, between(control, from, 1.0 / 3), between(control, to, 1.0 / 3), to};
}

/// Cubic pieces with the spline's ends and slopes, halved until they keep the tolerance.
void add_near_pieces(const Blossom& blossom, std::size_t span, double from, double to, double near, int halvings,
                     std::vector<Bezier>& out) {
  const double third = (to - from) / 3;
  const Point a = blossom.point(span, from), b = blossom.point(span, to);
  const Bezier piece{a, a + third * blossom.slope(span, from), b - third * blossom.slope(span, to), b};
  double off = 0;
  for (const double t : {0.2, 0.35, 0.5, 0.65, 0.8})
    off = std::max(off, distance(piece.at(t), blossom.point(span, from + t * (to - from))));
  if (off <= near || halvings == 0) {
    out.push_back(piece);
    return;
  }
  const double middle = (from + to) / 2;
  add_near_pieces(blossom, span, from, middle, near, halvings - 1, out);
  add_near_pieces(blossom, span, middle, to, near, halvings - 1, out);
}

}  // namespace

std::optional<std::vector<Bezier>> beziers(const Spline& spline) {
  if (!is_sound(spline)) return std::nullopt;
  Box box;
  for (const Point pole : spline.poles) box.add(pole);
  const double extent = std::max(box.high.x - box.low.x, box.high.y - box.low.y);
  const bool equal = std::all_of(spline.weights.begin(), spline.weights.end(),
                                 [&](double weight) { return weight == spline.weights.front(); });
  const bool exact = equal && spline.degree <= 3;
  const Blossom blossom(spline);
  std::vector<Bezier> out;
  const std::size_t degree = static_cast<std::size_t>(spline.degree);
  for (std::size_t span = degree; span < spline.poles.size(); ++span) {
    if (!(spline.knots[span + 1] > spline.knots[span])) continue;
    if (out.size() > most_pieces) return std::nullopt;
    if (exact)
      out.push_back(exact_piece(blossom, span));
    else
      add_near_pieces(blossom, span, spline.knots[span], spline.knots[span + 1], extent * tolerance::drawn_chord, 7,
                      out);
  }
  for (std::size_t i = 1; i < out.size(); ++i) out[i].a = out[i - 1].b;
  return out;
}

}  // namespace sagitta
