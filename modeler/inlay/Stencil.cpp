#include "inlay/Stencil.hpp"

#include <algorithm>
#include <cmath>

namespace sagitta {
namespace {

/// Chords stand off arcs by at most this; the margin makes up for it. mm.
constexpr double chord = 0.01;

std::vector<Point> corners(const Loop& loop) {
  std::vector<Point> points;
  for (const CurveSegment& segment : loop) {
    int count = 1;
    if (segment.is_arc()) {
      const double step = 2 * std::acos(std::max(0.0, 1 - chord / segment.radius));
      count = std::max(1, static_cast<int>(std::ceil(std::abs(segment.sweep) / step)));
    }
    for (int i = 1; i <= count; ++i) points.push_back(segment.at(static_cast<double>(i) / count));
  }
  return points;
}

double distance_to(Point a, Point b, Point p) {
  const Point along = b - a;
  const double square = dot(along, along);
  const double t = square > 0 ? std::clamp(dot(p - a, along) / square, 0.0, 1.0) : 0;
  return distance(p, between(a, b, t));
}

Point turned_once(Point p) { return {-p.y, p.x}; }

class Drawing {
 public:
  Drawing(Stencil& out, double margin, double cell)
      : out_(out), reach_(margin + chord + cell * std::numbers::sqrt2 / 2), cell_(cell) {}

  /// The cells whose middle lies so near to the chord that some point of them may lie within the margin.
  void add_chord(Point a, Point b) {
    const int left = column(std::min(a.x, b.x) - reach_), right = column(std::max(a.x, b.x) + reach_);
    const int low = row(std::min(a.y, b.y) - reach_), high = row(std::max(a.y, b.y) + reach_);
    for (int y = std::max(0, low); y <= std::min(high, out_.cells.rows() - 1); ++y)
      for (int x = std::max(0, left); x <= std::min(right, out_.cells.columns() - 1); ++x)
        if (distance_to(a, b, middle(x, y)) <= reach_) out_.cells.set(x, y);
  }

  /// The cells whose middle the chords wind about.
  void fill(const std::vector<std::vector<Point>>& loops) {
    for (int y = 0; y < out_.cells.rows(); ++y) {
      const double at = middle(0, y).y;
      std::vector<std::pair<double, int>> crossings;
      for (const auto& loop : loops)
        for (std::size_t i = 0; i < loop.size(); ++i) {
          const Point a = loop[i], b = loop[(i + 1) % loop.size()];
          if ((a.y <= at) == (b.y <= at)) continue;
          crossings.emplace_back(a.x + (at - a.y) / (b.y - a.y) * (b.x - a.x), b.y > a.y ? -1 : 1);
        }
      std::sort(crossings.begin(), crossings.end());
      int turns = 0;
      for (std::size_t i = 0; i + 1 < crossings.size(); ++i) {
        turns += crossings[i].second;
        if (turns == 0) continue;
        const int first = std::max(0, column(crossings[i].first)), last = column(crossings[i + 1].first);
        for (int x = first; x <= std::min(last, out_.cells.columns() - 1); ++x)
          if (middle(x, y).x >= crossings[i].first && middle(x, y).x <= crossings[i + 1].first) out_.cells.set(x, y);
      }
    }
  }

 private:
  int column(double x) const { return static_cast<int>(std::floor((x - out_.box.low.x) / cell_)); }
  int row(double y) const { return static_cast<int>(std::floor((y - out_.box.low.y) / cell_)); }
  Point middle(int x, int y) const { return out_.box.low + cell_ * Point{x + 0.5, y + 0.5}; }

  Stencil& out_;
  double reach_, cell_;
};

}  // namespace

CellGrid::CellGrid(int columns, int rows)
    : columns_(columns),
      rows_(rows),
      words_((columns + 63) / 64),
      bits_(static_cast<std::size_t>(words_) * static_cast<std::size_t>(rows)) {}

std::uint64_t CellGrid::word(int row, int index) const {
  if (index < 0 || index >= words_ || row < 0 || row >= rows_) return 0;
  return bits_[static_cast<std::size_t>(row) * static_cast<std::size_t>(words_) + static_cast<std::size_t>(index)];
}

bool CellGrid::at(int column, int row) const { return word(row, column / 64) >> (column % 64) & 1; }

void CellGrid::set(int column, int row) {
  bits_[static_cast<std::size_t>(row) * static_cast<std::size_t>(words_) + static_cast<std::size_t>(column / 64)] |=
      std::uint64_t{1} << (column % 64);
}

bool CellGrid::is_clear(const CellGrid& other, int column, int row) const {
  const int skip = column / 64, shift = column % 64;
  for (int y = 0; y < other.rows_; ++y)
    for (int i = 0; i < other.words_; ++i) {
      const std::uint64_t bits = other.word(y, i);
      if (bits & (word(row + y, skip + i) >> shift)) return false;
      if (shift > 0 && (bits & (word(row + y, skip + i + 1) << (64 - shift)))) return false;
    }
  return true;
}

void CellGrid::add(const CellGrid& other, int column, int row) {
  for (int y = 0; y < std::min(other.rows_, rows_ - row); ++y)
    for (int x = 0; x < std::min(other.columns_, columns_ - column); ++x)
      if (other.at(x, y)) set(column + x, row + y);
}

std::vector<CellRun> CellGrid::runs(int row, bool is_set) const {
  std::vector<CellRun> found;
  for (int x = 0; x < columns_; ++x) {
    if (at(x, row) != is_set) continue;
    if (found.empty() || found.back().end != x) found.push_back({row, x, x});
    ++found.back().end;
  }
  return found;
}

CellRun CellGrid::longest_run() const {
  CellRun longest;
  for (int y = 0; y < rows_; ++y)
    for (const CellRun& run : runs(y, true))
      if (run.length() > longest.length()) longest = run;
  return longest;
}

Stencil stencil(const Loops& piece, double margin, double cell) {
  Box box;
  for (const Loop& loop : piece) {
    const Box part = bounds(loop);
    box.add(part.low);
    box.add(part.high);
  }
  box = box.grown(margin);
  const auto cells = [&](double size) { return std::max(1, static_cast<int>(std::ceil(size / cell))); };
  Stencil out{CellGrid(cells(box.high.x - box.low.x), cells(box.high.y - box.low.y)), box};
  Drawing drawing(out, margin, cell);
  std::vector<std::vector<Point>> loops;
  for (const Loop& loop : piece) loops.push_back(corners(loop));
  for (const auto& loop : loops)
    for (std::size_t i = 0; i < loop.size(); ++i) drawing.add_chord(loop[i], loop[(i + 1) % loop.size()]);
  drawing.fill(loops);
  return out;
}

Loops quarter_turned(const Loops& loops, int quarters) {
  Loops out = loops;
  for (Loop& loop : out)
    for (CurveSegment& segment : loop)
      for (int i = 0; i < quarters; ++i) {
        segment.a = turned_once(segment.a);
        segment.b = turned_once(segment.b);
        segment.centre = turned_once(segment.centre);
        segment.start += segment.is_arc() ? std::numbers::pi / 2 : 0;
      }
  return out;
}

Loops moved(const Loops& loops, Point by) {
  Loops out = loops;
  for (Loop& loop : out)
    for (CurveSegment& segment : loop) {
      segment.a = segment.a + by;
      segment.b = segment.b + by;
      if (segment.is_arc()) segment.centre = segment.centre + by;
    }
  return out;
}

}  // namespace sagitta
