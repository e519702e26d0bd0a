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

/// One span of the course, in equal parts until one is refined by itself.
template <std::size_t N>
class SpanFit {
 public:
  SpanFit(const ParametricCurve<N>& f, const std::vector<double>& spans, std::size_t span)
      : f_(f), span_(span), first_(spans[span]), last_(spans[span + 1]), jets_{f(first_, span), f(last_, span)} {
    fit();
  }

  int pieces() const { return static_cast<int>(jets_.size()) - 1; }

  /// Twice as many equal parts. Their number is a power of 2, so that knots stay where they are to the last bit.
  void halve() {
    const std::vector<std::array<Jet, N>> old = std::move(jets_);
    jets_.resize(2 * old.size() - 1);
    for (std::size_t i = 0; i < old.size(); ++i) jets_[2 * i] = old[i];
    for (int i = 1; i < pieces(); i += 2) jets_[i] = f_(knot(i), span_);
    fit();
  }

  /// Two parts in place of each that deviates by more than `enough`, but of the shortest; whether there are more now.
  bool refine(const std::array<double, N>& weight, double enough) {
    const int before = pieces();
    const double shortest = 1e-7 * (last_ - first_);
    std::vector<double> knots;
    std::vector<std::array<Jet, N>> jets;
    for (int i = 0; i <= before; ++i) {
      knots.push_back(knot(i));
      jets.push_back(jets_[i]);
      if (i == before || length(i) < shortest || deviation(weight, enough, i) <= enough) continue;
      knots.push_back((knot(i) + knot(i + 1)) / 2);
      jets.push_back(f_(knots.back(), span_));
    }
    knots_ = std::move(knots);
    jets_ = std::move(jets);
    fit();
    return pieces() > before;
  }

  /// The largest deviation, or the first found that is more than `enough`. A quintic that is right to the second
  /// derivative at its ends strays most near its middle.
  double deviation(const std::array<double, N>& weight, double enough) const {
    double most = 0;
    for (const double t : quarters)
      for (int i = 0; i < pieces(); ++i) {
        most = std::max(most, off(weight, i, t));
        if (most > enough) return most;
      }
    return most;
  }

  /// Continues a spline that ends where this span begins.
  void append_to(HermiteSpline<N>& spline) const {
    if (spline.poles.empty()) spline.poles.reserve(3 * controls_.size() + 3);
    if (spline.poles.empty()) add(spline, 0, [](const Control& c) { return c[0]; });
    for (int i = 0; i < pieces(); ++i) {
      if (i == 0)
        add(spline, i, [](const Control& c) { return c[1]; });
      else
        add(spline, i, [r = before(i)](const Control& c) { return (1 + r) * c[1] - r * c[2]; });
      add(spline, i, [](const Control& c) { return c[2]; });
      add(spline, i, [](const Control& c) { return c[3]; });
      spline.knots.push_back(knot(i));
      spline.multiplicities.push_back(spline.knots.size() == 1 ? 6 : i == 0 ? 4 : 3);
    }
    add(spline, pieces() - 1, [](const Control& c) { return c[4]; });
  }

  /// The spline's end.
  void close(HermiteSpline<N>& spline) const {
    add(spline, pieces() - 1, [](const Control& c) { return c[5]; });
    spline.knots.push_back(last_);
    spline.multiplicities.push_back(6);
  }

 private:
  using Control = std::array<double, 6>;
  static constexpr std::array<double, 3> quarters{0.5, 0.25, 0.75};

  double knot(int i) const {
    if (!knots_.empty()) return knots_[i];
    return i == pieces() ? last_ : first_ + (last_ - first_) * i / pieces();
  }
  double length(int i) const { return knots_.empty() ? (last_ - first_) / pieces() : knot(i + 1) - knot(i); }
  /// The length of the part before over that of part i, for the blossom across their triple knot.
  double before(int i) const { return length(i - 1) / length(i); }

  double off(const std::array<double, N>& weight, int i, double t) const {
    double most = 0;
    const std::array<Jet, N> exact = f_(knot(i) + t * length(i), span_);
    for (std::size_t k = 0; k < N; ++k)
      most = std::max(most, weight[k] * std::abs(value(controls_[i][k], t) - exact[k].v));
    return most;
  }

  double deviation(const std::array<double, N>& weight, double enough, int i) const {
    double most = 0;
    for (const double t : quarters)
      if (most <= enough) most = std::max(most, off(weight, i, t));
    return most;
  }

  void fit() {
    controls_.resize(jets_.size() - 1);
    for (std::size_t i = 0; i < controls_.size(); ++i)
      for (std::size_t k = 0; k < N; ++k)
        controls_[i][k] = bezier(jets_[i][k], jets_[i + 1][k], length(static_cast<int>(i)));
  }

  template <class Pick>
  void add(HermiteSpline<N>& spline, int piece, Pick pick) const {
    std::array<double, N>& pole = spline.poles.emplace_back();
    for (std::size_t k = 0; k < N; ++k) pole[k] = pick(controls_[piece][k]);
  }

  const ParametricCurve<N>& f_;
  std::size_t span_;
  double first_, last_;
  std::vector<double> knots_;                     ///< none while the parts are equal
  std::vector<std::array<Jet, N>> jets_;          ///< at the knots
  std::vector<std::array<Control, N>> controls_;  ///< Bezier points of each part
};

}  // namespace

constexpr double every = 1e300;  ///< no deviation is enough to stop looking

template <std::size_t N>
HermiteSpline<N> fit_hermite_spline(const ParametricCurve<N>& f, const std::vector<double>& spans,
                                    const std::array<double, N>& weight, double aim) {
  constexpr int most_equal = 64, most_pieces = 1024;
  HermiteSpline<N> fitted;
  for (std::size_t span = 0; span + 1 < spans.size(); ++span) {
    SpanFit<N> part(f, spans, span);
    double deviation = part.deviation(weight, aim);
    while (deviation > aim && part.pieces() < most_pieces) {
      if (part.pieces() < most_equal)
        part.halve();
      else if (!part.refine(weight, aim))
        break;
      deviation = part.deviation(weight, part.pieces() < most_equal ? aim : every);
    }
    fitted.deviation = std::max(fitted.deviation, deviation);
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
