#include "solid/HermiteSpline.hpp"

#include <algorithm>

#include "solid/Hermite.hpp"

namespace sagitta {
namespace {

double value(const std::array<double, 6>& c, double t) {
  const double s = 1 - t;
  const double s2 = s * s, t2 = t * t;
  return s2 * s2 * s * c[0] + 5 * s2 * s2 * t * c[1] + 10 * s2 * s * t2 * c[2] + 10 * s2 * t2 * t * c[3] +
         5 * s * t2 * t2 * c[4] + t2 * t2 * t * c[5];
}

/// One span of the course in `segments` equal parts.
template <std::size_t N>
class SpanFit {
 public:
  SpanFit(const ParametricCurve<N>& f, const std::vector<double>& spans, std::size_t span, int pieces)
      : f_(f), span_(span), first_(spans[span]), last_(spans[span + 1]), pieces_(pieces) {
    std::array<Jet, N> start = f_(first_, span_);
    for (int i = 0; i < pieces_; ++i) {
      const std::array<Jet, N> end = f_(knot(i + 1), span_);
      std::array<Control, N>& control = controls_.emplace_back();
      for (std::size_t k = 0; k < N; ++k) control[k] = bezier(start[k], end[k], (last_ - first_) / pieces_);
      start = end;
    }
  }

  double deviation(const std::array<double, N>& weight) const {
    double most = 0;
    for (int i = 0; i < pieces_; ++i)
      for (const double t : {0.25, 0.5, 0.75}) {
        const std::array<Jet, N> exact = f_(knot(i) + t * (last_ - first_) / pieces_, span_);
        for (std::size_t k = 0; k < N; ++k)
          most = std::max(most, weight[k] * std::abs(value(controls_[i][k], t) - exact[k].v));
      }
    return most;
  }

  /// Continues a spline that ends where this span begins.
  void append_to(HermiteSpline<N>& spline) const {
    if (spline.poles.empty()) add(spline, 0, [](const Control& c) { return c[0]; });
    for (int i = 0; i < pieces_; ++i) {
      if (i == 0)
        add(spline, i, [](const Control& c) { return c[1]; });
      else
        add(spline, i, [](const Control& c) { return 2 * c[1] - c[2]; });  // the blossom across a triple knot
      add(spline, i, [](const Control& c) { return c[2]; });
      add(spline, i, [](const Control& c) { return c[3]; });
      spline.knots.push_back(knot(i));
      spline.multiplicities.push_back(spline.knots.size() == 1 ? 6 : i == 0 ? 4 : 3);
    }
    add(spline, pieces_ - 1, [](const Control& c) { return c[4]; });
  }

  /// The spline's end.
  void close(HermiteSpline<N>& spline) const {
    add(spline, pieces_ - 1, [](const Control& c) { return c[5]; });
    spline.knots.push_back(last_);
    spline.multiplicities.push_back(6);
  }

 private:
  using Control = std::array<double, 6>;

  double knot(int i) const { return i == pieces_ ? last_ : first_ + (last_ - first_) * i / pieces_; }

  template <class Pick>
  void add(HermiteSpline<N>& spline, int piece, Pick pick) const {
    std::array<double, N>& pole = spline.poles.emplace_back();
    for (std::size_t k = 0; k < N; ++k) pole[k] = pick(controls_[piece][k]);
  }

  const ParametricCurve<N>& f_;
  std::size_t span_;
  double first_, last_;
  int pieces_;
  std::vector<std::array<Control, N>> controls_;  ///< Bezier points of each part
};

}  // namespace

template <std::size_t N>
HermiteSpline<N> fit_hermite_spline(const ParametricCurve<N>& f, const std::vector<double>& spans,
                                    const std::array<double, N>& weight, double aim) {
  HermiteSpline<N> fitted;
  for (std::size_t span = 0; span + 1 < spans.size(); ++span)
    for (int pieces = 1;; pieces *= 2) {
      const SpanFit<N> part(f, spans, span, pieces);
      const double deviation = part.deviation(weight);
      if (deviation > aim && pieces < 64) continue;
      fitted.deviation = std::max(fitted.deviation, deviation);
      part.append_to(fitted);
      if (span + 2 == spans.size()) part.close(fitted);
      break;
    }
  return fitted;
}

template HermiteSpline<2> fit_hermite_spline<2>(const ParametricCurve<2>&, const std::vector<double>&,
                                                const std::array<double, 2>&, double);
template HermiteSpline<3> fit_hermite_spline<3>(const ParametricCurve<3>&, const std::vector<double>&,
                                                const std::array<double, 3>&, double);

}  // namespace sagitta
