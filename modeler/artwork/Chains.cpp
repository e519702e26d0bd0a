#include "artwork/Chains.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

Point head(const Run& run) { return start_of(run.strokes.front()); }
Point tail(const Run& run) { return end_of(run.strokes.back()); }

PathLoop turned_round(const PathLoop& strokes) {
  PathLoop back(strokes.rbegin(), strokes.rend());
  for (PathSegment& stroke : back) stroke = reversed(stroke);
  return back;
}

/// Ends of runs by cells as wide as what is joined.
class Ends {
 public:
  void add(Point p, std::size_t run) { cells_[cell(p)].push_back({p, run}); }
  void remove(Point p, std::size_t run) {
    auto& here = cells_[cell(p)];
    std::erase_if(here, [&](const End& end) { return end.run == run; });
  }
  /// The run with the nearest end.
  std::optional<std::size_t> nearest(Point p) const {
    std::optional<std::size_t> found;
    double least = tolerance::drawn_join;
    const Cell middle = cell(p);
    for (long x = middle.first - 1; x <= middle.first + 1; ++x)
      for (long y = middle.second - 1; y <= middle.second + 1; ++y) {
        const auto here = cells_.find({x, y});
        if (here == cells_.end()) continue;
        for (const End& end : here->second)
          if (const double away = distance(end.at, p); away < least || (away == least && !found)) {
            least = away;
            found = end.run;
          }
      }
    return found;
  }

 private:
  using Cell = std::pair<long, long>;
  struct End {
    Point at;
    std::size_t run;
  };
  static Cell cell(Point p) {
    return {std::lround(p.x / tolerance::drawn_join), std::lround(p.y / tolerance::drawn_join)};
  }
  std::map<Cell, std::vector<End>> cells_;
};

class Chainer {
 public:
  Chainer(std::vector<Run> runs, bool keep_open, Notes& notes)
      : runs_(std::move(runs)), keep_open_(keep_open), notes_(notes) {
    drop_copies();
    for (std::size_t i = 0; i < runs_.size(); ++i) {
      ends_.add(head(runs_[i]), i);
      ends_.add(tail(runs_[i]), i);
    }
    used_.resize(runs_.size());
  }

  std::vector<PathLoop> run() {
    for (std::size_t i = 0; i < runs_.size(); ++i) {
      if (used_[i]) continue;
      Run chain = take(i, false);
      while (!closes(chain) && append(chain)) {
      }
      if (!closes(chain)) {
        chain.strokes = turned_round(chain.strokes);
        while (!closes(chain) && append(chain)) {
        }
      }
      finish(std::move(chain));
    }
    return std::move(loops_);
  }

 private:
  static std::vector<double> key(const Run& run) {
    std::vector<double> low, high;
    for (const PathSegment& stroke : run.strokes) {
      const Point p = std::visit([](const auto& part) { return part.at(0.5); }, stroke);
      low.insert(low.end(), {p.x, p.y});
      high.insert(high.begin(), {p.x, p.y});
    }
    for (double& part : low) part = std::round(part / tolerance::vertex);
    for (double& part : high) part = std::round(part / tolerance::vertex);
    const auto ends = [](const Run& one) {
      return std::vector<double>{head(one).x + tail(one).x, head(one).y + tail(one).y};
    };
    std::vector<double> all = std::min(low, high);
    for (const double sum : ends(run)) all.push_back(std::round(sum / tolerance::vertex));
    return all;
  }

  void drop_copies() {
    std::map<std::vector<double>, bool> seen;
    std::erase_if(runs_, [&](const Run& run) {
      if (seen.emplace(key(run), true).second) return false;
      notes_.add(run.where, "this is drawn twice; one of the two was dropped", "delete it in the drawing");
      return true;
    });
  }

  Run take(std::size_t i, bool from_tail) {
    used_[i] = true;
    ends_.remove(head(runs_[i]), i);
    ends_.remove(tail(runs_[i]), i);
    Run run = std::move(runs_[i]);
    if (from_tail) run.strokes = turned_round(run.strokes);
    return run;
  }

  static bool closes(const Run& chain) {
    const bool has_inside = chain.strokes.size() > 1 || bounds(chain.strokes).low != bounds(chain.strokes).high;
    const double gap = distance(head(chain), tail(chain));
    return has_inside && gap <= tolerance::drawn_join && longer_than(chain, gap);
  }

  /// A short stroke does not close upon itself.
  static bool longer_than(const Run& chain, double gap) {
    const Box box = bounds(chain.strokes);
    return gap == 0 || length(box.high - box.low) > 2 * tolerance::drawn_join;
  }

  bool append(Run& chain) {
    const auto found = ends_.nearest(tail(chain));
    if (!found) return false;
    const bool from_tail = distance(tail(runs_[*found]), tail(chain)) < distance(head(runs_[*found]), tail(chain));
    Run next = take(*found, from_tail);
    bridge(chain.strokes, head(next), next.where);
    chain.strokes.insert(chain.strokes.end(), next.strokes.begin(), next.strokes.end());
    return true;
  }

  /// Ends the strokes exactly at `to`: lines and curves are moved there, an arc gets a short line.
  void bridge(PathLoop& strokes, Point to, const std::string& where) {
    const Point from = end_of(strokes.back());
    if (from == to) return;
    if (distance(from, to) > tolerance::vertex)
      notes_.add(where, "a gap of up to " + notes_.length(tolerance::drawn_join) + " between two ends was closed",
                 "nothing needs doing if it looks right");
    if (Bezier* curve = std::get_if<Bezier>(&strokes.back())) {
      curve->d = curve->d + (to - from);
      curve->b = to;
      return;
    }
    CurveSegment& segment = std::get<CurveSegment>(strokes.back());
    if (!segment.is_arc() && distance(segment.a, to) > tolerance::drawn_join)
      segment.b = to;
    else if (segment.is_arc() && distance(from, to) <= tolerance::vertex)
      segment = arc_through(segment, to);
    else
      strokes.push_back(line(from, to));
  }

  std::string shown(Point p) const { return "x = " + notes_.length(p.x) + ", y = " + notes_.length(p.y); }

  void finish(Run chain) {
    if (closes(chain)) {
      bridge(chain.strokes, head(chain), chain.where);
      loops_.push_back(std::move(chain.strokes));
      return;
    }
    if (keep_open_) {
      loops_.push_back(std::move(chain.strokes));
      return;
    }
    notes_.add(
        chain.where,
        "an outline that stays open, from " + shown(head(chain)) + " to " + shown(tail(chain)) + ", was left out",
        "close it in the drawing: its ends must meet within " + notes_.length(tolerance::drawn_join));
  }

  std::vector<Run> runs_;
  bool keep_open_;
  Notes& notes_;
  Ends ends_;
  std::vector<bool> used_;
  std::vector<PathLoop> loops_;
};

}  // namespace

std::vector<PathLoop> chained(std::vector<Run> runs, Notes& notes) {
  return Chainer(std::move(runs), false, notes).run();
}

std::vector<PathLoop> joined(std::vector<Run> runs, Notes& notes) {
  return Chainer(std::move(runs), true, notes).run();
}

}  // namespace sagitta
