#include "artwork/SvgFrame.hpp"

#include <algorithm>
#include <array>
#include <iterator>

#include "artwork/Scan.hpp"

namespace sagitta {
namespace {

constexpr double pi = std::numbers::pi;

struct Unit {
  std::string_view name;
  double px;
};
constexpr Unit units[] = {{"", 1},           {"px", 1},         {"in", 96},      {"mm", 96 / 25.4},
                          {"cm", 96 / 2.54}, {"pt", 96.0 / 72}, {"pc", 96.0 / 6}};

std::optional<Affine> one_transform(std::string_view name, const std::array<double, 6>& n, std::size_t count) {
  const auto radians = [](double degrees) { return degrees * pi / 180; };
  if (name == "matrix" && count == 6) return Affine{n[0], n[1], n[2], n[3], n[4], n[5]};
  if (name == "translate" && (count == 1 || count == 2)) return shift_by({n[0], n[1]});
  if (name == "scale" && count == 1) return scale_by(n[0], n[0]);
  if (name == "scale" && count == 2) return scale_by(n[0], n[1]);
  if (name == "rotate" && count == 1) return turn_by(radians(n[0]));
  if (name == "rotate" && count == 3) return shift_by({n[1], n[2]}) * turn_by(radians(n[0])) * shift_by({-n[1], -n[2]});
  if (name == "skewX" && count == 1) return Affine{1, 0, std::tan(radians(n[0])), 1, 0, 0};
  if (name == "skewY" && count == 1) return Affine{1, std::tan(radians(n[0])), 0, 1, 0, 0};
  return std::nullopt;
}

/// How much of the spare room comes before the drawing.
double share(std::string_view align, std::size_t at) {
  const std::string_view word = align.substr(std::min(at, align.size()), 3);
  return word == "Min" ? 0 : word == "Max" ? 1 : 0.5;
}

}  // namespace

std::optional<double> svg_length(std::string_view text, const Viewport& viewport, Along along) {
  Scan scan{trimmed(text)};
  const auto number = scan.number();
  if (!number) return std::nullopt;
  if (scan.rest() == "%") {
    const double whole = along == Along::x   ? viewport.width
                         : along == Along::y ? viewport.height
                                             : std::hypot(viewport.width, viewport.height) / std::numbers::sqrt2;
    return *number / 100 * whole;
  }
  for (const Unit& unit : units)
    if (scan.rest() == unit.name) return *number * unit.px;
  return std::nullopt;
}

std::optional<Affine> read_transform(std::string_view text) {
  Affine product;
  Scan scan{text};
  scan.skip_comma();
  while (!scan.done()) {
    const std::string_view name = scan.word();
    scan.skip_space();
    if (!scan.take('(')) return std::nullopt;
    std::array<double, 6> numbers{};
    std::size_t count = 0;
    scan.skip_space();
    while (!scan.take(')')) {
      const auto number = scan.number();
      if (!number || count == numbers.size()) return std::nullopt;
      numbers[count++] = *number;
      scan.skip_comma();
    }
    const auto one = one_transform(name, numbers, count);
    if (!one) return std::nullopt;
    product = product * *one;
    scan.skip_comma();
  }
  return product;
}

std::optional<ViewBox> read_view_box(std::string_view text) {
  Scan scan{trimmed(text)};
  std::array<double, 4> n{};
  for (double& value : n) {
    const auto number = scan.number();
    if (!number) return std::nullopt;
    value = *number;
    scan.skip_comma();
  }
  if (!scan.done() || n[2] < 0 || n[3] < 0) return std::nullopt;
  return ViewBox{n[0], n[1], n[2], n[3]};
}

Affine fit_view_box(const ViewBox& box, const Viewport& viewport, std::string_view preserve_aspect_ratio) {
  double x = viewport.width / box.width, y = viewport.height / box.height;
  std::string_view how = trimmed(preserve_aspect_ratio);
  if (how.starts_with("defer")) how = trimmed(how.substr(5));
  Point spare;
  if (!how.starts_with("none")) {
    const bool slice = how.find("slice") != std::string_view::npos;
    x = y = slice ? std::max(x, y) : std::min(x, y);
    spare = {(viewport.width - x * box.width) * share(how, 1), (viewport.height - y * box.height) * share(how, 5)};
  }
  return shift_by(spare) * scale_by(x, y) * shift_by({-box.x, -box.y});
}

}  // namespace sagitta
