#include "inlay/RolledArcSpline.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "inlay/Biarc.hpp"
#include "inlay/FitTolerance.hpp"

namespace sagitta {
namespace {

constexpr double corner_missed = 0.00005;  // mm^2; by a cutter, of one corner: less is left as it is
constexpr int most_passes = 4;             // over all of a chain
constexpr int windows[] = {2, 4, 8};       // pieces to both sides that are made again
constexpr std::size_t about = 4;  // pieces to both sides of those, at which a cutter may miss more or less then
constexpr double enough = 0.7;    // of what is missed there: when it is gained, no more is tried

using Chain = std::vector<CurveSegment>;

class RolledArcSpline {
 public:
  explicit RolledArcSpline(const SmoothRun& run) : run_(run), chain_(fit_arc_spline(run)) {}

  Chain chain() {
    if (run_.least_left <= 0 && run_.least_right <= 0) return std::move(chain_);
    // What is made again gives its neighbours other ends, with which they may be made again in the next pass.
    bool mended = true;
    kept_.assign(chain_.size(), 0);
    for (int pass = 0; pass < most_passes && mended; ++pass) {
      mended = false;
      for (std::size_t i = 0; i < chain_.size(); ++i)
        if (!kept_[i] && missed(chain_, i) > corner_missed) {
          const std::optional<std::size_t> last = mend(i);
          if (!last) kept_[i] = 1;
          mended = mended || last;
          i = last.value_or(i);
        }
    }
    return std::move(chain_);
  }

 private:
  double least(const CurveSegment& segment) const { return segment.sweep > 0 ? run_.least_left : run_.least_right; }

  /// About what a cutter does not reach at a piece, mm^2: the disc that rolls along the chain stands off the middle of
  /// a tighter arc by what the neighbours ask for, and touches these so far away.
  double missed(const Chain& chain, std::size_t i) const {
    const CurveSegment& segment = chain[i];
    if (left_standing(segment, run_) <= 0) return 0;
    const double radius = least(segment);
    const Point middle = segment.at(0.5), toward = (segment.sweep > 0 ? 1 : -1) * left_of(unit(segment.slope(0.5)));
    double lift = 0, reach = 0;
    const auto look = [&](Point q) {
      const Point way = q - middle;
      const double aside = cross(toward, way);
      if (std::abs(aside) >= radius) return false;
      const double own = dot(toward, way) - radius + std::sqrt(radius * radius - aside * aside);
      if (own > lift) lift = own, reach = length(way);
      return true;
    };
    for (const int step : {-1, 1}) {
      double along = -segment.length() / 2;
      for (int k = static_cast<int>(i); k >= 0 && k < static_cast<int>(chain.size()) && along < radius; k += step) {
        for (const double t : {0.0, 0.2, 0.4, 0.6, 0.8, 1.0})
          if (k != static_cast<int>(i) || (t == 1 && step > 0) || (t == 0 && step < 0)) look(chain[k].at(t));
        along += chain[k].length();
      }
    }
    return 4.0 / 3 * lift * reach;
  }

  /// Makes the chain again about piece i; the last piece that has been looked at by then, or nothing when it is left.
  std::optional<std::size_t> mend(std::size_t i) {
    Chain best;
    std::size_t first = 0, last = 0;
    double gained = 0;
    for (const int width : windows) {
      const std::size_t from = i - std::min<std::size_t>(i, width), to = std::min(i + width, chain_.size() - 1);
      const double before = missed_about({}, from, to);
      for (const double share : {0.5, 0.2}) {
        Chain made = fit_arc_spline(window(from, to, share));
        if (made.empty() || kinked(made, from, to)) continue;
        const double gain = before - missed_about(made, from, to);
        if (gain > gained) gained = gain, best = std::move(made), first = from, last = to;
        if (gained > enough * before) break;
      }
      if (gained > enough * before) break;
    }
    if (best.empty()) return std::nullopt;
    const std::size_t end = first + best.size() - 1;
    replace(ends_, ends_of(best, first > 0 ? ends_[first - 1] : 0, ends_[last]), first, last);
    replace(chain_, best, first, last);
    replace(kept_, std::vector<char>(best.size()), first, last);
    // What was tried in vain looked so far: it may be tried again.
    const std::size_t looked = windows[std::size(windows) - 1] + about + 1;
    for (std::size_t k = first - std::min(first, looked); k < std::min(end + looked + 1, kept_.size()); ++k)
      kept_[k] = 0;
    return std::max(i, end);
  }

  template <class Of>
  static void replace(std::vector<Of>& all, const std::vector<Of>& by, std::size_t first, std::size_t last) {
    const auto from = all.begin() + static_cast<std::ptrdiff_t>(first);
    all.insert(all.erase(from, from + static_cast<std::ptrdiff_t>(last - first) + 1), by.begin(), by.end());
  }

  /// What a cutter misses about pieces first to last: of the chain, or of it with these replaced.
  double missed_about(const Chain& by, std::size_t first, std::size_t last) const {
    const std::size_t before = first - std::min(first, about);
    const std::size_t after = std::min(last + about + 1, chain_.size());
    Chain near(chain_.begin() + static_cast<std::ptrdiff_t>(before),
               chain_.begin() + static_cast<std::ptrdiff_t>(after));
    if (!by.empty()) replace(near, by, first - before, last - before);
    double sum = 0;
    for (std::size_t i = 0; i < near.size(); ++i) sum += missed(near, i);
    return sum;
  }

  /// The run of pieces first to last, followed more closely.
  SmoothRun window(std::size_t first, std::size_t last, double share) {
    if (ends_.empty()) ends_ = ends_of(chain_, 0, static_cast<int>(run_.stations.size()) - 1);
    SmoothRun part;
    part.least_left = run_.least_left;
    part.least_right = run_.least_right;
    const bool begins = first == 0, ends = last + 1 == chain_.size();
    const int from = first > 0 ? ends_[first - 1] : 0, to = std::max(ends_[last], from + 1);
    // The ends lie as far from the stations as the chain was allowed to.
    const int margin = (to - from) / 4;
    for (int i = from; i <= to; ++i) {
      const bool inner = (begins || i - from > margin) && (ends || to - i > margin);
      part.stations.push_back(run_.stations[i]);
      part.follow.push_back(inner ? std::max(std::min(tolerance::least_follow, run_.follow[i]), share * run_.follow[i])
                                  : run_.follow[i]);
    }
    if (!begins) part.stations.front() = chain_[first].a;
    if (!ends) part.stations.back() = chain_[last].b;
    part.way_in = begins ? run_.way_in : unit(chain_[first].slope(0));
    part.way_out = ends ? run_.way_out : end_direction(chain_[last]);
    part.slack_in = begins ? run_.slack_in : 0;
    part.slack_out = ends ? run_.slack_out : 0;
    return part;
  }

  /// The stations where pieces end that begin at one; they look no further than `end`.
  std::vector<int> ends_of(const Chain& pieces, int at, int end) const {
    std::vector<int> ends;
    for (const CurveSegment& segment : pieces) {
      double along = 0, nearest = 1e300;
      int best = at;
      for (int i = at; i <= end && along < 1.2 * segment.length() + 0.2; ++i) {
        const double way = distance(run_.stations[i], segment.b);
        if (way < nearest) nearest = way, best = i;
        if (i < end) along += distance(run_.stations[i], run_.stations[i + 1]);
      }
      ends.push_back(at = best);
    }
    ends.back() = end;
    return ends;
  }

  /// Whether pieces that would replace first to last have not one tangent with each other and those beside them.
  bool kinked(const Chain& made, std::size_t first, std::size_t last) const {
    const auto turns = [](const CurveSegment& before, const CurveSegment& after) {
      const Point in = end_direction(before), out = unit(after.slope(0));
      return std::abs(std::atan2(cross(in, out), dot(in, out))) > tolerance::one_tangent;
    };
    for (std::size_t i = 0; i + 1 < made.size(); ++i)
      if (turns(made[i], made[i + 1])) return true;
    return (first > 0 && turns(chain_[first - 1], made.front())) ||
           (last + 1 < chain_.size() && turns(made.back(), chain_[last + 1]));
  }

  const SmoothRun& run_;
  Chain chain_;
  std::vector<int> ends_;   ///< for each piece of the chain the station where it ends
  std::vector<char> kept_;  ///< for each piece whether nothing was gained there, and nothing near it has changed since
};

}  // namespace

std::vector<CurveSegment> fit_rolled_arc_spline(const SmoothRun& run) { return RolledArcSpline(run).chain(); }

}  // namespace sagitta
