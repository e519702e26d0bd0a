#include "solid/FittedPatch.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace sagitta {
namespace {

constexpr int degree = 7;
constexpr int most_spans = 64;
constexpr double aim = 1e-9;  // mm

using Places = std::vector<std::array<double, 3>>;

/// Splines over even knots from low to high.
class EvenSplines {
 public:
  EvenSplines(double low, double high, int spans) : low_(low), high_(high), spans_(spans) {
    for (int i = 0; i < count(); ++i) matrix_.push_back(row(greville(i)));
    factor();
  }

  int count() const { return spans_ + degree; }
  int spans() const { return spans_; }
  double knot(int i) const { return low_ + (high_ - low_) * std::clamp(i - degree, 0, spans_) / spans_; }

  /// Where the spline of index i has its middle.
  double greville(int i) const {
    double sum = 0;
    for (int k = 1; k <= degree; ++k) sum += knot(i + k);
    return std::clamp(sum / degree, low_, high_);
  }

  /// All splines at t, by the Cox-de Boor recurrence.
  std::vector<double> row(double t) const {
    const int span = std::clamp(static_cast<int>((t - low_) / (high_ - low_) * spans_), 0, spans_ - 1) + degree;
    std::array<double, degree + 1> value{1};
    for (int order = 1; order <= degree; ++order) {
      double carried = 0;
      for (int k = 0; k < order; ++k) {
        const double right = knot(span + k + 1), left = knot(span + k + 1 - order);
        const double part = value[static_cast<std::size_t>(k)] / (right - left);
        value[static_cast<std::size_t>(k)] = carried + (right - t) * part;
        carried = (t - left) * part;
      }
      value[static_cast<std::size_t>(order)] = carried;
    }
    std::vector<double> all(static_cast<std::size_t>(count()), 0);
    std::copy(value.begin(), value.end(), all.begin() + (span - degree));
    return all;
  }

  /// The poles of the spline through the places at the Greville abscissae.
  Places poles(Places places) const {
    const int n = count();
    for (int i = 0; i < n; ++i)
      for (int k = std::max(0, i - degree); k < i; ++k) take(places, i, matrix(i, k), k);
    for (int i = n - 1; i >= 0; --i) {
      for (int k = i + 1; k < std::min(n, i + degree + 1); ++k) take(places, i, matrix(i, k), k);
      for (double& value : places[static_cast<std::size_t>(i)]) value /= matrix(i, i);
    }
    return places;
  }

 private:
  double matrix(int i, int k) const { return matrix_[static_cast<std::size_t>(i)][static_cast<std::size_t>(k)]; }

  static void take(Places& places, int from, double share, int of) {
    for (std::size_t c = 0; c < 3; ++c)
      places[static_cast<std::size_t>(from)][c] -= share * places[static_cast<std::size_t>(of)][c];
  }

  /// Lower and upper triangle in place; no pivots are needed for totally positive matrices (de Boor, ch. XIII).
  void factor() {
    const int n = count();
    for (int i = 0; i < n; ++i)
      for (int below = i + 1; below < std::min(n, i + degree + 1); ++below) {
        std::vector<double>& line = matrix_[static_cast<std::size_t>(below)];
        const double share = line[static_cast<std::size_t>(i)] /= matrix(i, i);
        for (int k = i + 1; k < std::min(n, i + degree + 1); ++k)
          line[static_cast<std::size_t>(k)] -= share * matrix(i, k);
      }
  }

  double low_, high_;
  int spans_;
  std::vector<std::vector<double>> matrix_;  ///< banded
};

std::array<double, 3> mixed(const std::vector<double>& shares, const Places& poles) {
  std::array<double, 3> sum{};
  for (std::size_t i = 0; i < shares.size(); ++i)
    for (std::size_t c = 0; c < 3; ++c) sum[c] += shares[i] * poles[i][c];
  return sum;
}

double apart(const std::array<double, 3>& a, const std::array<double, 3>& b) {
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/// Splines that follow the lines of one direction within half the aim.
EvenSplines splines_for(double low, double high,
                        const std::vector<std::function<std::array<double, 3>(double)>>& lines) {
  for (int spans = 1;; spans *= 2) {
    EvenSplines splines(low, high, spans);
    double off = 0;
    for (const auto& line : lines) {
      Places places;
      for (int i = 0; i < splines.count(); ++i) places.push_back(line(splines.greville(i)));
      const Places poles = splines.poles(std::move(places));
      const int checks = 3 * splines.count();
      for (int i = 0; i <= checks; ++i) {
        const double t = low + (high - low) * i / checks;
        off = std::max(off, apart(mixed(splines.row(t), poles), line(t)));
      }
    }
    if (off <= aim / 2 || spans == most_spans) return splines;
  }
}

/// Poles of the surface, poles[i][k] along u and along v.
std::vector<Places> poles_of(const PlaceAt& place, const EvenSplines& along_u, const EvenSplines& along_v) {
  std::vector<Places> grid;
  for (int i = 0; i < along_u.count(); ++i) {
    Places line;
    for (int k = 0; k < along_v.count(); ++k) line.push_back(place(along_u.greville(i), along_v.greville(k)));
    grid.push_back(along_v.poles(std::move(line)));
  }
  for (std::size_t k = 0; k < grid.front().size(); ++k) {
    Places line;
    for (const Places& row : grid) line.push_back(row[k]);
    const Places solved = along_u.poles(std::move(line));
    for (std::size_t i = 0; i < grid.size(); ++i) grid[i][k] = solved[i];
  }
  return grid;
}

Handle(Geom_BSplineSurface)
    surface_of(const std::vector<Places>& grid, const EvenSplines& along_u, const EvenSplines& along_v) {
  TColgp_Array2OfPnt poles(1, along_u.count(), 1, along_v.count());
  for (int i = 0; i < along_u.count(); ++i)
    for (int k = 0; k < along_v.count(); ++k) {
      const auto& p = grid[static_cast<std::size_t>(i)][static_cast<std::size_t>(k)];
      poles(i + 1, k + 1) = gp_Pnt(p[0], p[1], p[2]);
    }
  const auto knots = [](const EvenSplines& splines) {
    TColStd_Array1OfReal values(1, splines.spans() + 1);
    for (int i = 0; i <= splines.spans(); ++i) values(i + 1) = splines.knot(i + degree);
    return values;
  };
  const auto multiplicities = [](const EvenSplines& splines) {
    TColStd_Array1OfInteger values(1, splines.spans() + 1);
    values.Init(1);
    values(1) = values(splines.spans() + 1) = degree + 1;
    return values;
  };
  return new Geom_BSplineSurface(poles, knots(along_u), knots(along_v), multiplicities(along_u),
                                 multiplicities(along_v), degree, degree);
}

}  // namespace

FittedPatch fit_patch(const PlaceAt& place, const ParameterBox& box) {
  std::vector<std::function<std::array<double, 3>(double)>> lines_u, lines_v;
  for (const double t : {0.0, 0.25, 0.5, 0.75, 1.0}) {
    const double u = box.u_low + t * (box.u_high - box.u_low), v = box.v_low + t * (box.v_high - box.v_low);
    lines_u.emplace_back([&place, v](double along) { return place(along, v); });
    lines_v.emplace_back([&place, u](double along) { return place(u, along); });
  }
  const EvenSplines along_u = splines_for(box.u_low, box.u_high, lines_u);
  const EvenSplines along_v = splines_for(box.v_low, box.v_high, lines_v);
  const std::vector<Places> grid = poles_of(place, along_u, along_v);
  FittedPatch fitted{surface_of(grid, along_u, along_v), 0};
  constexpr int checks = 41;
  for (int i = 0; i <= checks; ++i)
    for (int k = 0; k <= checks; ++k) {
      const double u = box.u_low + (box.u_high - box.u_low) * i / checks;
      const double v = box.v_low + (box.v_high - box.v_low) * k / checks;
      const gp_Pnt p = fitted.surface->Value(u, v);
      fitted.deviation = std::max(fitted.deviation, apart({p.X(), p.Y(), p.Z()}, place(u, v)));
    }
  return fitted;
}

}  // namespace sagitta
