#include "solid/HermiteSpline.hpp"

#include <algorithm>
#include <cmath>

#include "solid/Hermite.hpp"

namespace sagitta {
namespace {

double value(const std::array<double, 6>& c, double t) {
  const double s = 1 - t;
  const double s2 = s * s, t2 = t * t;
  return s2 * s2 * s * c[0] + 5 * s2 * s2 * t * c[1] + 10 * s2 * s * t2 * c[2] + 10 * s2 * t2 * t * c[3] +
         5 * s * t2 * t2 * c[4] + t2 * t2 * t * c[5];
}

/// One span of the course, between knots.
template <std::size_t N>
class SpanFit {
 public:
  /// `equal`: the length of all pieces; 0 where they are not equally long.
  SpanFit(const ParametricCurve<N>& f, std::size_t span, std::vector<double> knots, double equal,
          const std::array<double, N>& weight)
      : f_(&f), span_(span), knots_(std::move(knots)), equal_(equal), pieces_(static_cast<int>(knots_.size()) - 1) {
    std::array<Jet, N> start = (*f_)(knot(0), span_);
    for (int i = 0; i < pieces_; ++i) {
      const std::array<Jet, N> end = (*f_)(knot(i + 1), span_);
      std::array<Control, N>& control = controls_.emplace_back();
      for (std::size_t k = 0; k < N; ++k) control[k] = bezier(start[k], end[k], length(i));
      off_.push_back(deviation(weight, i));
      start = end;
    }
  }

  int pieces() const { return pieces_; }
  double deviation() const { return *std::max_element(off_.begin(), off_.end()); }

  /// The knots, with one more in the middle of each piece that deviates by more than the aim.
  std::vector<double> finer(double aim) const {
    std::vector<double> all;
    for (int i = 0; i < pieces_; ++i) {
      all.push_back(knot(i));
      if (off_[static_cast<std::size_t>(i)] > aim) all.push_back((knot(i) + knot(i + 1)) / 2);
    }
    all.push_back(knot(pieces_));
    return all;
  }

  /// Continues a spline that ends where this span begins.
  void append_to(HermiteSpline<N>& spline) const {
    if (spline.poles.empty()) add(spline, 0, [](const Control& c) { return c[0]; });
    for (int i = 0; i < pieces_; ++i) {
      if (i == 0)
        add(spline, i, [](const Control& c) { return c[1]; });
      else
        add(spline, i, [r = step_before(i)](const Control& c) { return (1 + r) * c[1] - r * c[2]; });
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
    spline.knots.push_back(knot(pieces_));
    spline.multiplicities.push_back(6);
  }

 private:
  using Control = std::array<double, 6>;

  double knot(int i) const { return knots_[static_cast<std::size_t>(i)]; }

  double length(int i) const { return equal_ > 0 ? equal_ : knot(i + 1) - knot(i); }

  /// The length of the piece before over that of piece i: where the blossom across their triple knot is taken.
  double step_before(int i) const { return length(i - 1) / length(i); }

  double deviation(const std::array<double, N>& weight, int i) const {
    double most = 0;
    for (const double t : {0.25, 0.5, 0.75}) {
      const std::array<Jet, N> exact = (*f_)(knot(i) + t * length(i), span_);
      for (std::size_t k = 0; k < N; ++k)
        most = std::max(most, weight[k] * std::abs(value(controls_[i][k], t) - exact[k].v));
    }
    return most;
  }

  template <class Pick>
  void add(HermiteSpline<N>& spline, int piece, Pick pick) const {
    std::array<double, N>& pole = spline.poles.emplace_back();
    for (std::size_t k = 0; k < N; ++k) pole[k] = pick(controls_[piece][k]);
  }

  const ParametricCurve<N>* f_;
  std::size_t span_;
  std::vector<double> knots_;
  double equal_;
  int pieces_;
  std::vector<std::array<Control, N>> controls_;  ///< Bezier points of each piece
  std::vector<double> off_;                       ///< how far each strays
};

/// A span in as few equal pieces as reach the aim; where `most_equal` of them do not, those that deviate are halved.
template <std::size_t N>
SpanFit<N> fit_span(const ParametricCurve<N>& f, double first, double last, std::size_t span,
                    const std::array<double, N>& weight, double aim) {
  constexpr int most_equal = 64, most_pieces = 1024;
  int pieces = 1;
  const auto equal = [&] {
    std::vector<double> knots;
    for (int i = 0; i < pieces; ++i) knots.push_back(first + (last - first) * i / pieces);
    knots.push_back(last);
    return SpanFit<N>(f, span, std::move(knots), (last - first) / pieces, weight);
  };
  SpanFit<N> fit = equal();
  while (fit.deviation() > aim && pieces < most_equal) {
    pieces *= 2;
    fit = equal();
  }
  while (fit.deviation() > aim && fit.pieces() < most_pieces) fit = SpanFit<N>(f, span, fit.finer(aim), 0, weight);
  return fit;
}

}  // namespace

template <std::size_t N>
HermiteSpline<N> fit_hermite_spline(const ParametricCurve<N>& f, const std::vector<double>& spans,
                                    const std::array<double, N>& weight, double aim) {
  HermiteSpline<N> fitted;
  for (std::size_t span = 0; span + 1 < spans.size(); ++span) {
    const SpanFit<N> part = fit_span(f, spans[span], spans[span + 1], span, weight, aim);
    fitted.deviation = std::max(fitted.deviation, part.deviation());
    part.append_to(fitted);
    if (span + 2 == spans.size()) part.close(fitted);
  }
  return fitted;
}

template HermiteSpline<2> fit_hermite_spline<2>(const ParametricCurve<2>&, const std::vector<double>&,
                                                const std::array<double, 2>&, double);
template HermiteSpline<3> fit_hermite_spline<3>(const ParametricCurve<3>&, const std::vector<double>&,
                                                const std::array<double, 3>&, double);

}  // namespace sagitta
