#include "artwork/OutlineClusters.hpp"

#include <algorithm>
#include <cstdint>

#include "polygon/DisjointSets.hpp"

namespace sagitta {
namespace {

struct Chord {
  Point a, b;
  std::size_t outline = 0, index = 0;
};

struct Entry {
  std::uint64_t cell;
  std::size_t chord;
  bool operator<(const Entry& other) const { return cell != other.cell ? cell < other.cell : chord < other.chord; }
};

/// No grid has more cells along a side.
constexpr double most_cells = 8192;
/// More places where outlines touch are no drawing.
constexpr double crossing_cost = 4000;

bool cross_properly(const Chord& p, const Chord& q) {
  const Point u = p.b - p.a, v = q.b - q.a;
  const double a = cross(u, q.a - p.a), b = cross(u, q.b - p.a), c = cross(v, p.a - q.a), d = cross(v, p.b - q.a);
  return ((a > 0 && b < 0) || (a < 0 && b > 0)) && ((c > 0 && d < 0) || (c < 0 && d > 0));
}

bool touch_each_other(const Chord& p, const Chord& q, double touch) {
  return distance_to_chord(p.a, p.b, q.a) <= touch || distance_to_chord(p.a, p.b, q.b) <= touch ||
         distance_to_chord(q.a, q.b, p.a) <= touch || distance_to_chord(q.a, q.b, p.b) <= touch;
}

/// q goes back along p from where p ends.
bool folds_back(const Chord& p, const Chord& q, double touch) {
  return dot(p.b - p.a, q.b - q.a) < 0 &&
         (distance_to_chord(p.a, p.b, q.b) <= touch || distance_to_chord(q.a, q.b, p.a) <= touch);
}

class Search {
 public:
  Search(const std::vector<const Outline*>& outlines, double touch, Effort& effort)
      : outlines_(outlines), touch_(touch), effort_(effort), groups_(outlines.size()) {
    for (std::size_t i = 0; i < outlines.size(); ++i) add_chords(i);
    found_.touched.resize(outlines.size());
  }

  std::optional<Clusters> run() {
    if (!effort_.spend(20 * static_cast<double>(chords_.size()))) return std::nullopt;
    fill_grid();
    for (std::size_t from = 0; from < entries_.size();) {
      std::size_t to = from;
      while (to < entries_.size() && entries_[to].cell == entries_[from].cell) ++to;
      const double count = static_cast<double>(to - from);
      if (!effort_.spend(count * count) || !compare(from, to)) return std::nullopt;
      from = to;
    }
    for (std::size_t i = 0; i < found_.touched.size(); ++i)
      found_.cluster.push_back(static_cast<std::size_t>(groups_.of(static_cast<int>(i))));
    return std::move(found_);
  }

 private:
  void add_chords(std::size_t outline) {
    const std::vector<Point>& corners = outlines_[outline]->corners;
    Point a = corners.back();
    for (std::size_t i = 0; i < corners.size(); ++i) {
      chords_.push_back({a, corners[i], outline, i});
      length_ += distance(a, corners[i]);
      box_.add(corners[i]);
      a = corners[i];
    }
  }

  void fill_grid() {
    if (chords_.empty()) return;
    const double side = std::max(box_.high.x - box_.low.x, box_.high.y - box_.low.y);
    cell_ = std::max({length_ / static_cast<double>(chords_.size()), side / most_cells, 4 * touch_, 1e-300});
    for (std::size_t i = 0; i < chords_.size(); ++i) add_to_grid(i);
    std::sort(entries_.begin(), entries_.end());
  }

  std::uint64_t column(double along) const { return static_cast<std::uint64_t>(std::max(0.0, along / cell_)); }

  /// Column by column, the cells that the chord passes.
  void add_to_grid(std::size_t index) {
    Point a = chords_[index].a - box_.low, b = chords_[index].b - box_.low;
    if (b.x < a.x) std::swap(a, b);
    const std::uint64_t first = column(a.x - touch_), last = column(b.x + touch_);
    for (std::uint64_t x = first; x <= last; ++x) {
      const double left = static_cast<double>(x) * cell_ - touch_, right = left + cell_ + 2 * touch_;
      const auto y_at = [&](double at) {
        return b.x > a.x ? a.y + (b.y - a.y) * std::clamp((at - a.x) / (b.x - a.x), 0.0, 1.0) : a.y;
      };
      double low = y_at(left), high = b.x > a.x ? y_at(right) : b.y;
      if (high < low) std::swap(low, high);
      for (std::uint64_t y = column(low - touch_); y <= column(high + touch_); ++y)
        entries_.push_back({x << 32 | y, index});
    }
  }

  bool compare(std::size_t from, std::size_t to) {
    for (std::size_t i = from; i < to; ++i)
      for (std::size_t j = i + 1; j < to; ++j) {
        const Chord &p = chords_[entries_[i].chord], &q = chords_[entries_[j].chord];
        if (!meet(p, q)) continue;
        if (!effort_.spend(crossing_cost)) return false;
        found_.touched[p.outline] = found_.touched[q.outline] = true;
        groups_.join(static_cast<int>(p.outline), static_cast<int>(q.outline));
      }
    return true;
  }

  bool meet(const Chord& p, const Chord& q) const {
    if (std::max(p.a.x, p.b.x) + touch_ < std::min(q.a.x, q.b.x) ||
        std::max(q.a.x, q.b.x) + touch_ < std::min(p.a.x, p.b.x))
      return false;
    if (p.outline == q.outline) {
      const std::size_t count = outlines_[p.outline]->corners.size();
      const bool next = (p.index + 1) % count == q.index, previous = (q.index + 1) % count == p.index;
      if (next || previous) return (next && folds_back(p, q, touch_)) || (previous && folds_back(q, p, touch_));
    }
    return cross_properly(p, q) || touch_each_other(p, q, touch_);
  }

  const std::vector<const Outline*>& outlines_;
  double touch_;
  Effort& effort_;
  std::vector<Chord> chords_;
  std::vector<Entry> entries_;
  DisjointSets groups_;  ///< outlines that meet
  Clusters found_;
  Box box_;
  double length_ = 0;
  double cell_ = 1;
};

}  // namespace

std::optional<Clusters> clusters(const std::vector<const Outline*>& outlines, double touch, Effort& effort) {
  return Search(outlines, touch, effort).run();
}

}  // namespace sagitta
