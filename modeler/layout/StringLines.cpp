#include "layout/StringLines.hpp"

#include <algorithm>

#include "layout/Measure.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Strings of one board, in courses of one or more.
class Spacing {
 public:
  explicit Spacing(const Strings& strings)
      : strings_(strings), course_(static_cast<std::size_t>(strings.course)), inside_(strings.course_gap.value_or(0)) {}

  std::size_t count() const { return static_cast<std::size_t>(strings_.count); }
  bool by_gaps() const { return strings_.spacing == StringSpacing::equal_gaps && strings_.count > 1; }
  /// Whether string i begins a course.
  bool begins(std::size_t i) const { return i % course_ == 0; }

  /// What is left between neighbouring courses' facing surfaces; below 0 where they overlap.
  double air(double spread) const {
    double filled = 0;
    for (std::size_t i = 1; i < count(); ++i) filled += begins(i) ? half_gauges(i) : inside_;
    return (spread - filled) / static_cast<double>(count() / course_ - 1);
  }

  /// y of each string's middle, bass first.
  std::vector<double> places(double spread) const { return by_gaps() ? at_gaps(spread) : at_centres(spread); }

 private:
  /// Half of the gauges of string i and of the one before it.
  double half_gauges(std::size_t i) const { return (strings_.gauges[i - 1] + strings_.gauges[i]) / 2; }

  /// The middles of the first and the last course lie half a course inside the outer strings.
  std::vector<double> at_centres(double spread) const {
    const double within = static_cast<double>(course_ - 1), between_middles = spread - within * inside_;
    const std::size_t courses = count() / course_;
    std::vector<double> y;
    for (std::size_t i = 0; i < count(); ++i) {
      const double part = static_cast<double>(i / course_) / static_cast<double>(courses - 1) - 0.5;
      const double middle = courses == 1 ? 0 : between_middles * part;
      y.push_back(middle + (static_cast<double>(i % course_) - within / 2) * inside_);
    }
    return y;
  }

  std::vector<double> at_gaps(double spread) const {
    std::vector<double> y{-spread / 2};
    const double left = air(spread);
    for (std::size_t i = 1; i + 1 < count(); ++i)
      y.push_back(begins(i) ? y.back() + left + half_gauges(i) : y.back() + inside_);
    y.push_back(spread / 2);
    return y;
  }

  const Strings& strings_;
  std::size_t course_;
  double inside_;  ///< a course, centre to centre
};

bool courses_fit(const Strings& strings, Faults& faults) {
  if (strings.course == 1) return true;
  if (strings.course < 1 || strings.count % strings.course != 0 || strings.count < 2 * strings.course) {
    faults.push_back({FaultCode::wrong_count, "strings.count",
                      std::to_string(strings.count) + " strings do not make two or more courses of " +
                          std::to_string(strings.course),
                      "count is the number of strings, one `course` for all of them"});
    return false;
  }
  if (strings.course_gap) return true;
  faults.push_back({FaultCode::missing_key, "strings.course_gap",
                    "nothing says how far apart the strings of a course are",
                    "give the distance inside a course, centre to centre"});
  return false;
}

bool gauges_fit(const Board& board, Faults& faults) {
  const Strings& strings = board.strings;
  if (static_cast<int>(strings.gauges.size()) != strings.count) {
    faults.push_back({FaultCode::wrong_count, "strings.gauges",
                      "equal gaps need one gauge for each of the " + std::to_string(strings.count) + " strings, not " +
                          std::to_string(strings.gauges.size()),
                      "list the gauges from bass to treble"});
    return false;
  }
  const double narrow = std::min(strings.nut_spread, strings.saddle_spread), air = Spacing(strings).air(narrow);
  if (strings.count < 2 || air > 0) return true;
  faults.push_back({FaultCode::strings_overlap, "strings.gauges",
                    "strings of these gauges overlap by " + in_units(board, -air) + " when their outer middles are " +
                        in_units(board, narrow) + " apart",
                    "give thinner strings or a larger spread"});
  return false;
}

/// Courses must lie further from each other than the strings of one.
bool courses_apart(const Board& board, const std::vector<double>& y, const char* where, Faults& faults) {
  const Strings& strings = board.strings;
  if (strings.course == 1) return true;
  const Spacing spacing(strings);
  for (std::size_t i = 1; i < y.size(); ++i) {
    const double apart = y[i] - y[i - 1];
    if (!spacing.begins(i) || apart > *strings.course_gap + tolerance::same) continue;
    faults.push_back({FaultCode::courses_overlap, "strings.course_gap",
                      "at the " + std::string(where) + " the nearest strings of two courses are " +
                          in_units(board, apart) + " apart, not more than the strings of one course, " +
                          in_units(board, *strings.course_gap),
                      "make course_gap smaller or the spread larger; courses of different sizes cannot be said: there "
                      "is one `course` for all"});
    return false;
  }
  return true;
}

}  // namespace

std::vector<LineSegment> place_strings(const Board& board, const Layout& layout, Faults& faults) {
  const Strings& strings = board.strings;
  if (strings.count < 1) {
    faults.push_back({FaultCode::wrong_count, "strings.count", "a board needs at least one string", ""});
    return {};
  }
  if (!courses_fit(strings, faults)) return {};
  const Spacing spacing(strings);
  if (spacing.by_gaps() && !gauges_fit(board, faults)) return {};
  const std::vector<double> nut = spacing.places(strings.nut_spread), saddle = spacing.places(strings.saddle_spread);
  if (!courses_apart(board, nut, "nut", faults) || !courses_apart(board, saddle, "saddle", faults)) return {};
  std::vector<LineSegment> lines;
  for (std::size_t i = 0; i < nut.size(); ++i) lines.push_back({{0, nut[i]}, {layout.mean_scale, saddle[i]}});
  return lines;
}

}  // namespace sagitta
