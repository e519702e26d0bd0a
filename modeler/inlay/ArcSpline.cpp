#include "inlay/ArcSpline.hpp"

#include <algorithm>
#include <cmath>

#include "inlay/Biarc.hpp"
#include "inlay/FitTolerance.hpp"

namespace sagitta {
namespace {

constexpr double most_turn = 2.5;  // radians, of an arc
const double least_turned = std::cos(most_turn);
constexpr double least_ahead = 0.35;   // of the way to a station: cosine of half of most_turn, nearly
constexpr std::size_t beam_width = 6;  // chains that are looked at side by side
constexpr int most_looked = 8;         // stations, by which chains that fall short are mostly told
constexpr double lengths[] = {1, 0.9, 0.8, 0.7, 0.6, 0.5};  // of the longest arc that serves
constexpr double bends_tried[] = {0.5, 0.15, 0.85};         // between its least and its greatest curvature

constexpr double least_bend = 1e-6;                            // 1/mm; flatter is a line
constexpr double clear_turn = 1e-3;                            // sine; with less two tangents meet too far off
constexpr double least_left = 0.0001;                          // mm
constexpr double shares[] = {1, 0.6, 1.6, 0.3, 2.5, 0.15, 5};  // of the first leg of two last arcs

using Chain = std::vector<CurveSegment>;

/// A chain so far: it stands at `p`, near station `at`, and goes on in direction `way`.
struct State {
  int at = 0;
  Point p, way;
  int before = -1;  ///< index of the state that it comes from
  double bend = 0;  ///< curvature of the arc that leads here from there; 0: a line
  int reach = 0;    ///< station that one more arc can come to
};

/// Curvatures of the arcs from a state that pass all stations up to one.
struct Bends {
  double low = -1e300, high = 1e300;
  bool held = false;  ///< by a station
};

class ArcSplineSearch {
 public:
  explicit ArcSplineSearch(const SmoothRun& run)
      : run_(run),
        x_(run.stations),
        follow_(run.follow),
        least_left_(run.least_left),
        least_right_(run.least_right),
        end_(static_cast<int>(x_.size()) - 1) {}

  Chain chain() {
    if (Chain round = fillet(); !round.empty()) return round;
    std::vector<int> beam = begun();
    for (;;) {
      for (const bool two : {false, true})
        for (const int i : beam)
          if (Chain last = finish(states_[i], two); !last.empty()) return whole(i, std::move(last));
      std::vector<int> next = advanced(beam);
      if (next.empty() && (run_.least_left > 0 || run_.least_right > 0)) next = advanced_tighter(beam);
      if (next.empty()) {
        if (Chain all = stepped(beam.front()); !all.empty()) return all;
        next = {static_cast<int>(states_.size()) - 1};
      }
      beam = std::move(next);
    }
  }

 private:
  /// How far one arc from a state can come, and what curvatures serve up to each station.
  int scan(const State& from, std::vector<Bends>* bends) const {
    Bends now = all_bends();
    if (bends) bends->clear();
    for (int i = from.at + 1; i <= end_; ++i) {
      if (!passes(from, i, now)) return i - 1;
      if (bends) bends->push_back(now);
    }
    return end_;
  }

  Bends all_bends() const {
    Bends all;
    if (least_left_ > 0) all.high = 1 / least_left_;
    if (least_right_ > 0) all.low = -1 / least_right_;
    return all;
  }

  /// Narrows the curvatures down to those of arcs that pass a station too; false: none is left.
  bool passes(const State& from, int i, Bends& bends) const {
    const Point to = x_[i] - from.p;
    const double square = dot(to, to), ahead = dot(from.way, to), aside = cross(from.way, to), off = follow_[i];
    if (square <= 4 * off * off) return true;
    if (ahead < 0 || ahead * ahead < least_ahead * least_ahead * square) return false;
    // Distance from the circle of curvature k: k square / 2 - aside, to the first order.
    const double twice = 2 / square;
    bends.held = true;
    bends.low = std::max(bends.low, twice * (aside - off));
    bends.high = std::min(bends.high, twice * (aside + off));
    return bends.low <= bends.high;
  }

  /// The state after an arc of curvature k to station j.
  State bent(int before, int j, double k) const {
    const State& from = states_[before];
    State to{j, {}, from.way, before, 0, j};
    const Point way = x_[j] - from.p;
    if (std::abs(k) * dot(way, way) / 8 < tolerance::flat) {
      to.p = from.p + dot(way, from.way) * from.way;
      return to;
    }
    const double radius = 1 / k;
    const Point centre = from.p + radius * left_of(from.way), out = x_[j] - centre;
    const Point ray = (1 / std::sqrt(dot(out, out))) * out;
    to.p = centre + std::abs(radius) * ray;
    to.way = (k > 0 ? 1 : -1) * left_of(ray);
    to.bend = k;
    return to;
  }

  /// What leads to a state from the one before.
  CurveSegment piece_to(const State& to) const {
    const State& from = states_[to.before];
    if (to.bend == 0) return line(from.p, to.p);
    return arc_between(from.p + (1 / to.bend) * left_of(from.way), 1 / std::abs(to.bend), from.p, to.p, to.bend > 0);
  }

  /// Chains of no piece yet: ways to begin.
  std::vector<int> begun() {
    State first;
    first.p = x_.front();
    first.way = run_.way_in ? *run_.way_in : free_way();
    first.reach = scan(first, &bends_);
    std::vector<int> beam;
    add(first, beam);
    const double size = distance(first.p, x_[std::max(1, first.reach)]);
    for (const double s : {-3, -2, -1, 1, 2, 3}) {
      State other = first;
      if (!run_.way_in) {
        other.way = turned(first.way, s * 1.3 * follow_[0] / size);
      } else if (run_.slack_in > 0 && !bends_.empty()) {
        const double k = std::abs(bends_.back().low + bends_.back().high) / 2;
        const double slide =
            s / 3 * std::min({std::sqrt(2 * follow_[0] / std::max(k, least_bend)), size / 2, run_.slack_in});
        other.p = first.p + slide * first.way;
        if (slide < 0) other.at = -1;  // the first station lies ahead
      } else {
        break;
      }
      other.reach = scan(other, nullptr);
      add(other, beam);
    }
    return beam;
  }

  /// Direction at the first station of the circle through it and others ahead.
  Point free_way() const {
    const int far = std::min(end_, 6), middle = std::max(1, far / 2);
    const Point chord = unit(x_[middle] - x_[0]), rest = unit(x_[far] - x_[middle]);
    if (middle == far) return chord;
    const double bend = std::atan2(cross(chord, rest), dot(chord, rest));
    const double a = distance(x_[0], x_[middle]), b = distance(x_[middle], x_[far]);
    return turned(chord, -bend * a / (a + b));
  }

  /// Into a beam whose states come in the order of their reach, earlier ones first where it is the same.
  void add(const State& state, std::vector<int>& beam) {
    states_.push_back(state);
    const auto place = std::upper_bound(beam.begin(), beam.end(), state.reach,
                                        [&](int reach, int i) { return reach > states_[i].reach; });
    beam.insert(place, static_cast<int>(states_.size()) - 1);
    if (beam.size() > beam_width) beam.pop_back();
  }

  /// Whether a state cannot come further than all of a full beam: some stations on the way there rule it out.
  bool falls_short(const State& from, const std::vector<int>& beam) const {
    if (beam.size() < beam_width) return false;
    const int further = states_[beam.back()].reach + 1;
    if (further > end_) return true;
    Bends now = all_bends();
    const int stride = 1 + (further - from.at) / most_looked;
    for (int i = further; i > from.at; i -= stride)
      if (!passes(from, i, now)) return true;
    return false;
  }

  /// A tighter arc is better than a corner; best is an arc that the cutter can follow within tolerance.
  std::vector<int> advanced_tighter(const std::vector<int>& beam) {
    std::vector<int> next, any;
    for (const double share : {0.9, 0.7, 0.5}) {
      least_left_ = share * run_.least_left;
      least_right_ = share * run_.least_right;
      next = advanced(beam);
      if (any.empty()) any = next;
      std::erase_if(next, [&](int i) { return too_sharp(piece_to(states_[i])); });
      if (!next.empty()) break;
    }
    least_left_ = run_.least_left;
    least_right_ = run_.least_right;
    return next.empty() ? any : next;
  }

  std::vector<int> advanced(const std::vector<int>& beam) {
    std::vector<int> next;
    for (const int i : beam) {
      const int at = states_[i].at, reach = std::min(scan(states_[i], &bends_), end_ - 1);
      int last = -1;
      for (const double part : lengths) {
        const int j = at + static_cast<int>(std::ceil(part * (reach - at)));
        if (j <= at || j == last) continue;
        last = j;
        const Bends bends = bends_[j - at - 1];
        if (!bends.held) continue;
        for (const double share : bends_tried) {
          State to = bent(i, j, bends.low + share * (bends.high - bends.low));
          if (dot(states_[i].way, to.way) < least_turned || falls_short(to, next)) continue;
          to.reach = scan(to, nullptr);
          if (to.reach > j) add(to, next);
        }
      }
    }
    return next;
  }

  /// Where no arc serves: straight on to the next station. The whole chain when that is the last one.
  Chain stepped(int i) {
    State to{states_[i].at + 1, {}, {}, i, 0, 0};
    to.p = x_[to.at];
    to.way = unit(x_[std::min(end_, to.at + 1)] - x_[std::min(end_, to.at + 1) - 1]);
    states_.push_back(to);
    return to.at == end_ ? whole(static_cast<int>(states_.size()) - 1, {}) : Chain{};
  }

  Chain whole(int i, Chain last) const {
    Chain all;
    for (; states_[i].before >= 0; i = states_[i].before) all.push_back(piece_to(states_[i]));
    std::reverse(all.begin(), all.end());
    all.insert(all.end(), last.begin(), last.end());
    return all;
  }

  bool too_sharp(const CurveSegment& segment) const { return left_standing(segment, run_) > least_left; }

  /// Whether the chain passes all stations from one on; a line that follows it may count.
  bool serves(Chain chain, int from) const {
    for (const CurveSegment& segment : chain)
      if (segment.is_arc() && (std::abs(segment.sweep) > most_turn || too_sharp(segment))) return false;
    if (run_.way_out && run_.slack_out > 0)
      chain.push_back(line(chain.back().b, chain.back().b + run_.slack_out * *run_.way_out));
    for (int i = std::max(0, from); i <= end_; ++i)
      if (off_chain(chain, x_[i]) > follow_[i]) return false;
    return true;
  }

  /// One arc, or two, from a state to the end; nothing when they do not serve.
  Chain finish(const State& from, bool two) const {
    const bool near =
        two ? from.reach + 1.3 * (from.reach - from.at) + 2 >= end_ : from.reach >= end_ || run_.slack_out > 0;
    if (!near || from.at >= end_) return {};
    const Point q = x_[end_];
    Chain last;
    if (two) {
      const Point way = run_.way_out ? *run_.way_out : end_way();
      for (const double share : shares) {
        last = biarc(from.p, from.way, q, way, share);
        if (!last.empty() && serves(last, from.at)) return last;
      }
      return {};
    } else if (!run_.way_out) {
      last = {arc_along(from.p, from.way, q)};
      if (dot(from.way, q - from.p) <= 0) return {};
    } else if (const auto to = touching(from)) {
      last = {arc_along(from.p, from.way, *to)};
    }
    return !last.empty() && serves(last, from.at) ? last : Chain{};
  }

  /// Where the arc from a state that touches the line after the run meets it.
  std::optional<Point> touching(const State& from) const {
    const Point u = *run_.way_out, q = x_[end_];
    const double turn = cross(from.way, u);
    if (run_.slack_out <= 0 || std::abs(turn) < clear_turn || dot(from.way, u) < -0.9) return std::nullopt;
    const double leg = cross(q - from.p, u) / turn;  // to where the two tangents meet
    const Point to = from.p + leg * (from.way + u);
    const double slid = dot(to - q, u);
    if (leg <= 0 || slid > run_.slack_out || dot(to - from.p, u) < 0) return std::nullopt;
    return to;
  }

  Point end_way() const {
    const int far = std::max(0, end_ - 4), middle = std::max(far, end_ - 2);
    const Point chord = unit(x_[end_] - x_[middle]);
    if (middle == far) return chord;
    const Point before = unit(x_[middle] - x_[far]);
    return turned(chord, std::atan2(cross(before, chord), dot(before, chord)) / 2);
  }

  /// Between two straight lines: the arc that touches both. Its radius follows from how near it comes to their corner.
  Chain fillet() const {
    if (!run_.way_in || !run_.way_out || run_.slack_in <= 0 || run_.slack_out <= 0) return {};
    const Point t = *run_.way_in, u = *run_.way_out, p = x_.front(), q = x_.back();
    const double turn = cross(t, u);
    if (std::abs(turn) < 0.02 || dot(t, u) < -0.95) return {};
    const Point tip = p + (cross(q - p, u) / turn) * t, inward = unit(u - t);
    double nearest = 1e300;
    for (int i = 0; i < end_; ++i) {
      const double s = cross(x_[i] - tip, inward), e = cross(x_[i + 1] - tip, inward);
      if (s * e <= 0 && s != e) nearest = std::min(nearest, dot(between(x_[i], x_[i + 1], s / (s - e)) - tip, inward));
    }
    if (nearest > 1e200 || nearest <= 0) return {};
    const double half_sine = std::sqrt((1 - dot(t, u)) / 2), half_cosine = std::sqrt((1 + dot(t, u)) / 2);
    const double radius = nearest * half_cosine / (1 - half_cosine), leg = radius * half_sine / half_cosine;
    const Point a = tip - leg * t, b = tip + leg * u;
    if (dot(a - p, t) < -run_.slack_in || dot(b - q, u) > run_.slack_out) return {};
    Chain chain{line(a - run_.slack_in * t, a), arc_along(a, t, b)};
    if (!serves(chain, 0)) return {};
    return {chain[1]};
  }

  const SmoothRun& run_;
  const std::vector<Point>& x_;
  const std::vector<double>& follow_;
  double least_left_, least_right_;
  int end_;
  std::vector<State> states_;
  std::vector<Bends> bends_;
};

}  // namespace

std::vector<CurveSegment> fit_arc_spline(const SmoothRun& run) { return ArcSplineSearch(run).chain(); }

double left_standing(const CurveSegment& segment, const SmoothRun& run) {
  const double least = segment.sweep > 0 ? run.least_left : run.least_right;
  return segment.is_arc() ? (least - segment.radius) * segment.sweep * segment.sweep / 8 : 0;
}

}  // namespace sagitta
