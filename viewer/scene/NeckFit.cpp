#include "scene/NeckFit.hpp"

#include <algorithm>

namespace sagitta::viewer {

namespace {

double body_end(const Board& board, const Layout& layout) {
  return std::min(board.neck->body_at.value_or(layout.heel_end), layout.heel_end);
}

}  // namespace

std::optional<double> neck_half_width(const Board& board, const Layout& layout, double x) {
  if (!board.neck || !board.neck->nut_width || !board.neck->body_width) return std::nullopt;
  const double end = board.neck->body_at.value_or(layout.heel_end);
  const double part = end > 0 ? x / end : 0;
  const double wide = *board.neck->nut_width + part * (*board.neck->body_width - *board.neck->nut_width);
  return wide / 2 - (board.neck->state == NeckState::rough ? board.neck->trim : 0);
}

std::optional<NeckFit> neck_fit(const Board& board, const Layout& layout) {
  if (!neck_half_width(board, layout, 0)) return std::nullopt;
  NeckFit fit;
  const double end = body_end(board, layout);
  std::vector<double> places{0, end};
  for (const FretLine& fret : layout.frets)
    if (fret.middle.x > 0 && fret.middle.x < end) places.push_back(fret.middle.x);
  std::sort(places.begin(), places.end());
  for (const double x : places) fit.stations.push_back({x, layout.half_width(x) - *neck_half_width(board, layout, x)});
  const auto by_over = [](const FitStation& a, const FitStation& b) { return a.over < b.over; };
  fit.widest = *std::max_element(fit.stations.begin(), fit.stations.end(), by_over);
  fit.narrowest = *std::min_element(fit.stations.begin(), fit.stations.end(), by_over);
  for (std::size_t i = 1; i < fit.stations.size(); ++i) {
    const FitStation &a = fit.stations[i - 1], &b = fit.stations[i];
    if ((a.over < 0) == (b.over < 0)) continue;
    fit.crossing = a.x + (b.x - a.x) * a.over / (a.over - b.over);
    break;
  }
  return fit;
}

}  // namespace sagitta::viewer
