#include "neck/PlaceGuess.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Doubts. mm; see Guess::doubt. They only order places that the sides alone cannot tell apart.
constexpr double other_axes = 0.05, at_nut_end = 0.1, at_other_line = 0.2, at_heel_only = 0.3, at_no_end = 0.5;
/// A face leans no more than this against an axis that it is drawn along. radians: half a degree.
constexpr double drawn_lean = 0.0087;
/// A drawn line lies no further than this from the neck's middle. mm.
constexpr double drawn_off = 1;
/// Two ends this close to two lines of the board agree with both. mm.
constexpr double both_ends = 0.05;
constexpr int looks_along = 40;
constexpr std::size_t most_ends = 40;

Place3 minus(const Place3& a, const Place3& b) { return {a[0] - b[0], a[1] - b[1], a[2] - b[2]}; }
double times(const Place3& a, const Place3& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }
Place3 crossed(const Place3& a, const Place3& b) {
  return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}
Place3 unit3(const Place3& a) {
  const double size = std::sqrt(times(a, a));
  return {a[0] / size, a[1] / size, a[2] / size};
}

constexpr std::array<Place3, 3> axes{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};

/// Directions of the outlines' sides, the longest first: those of one bin of two degrees together.
std::vector<double> directions(const NeckOutlines& outlines) {
  constexpr int bins = 90;
  std::array<double, bins> size{};
  std::array<Point, bins> sum{};
  for (const auto& outline : outlines)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Place3 &a = outline[i], &b = outline[(i + 1) % outline.size()];
      Point way{b[0] - a[0], b[1] - a[1]};
      if (way.y < 0 || (way.y == 0 && way.x < 0)) way = -1.0 * way;
      const double part = std::atan2(way.y, way.x) / std::numbers::pi;
      const auto bin = static_cast<std::size_t>(std::min(bins - 1, static_cast<int>(part * bins)));
      size[bin] += length(way), sum[bin] = sum[bin] + way;
    }
  std::vector<double> found;
  for (int i = 0; i < 6; ++i) {
    const auto best = static_cast<std::size_t>(std::max_element(size.begin(), size.end()) - size.begin());
    if (size[best] <= 0) break;
    found.push_back(std::atan2(sum[best].y, sum[best].x));
    size[best] = 0;
  }
  return found;
}

/// The motion with its x axis on the middle of the face's stretches that are about as wide as the board.
std::optional<FlatMotion> centred(const FlatFace& face, FlatMotion motion, const BoardSeat& seat) {
  const double wide[] = {seat.edge(0, 0) + seat.edge(1, 0),
                         seat.edge(0, seat.compare_to) + seat.edge(1, seat.compare_to)};
  const double least = 0.6 * std::min(wide[0], wide[1]), most = 1.5 * std::max(wide[0], wide[1]) + 2 * seat.trim;
  for (int round = 0; round < 3; ++round) {
    const NeckOutlines outlines = laid(face.outlines, motion);
    double low = 1e300, high = -1e300;
    for (const auto& outline : outlines)
      for (const Place3& p : outline) low = std::min(low, p[0]), high = std::max(high, p[0]);
    std::vector<Point> middles;
    for (int i = 0; i < looks_along; ++i) {
      const double x = low + (high - low) * (i + 0.5) / looks_along;
      const auto spans = spans_at(outlines, x);
      if (spans.empty()) continue;
      const double width = spans.back().high - spans.front().low;
      if (width >= least && width <= most) middles.push_back({x, (spans.back().high + spans.front().low) / 2});
    }
    const auto line = middle_line(middles);
    if (!line) return {};
    motion = shifted(motion, 0, line->at, std::atan(line->slope));
  }
  return motion;
}

/// Where the face begins or ends, on the middle line; or a corner beside a side, which may be either.
struct End {
  double x = 0;
  bool begins = true, ends = true;
  double slant = 0;  ///< change of x for each mm of y
};

std::vector<End> ends_of(const NeckOutlines& outlines, const BoardSeat& seat) {
  std::vector<End> found;
  const auto take = [&](const End& end) {
    for (const End& known : found)
      if (std::abs(known.x - end.x) < tolerance::snap && known.begins == end.begins) return;
    if (found.size() < most_ends) found.push_back(end);
  };
  const double q = 0.5 * std::min(seat.edge(0, 0), seat.edge(1, 0));
  const auto low = spans_along(outlines, -q), high = spans_along(outlines, q);
  for (const FaceSpan& a : low)
    for (const FaceSpan& b : high) {
      if (std::abs(a.low - b.low) < 2 * q) take({(a.low + b.low) / 2, true, false, (b.low - a.low) / (2 * q)});
      if (std::abs(a.high - b.high) < 2 * q) take({(a.high + b.high) / 2, false, true, (b.high - a.high) / (2 * q)});
    }
  if (std::abs(seat.nut_slant) > tolerance::direction) return found;
  constexpr double corner = 0.26;  // radians: 15 degrees
  for (const auto& outline : outlines)
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Place3 &a = outline[i], &b = outline[(i + 1) % outline.size()], &c = outline[(i + 2) % outline.size()];
      if (std::abs(b[1]) < q || std::abs(b[1]) > 4 * q) continue;
      const Point in{b[0] - a[0], b[1] - a[1]}, out{c[0] - b[0], c[1] - b[1]};
      if (std::abs(std::atan2(cross(in, out), dot(in, out))) > corner) take({b[0], true, true, 0});
    }
  return found;
}

double slant_doubt(const End& end, const BoardSeat& seat) {
  const double off = std::abs(end.slant - seat.nut_slant) * seat.edge(0, 0);
  return std::min(1.0, off / 5);
}

/// Guesses that lay an end of the face at an end of the board.
void add_ends(const FlatFace& face, const FlatMotion& middle, const BoardSeat& seat, std::vector<Guess>& found) {
  const std::vector<End> ends = ends_of(laid(face.outlines, middle), seat);
  const auto meets_heel = [&](double shift) {
    for (const End& end : ends)
      for (const double line : seat.heel_lines)
        if (end.ends && std::abs(end.x - line - shift) < both_ends) return true;
    return false;
  };
  const auto put = [&](double shift, double doubt) {
    found.push_back({shifted(middle, shift, 0, 0), PlacedBy::ends, doubt});
  };
  for (const End& end : ends) {
    for (std::size_t i = 0; end.begins && i < seat.nut_lines.size(); ++i) {
      const double shift = end.x - seat.nut_lines[i];
      const double doubt = (i == 0 ? at_nut_end : at_other_line) - (meets_heel(shift) ? at_nut_end : 0);
      put(shift, doubt + (end.ends ? 0 : slant_doubt(end, seat)));
    }
    for (const double line : seat.heel_lines)
      if (end.ends) put(end.x - line, at_heel_only);
  }
}

/// The guess that fits the widths best, wherever it lies along the neck.
void add_slide(const FlatFace& face, const FlatMotion& middle, const BoardSeat& seat, std::vector<Guess>& found) {
  const NeckOutlines outlines = laid(face.outlines, middle);
  double low = 1e300, high = -1e300;
  for (const auto& outline : outlines)
    for (const Place3& p : outline) low = std::min(low, p[0]), high = std::max(high, p[0]);
  constexpr int tries = 120;
  const double last = high - 0.9 * seat.compare_to, first = low - 0.1 * seat.compare_to;
  if (last <= first) return;
  double best = 1e300, shift = 0;
  for (int i = 0; i <= tries; ++i) {
    const double x = first + (last - first) * i / tries;
    const double mean = edge_fit(face.outlines, shifted(middle, x, 0, 0), seat).mean;
    if (mean < best) best = mean, shift = x;
  }
  const FlatMotion start = shifted(middle, shift, 0, 0);
  found.push_back({refined(face.outlines, start, seat, Free::all), PlacedBy::widths, at_no_end});
}

/// Whether the face is drawn square to an axis of the file.
bool is_drawn_square(const FlatFace& face) {
  return std::any_of(axes.begin(), axes.end(),
                     [&](const Place3& axis) { return std::abs(times(face.up, axis)) > std::cos(drawn_lean); });
}

/// Guesses that take the file's own zero and axes.
void add_frame(const FlatFace& face, std::vector<Guess>& found) {
  if (!is_drawn_square(face)) return;
  const Point zero = face.flat({0, 0, 0});
  const bool as_board = face.up[2] > std::cos(drawn_lean);
  for (const Place3& axis : axes)
    for (const double sign : {1.0, -1.0}) {
      const Point way = sign * face.direction(axis);
      if (length(way) < std::cos(drawn_lean)) continue;
      const bool as_drawn = as_board && axis == axes[0] && sign > 0;
      if (!as_drawn && std::abs(face.height({0, 0, 0})) > place_tolerance) continue;
      found.push_back({{zero, std::atan2(way.y, way.x)}, PlacedBy::frame, as_drawn ? 0 : other_axes});
    }
}

/// The middle of the gaps between stretches, where they could be a rod channel's.
std::optional<MiddleLine> channel_middle(const NeckOutlines& outlines, const BoardSeat& seat) {
  std::vector<Point> middles;
  for (int i = 0; i < looks_along; ++i) {
    const double x = seat.compare_to * (i + 0.5) / looks_along;
    const auto spans = spans_at(outlines, x);
    for (std::size_t k = 1; k < spans.size(); ++k) {
      const double middle = (spans[k - 1].high + spans[k].low) / 2, width = spans[k].low - spans[k - 1].high;
      if (std::abs(middle) < drawn_off && width > 1 && width < seat.edge(0, x)) middles.push_back({x, middle});
    }
  }
  return middles.size() < looks_along / 3 ? std::nullopt : middle_line(middles);
}

}  // namespace

Point FlatFace::flat(const Place3& point) const {
  const Place3 off = minus(point, middle);
  return {times(off, first), times(off, second)};
}

Point FlatFace::direction(const Place3& axis) const { return {times(axis, first), times(axis, second)}; }

double FlatFace::height(const Place3& point) const { return times(minus(point, middle), up); }

FlatFace flat_face(const FaceCandidate& candidate) {
  FlatFace face;
  face.middle = candidate.middle, face.up = unit3(candidate.up);
  const auto least = std::min_element(axes.begin(), axes.end(), [&](const Place3& a, const Place3& b) {
    return std::abs(times(a, face.up)) < std::abs(times(b, face.up));
  });
  face.second = unit3(crossed(face.up, *least));
  face.first = crossed(face.second, face.up);
  for (const auto& outline : candidate.outlines) {
    face.outlines.emplace_back();
    for (const Place3& p : outline) {
      const Point flat = face.flat(p);
      face.outlines.back().push_back({flat.x, flat.y, face.height(p)});
    }
  }
  return face;
}

std::vector<Guess> guesses(const FlatFace& face, const BoardSeat& seat) {
  std::vector<Guess> found;
  add_frame(face, found);
  for (const double angle : directions(face.outlines))
    for (const double turn : {0.0, std::numbers::pi}) {
      const auto middle = centred(face, {{0, 0}, angle + turn}, seat);
      if (!middle) continue;
      add_ends(face, *middle, seat, found);
      add_slide(face, *middle, seat, found);
    }
  return found;
}

FlatMotion on_drawn_line(const FlatFace& face, const FlatMotion& motion, const BoardSeat& seat) {
  const double most = edge_fit(face.outlines, motion, seat).mean + place_tolerance / 2;
  std::vector<FlatMotion> drawn;
  if (is_drawn_square(face))
    for (const Place3& axis : axes)
      for (const double sign : {1.0, -1.0}) {
        const Point way = turned(sign * face.direction(axis), -motion.angle);
        const Point zero = turned(face.flat({0, 0, 0}) - motion.at, -motion.angle);
        if (way.x < std::cos(drawn_lean)) continue;
        const double across = zero.y - zero.x * way.y / way.x;
        drawn.push_back(shifted(motion, 0, across, std::atan2(way.y, way.x)));
      }
  if (const auto line = channel_middle(laid(face.outlines, motion), seat))
    drawn.push_back(shifted(motion, 0, line->at, std::atan(line->slope)));
  for (const FlatMotion& line : drawn)
    if (distance(line.at, motion.at) < drawn_off && edge_fit(face.outlines, line, seat).mean <= most) return line;
  return motion;
}

}  // namespace sagitta
