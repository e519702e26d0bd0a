#include "artwork/SvgPath.hpp"

#include <array>
#include <optional>

#include "artwork/Scan.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;

std::string shown(const Scan& scan) {
  if (scan.done()) return "the end of the text";
  const std::string_view some = scan.rest().substr(0, 12);
  return "\"" + std::string(some) + "\"";
}

/// The walk along one `d` attribute.
class PathWalk {
 public:
  explicit PathWalk(std::string_view data) : scan_{data} {}

  std::variant<std::vector<Subpath>, PathError> read() {
    scan_.skip_space();
    while (!scan_.done() && !error_) command();
    if (error_) return *error_;
    finish();
    return std::move(trails_);
  }

 private:
  using Numbers = std::array<double, 6>;

  void fail(std::string message) {
    if (!error_) error_ = PathError{scan_.at, std::move(message)};
  }

  /// One letter and all the groups of numbers behind it.
  void command() {
    const char letter = scan_.here();
    const bool known =
        letter != '\0' && std::string_view("MmZzLlHhVvCcSsQqTtAa").find(letter) != std::string_view::npos;
    if (!known) return fail("a path command was expected, not " + shown(scan_));
    if (!begun_ && letter != 'M' && letter != 'm') return fail("path data must begin with M or m");
    ++scan_.at;
    relative_ = letter >= 'a';
    const char kind = static_cast<char>(relative_ ? letter - 'a' + 'A' : letter);
    scan_.skip_space();
    if (kind == 'Z') return close();
    bool first = true;
    do {
      // further pairs behind a moveto are linetos (section 8.3.2)
      group(kind == 'M' && !first ? 'L' : kind);
      first = false;
    } while (!error_ && more());
  }

  /// Whether another group of numbers follows.
  bool more() {
    Scan ahead = scan_;
    ahead.skip_comma();
    if (!ahead.number()) {
      scan_.skip_space();
      return false;
    }
    scan_.skip_comma();
    return true;
  }

  void group(char kind) {
    if (kind == 'A') return arc();
    const int count = kind == 'C' ? 6 : kind == 'S' || kind == 'Q' ? 4 : kind == 'H' || kind == 'V' ? 1 : 2;
    Numbers n{};
    for (int i = 0; i < count; ++i) {
      if (i > 0) scan_.skip_comma();
      const auto number = scan_.number();
      if (!number) return fail("a number was expected, not " + shown(scan_));
      n[static_cast<std::size_t>(i)] = *number;
    }
    if (kind == 'M') return move(point(n[0], n[1]));
    begin_again();
    straight_or_curved(kind, n);
  }

  void straight_or_curved(char kind, const Numbers& n) {
    const Point base = relative_ ? at_ : Point{};
    const Point a = at_, last = base + Point{n[0], n[1]}, second = base + Point{n[2], n[3]};
    switch (kind) {
      case 'H':
        return add(LineSegment{a, {base.x + n[0], a.y}}, 'L', a);
      case 'V':
        return add(LineSegment{a, {a.x, base.y + n[0]}}, 'L', a);
      case 'L':
        return add(LineSegment{a, last}, 'L', a);
      case 'C':
        return add(Bezier{a, last, second, base + Point{n[4], n[5]}}, 'C', second);
      case 'S':
        return add(Bezier{a, mirrored_control('C'), last, second}, 'C', last);
      case 'Q':
        return add(raised(a, last, second), 'Q', last);
      default:
        break;
    }
    const Point control = mirrored_control('Q');
    add(raised(a, control, last), 'Q', control);
  }

  /// The last control point, turned about the current point; the current point itself behind any other command.
  Point mirrored_control(char kind) const { return previous_ == kind ? 2 * at_ - control_ : at_; }

  void arc() {
    std::array<double, 5> n{};
    std::array<bool, 2> flags{};
    for (int i = 0; i < 7; ++i) {
      if (i > 0) scan_.skip_comma();
      if (i == 3 || i == 4) {
        const auto flag = scan_.flag();
        if (!flag) return fail("a flag, 0 or 1, was expected, not " + shown(scan_));
        flags[static_cast<std::size_t>(i - 3)] = *flag;
        continue;
      }
      const auto number = scan_.number();
      if (!number) return fail("a number was expected, not " + shown(scan_));
      n[static_cast<std::size_t>(i < 3 ? i : i - 2)] = *number;
    }
    begin_again();
    const Point end = point(n[3], n[4]);
    if (end == at_) return;  // F.6.2: an arc between equal ends is left out
    add(svg_arc(at_, end, n[0], n[1], n[2] * pi / 180, flags[0], flags[1]), 'A', at_);
  }

  Point point(double x, double y) const { return relative_ ? at_ + Point{x, y} : Point{x, y}; }

  void add(const Curve& curve, char kind, Point control) {
    trail_.curves.push_back(curve);
    at_ = std::visit([](const auto& part) { return part.b; }, curve);
    previous_ = kind;
    control_ = control;
  }

  void move(Point to) {
    finish();
    at_ = start_ = to;
    begun_ = true;
    previous_ = 'M';
  }

  /// Drawing on behind a closepath starts at the same place (section 8.3.3).
  void begin_again() {
    if (previous_ == 'Z') start_ = at_;
  }

  void close() {
    if (at_ != start_) trail_.curves.push_back(LineSegment{at_, start_});
    trail_.closed = true;
    finish();
    at_ = start_;
    previous_ = 'Z';
  }

  void finish() {
    if (!trail_.curves.empty()) trails_.push_back(std::move(trail_));
    trail_ = {};
  }

  Scan scan_;
  std::vector<Subpath> trails_;
  Subpath trail_;
  std::optional<PathError> error_;
  Point at_, start_, control_;
  char previous_ = 'M';
  bool relative_ = false;
  bool begun_ = false;
};

}  // namespace

std::variant<std::vector<Subpath>, PathError> read_path(std::string_view data) { return PathWalk(data).read(); }

std::variant<Subpath, PathError> read_points(std::string_view data, bool closed) {
  Scan scan{data};
  std::vector<Point> points;
  scan.skip_space();
  while (!scan.done()) {
    const auto x = scan.number();
    if (!x) return PathError{scan.at, "a number was expected, not " + shown(scan)};
    scan.skip_comma();
    const auto y = scan.number();
    if (!y) return PathError{scan.at, "a number was expected, not " + shown(scan)};
    points.push_back({*x, *y});
    scan.skip_comma();
  }
  Subpath trail;
  trail.closed = closed;
  for (std::size_t i = 1; i < points.size(); ++i) trail.curves.push_back(LineSegment{points[i - 1], points[i]});
  if (closed && points.size() > 1 && points.back() != points.front())
    trail.curves.push_back(LineSegment{points.back(), points.front()});
  return trail;
}

}  // namespace sagitta
