#include "scene/NeckFit.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta::viewer {

namespace {

double to_trim(const Board& board) { return board.neck->state == NeckState::rough ? board.neck->trim : 0; }

/// The neck's sides through its two widths; what the board is wider stands over by the same on both sides.
void fit_widths(NeckFit& fit, const Board& board, const Layout& layout) {
  const Neck& neck = *board.neck;
  const double body = neck.body_at.value_or(layout.heel_end), end = std::min(body, layout.heel_end);
  const auto over = [&](double x) {
    const double part = body > 0 ? x / body : 0;
    const double wide = *neck.nut_width + part * (*neck.body_width - *neck.nut_width);
    return layout.half_width(x) - (wide / 2 - to_trim(board));
  };
  std::vector<double> places{0, end};
  for (const FretLine& fret : layout.frets)
    if (fret.middle.x > 0 && fret.middle.x < end) places.push_back(fret.middle.x);
  std::sort(places.begin(), places.end());
  for (const double x : places)
    for (auto& side : fit.sides) side.push_back({x, over(x)});
}

void fit_shape(NeckFit& fit, const Board& board, const Layout& layout, const NeckShape& shape) {
  for (const Overlap& o : overlaps(shape, layout))
    fit.sides[o.side < 0 ? 0 : 1].push_back({o.x, to_trim(board) - o.out});
  for (auto& side : fit.sides)
    std::sort(side.begin(), side.end(), [](const FitStation& a, const FitStation& b) { return a.x < b.x; });
}

}  // namespace

std::optional<NeckFit> neck_fit(const PreparedBoard& prepared, const NeckReading* neck) {
  const Board& board = prepared.board();
  const Layout& layout = prepared.layout();
  if (!board.neck) return std::nullopt;
  NeckFit fit;
  fit.from_file = neck && neck->shape && is_measured(*neck->shape);
  if (fit.from_file)
    fit_shape(fit, board, layout, *neck->shape);
  else if (board.neck->nut_width && board.neck->body_width)
    fit_widths(fit, board, layout);
  if (fit.sides[0].empty() || fit.sides[1].empty()) return std::nullopt;
  fit.widest = fit.narrowest = fit.sides[0].front();
  for (int side = 0; side < 2; ++side)
    for (const FitStation& s : fit.sides[static_cast<std::size_t>(side)]) {
      FitStation& most = fit.most[static_cast<std::size_t>(side)];
      if (&s == &fit.sides[static_cast<std::size_t>(side)].front() || std::abs(s.over) > std::abs(most.over)) most = s;
      if (s.over > fit.widest.over) fit.widest = s, fit.widest_side = side;
      if (s.over < fit.narrowest.over) fit.narrowest = s, fit.narrowest_side = side;
    }
  return fit;
}

double neck_edge(const NeckFit& fit, const Layout& layout, std::size_t side, double x) {
  const auto& all = fit.sides[side];
  const double inside = std::clamp(x, all.front().x, all.back().x);
  const auto next =
      std::lower_bound(all.begin(), all.end(), inside, [](const FitStation& s, double v) { return s.x < v; });
  const auto half = [&](const FitStation& s) { return layout.edge(static_cast<int>(side), s.x) - s.over; };
  if (next == all.begin()) {
    // Carried on along the first two stations, for the wood behind the nut line.
    const auto last = std::find_if(all.begin(), all.end(), [&](const FitStation& s) { return s.x > all.front().x; });
    if (last == all.end()) return half(all.front());
    return half(all.front()) + (x - all.front().x) / (last->x - all.front().x) * (half(*last) - half(all.front()));
  }
  const FitStation &a = *(next - 1), &b = *next;
  return b.x > a.x ? half(a) + (inside - a.x) / (b.x - a.x) * (half(b) - half(a)) : half(b);
}

}  // namespace sagitta::viewer
