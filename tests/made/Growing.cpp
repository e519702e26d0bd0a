#include "made/Growing.hpp"

#include <cmath>
#include <filesystem>
#include <fstream>
#include <numbers>
#include <sstream>

namespace sagitta::test {
namespace {

constexpr int frets = 22;
constexpr double length = 450, width = 36, space = 12;  // mm: of what is covered, and of the shortest space

constexpr const char* ground = R"(format = 1
[scale]
length = 648
frets = 22
[strings]
count = 6
nut_spread = 35
saddle_spread = 52
[board]
thickness = 6.35
nut_width = 43
heel_width = 57
[surface]
profile = "compound"
radius_at_nut = 254
radius_at_heel = 406.4
[nut]
seat = "slot"
[slots]
width = 0.584
depth = 2.05
[side_dots]
frets = [3, 5, 7, 9, 15, 17, 19, 21]
double_frets = [12]
[pins]
at = [[6, 0], [470, 0]]
[[cutters]]
name = "detail"
use = ["pocket-clear", "pocket-detail", "piece"]
diameter = 0.6
cutting_length = 3
[[sheets]]
material = "shell"
length = 400
width = 300
thickness = 2.5
[[sheets]]
material = "brass"
length = 400
width = 300
thickness = 2.5
)";

/// Places on a rectangle about the middle, in columns.
struct Grid {
  int columns, rows;
  double x, y;  ///< from one to the next, mm
  Grid(int count, double along, double across)
      : columns(std::max(1, static_cast<int>(std::lround(std::sqrt(count * along / across))))),
        rows((count + columns - 1) / columns),
        x(along / columns),
        y(across / rows) {}
};

std::string dots(int count) {
  const int tables = (count + frets - 1) / frets;
  const Grid grid(tables, space, width);
  std::ostringstream text;
  for (int i = 0; i < tables; ++i) {
    text << "[[inlays]]\nshape = \"dot\"\nfrets = [1";
    for (int fret = 2; fret <= frets; ++fret) text << ", " << fret;
    text << "]\nshift_along = " << (i / grid.rows + 0.5) * grid.x - space / 2
         << "\nshift_across = " << (i % grid.rows + 0.5) * grid.y - width / 2
         << "\ndiameter = " << 0.6 * std::min(grid.x, grid.y) << "\ndepth = 1.5\n";
  }
  return text.str();
}

std::string leaves(int count) {
  const Grid grid(count, length, width);
  const double r = 0.3 * std::min(grid.x, grid.y);
  std::ostringstream text;
  for (int i = 0; i < count; ++i) {
    const double x = (i / grid.rows + 0.5) * grid.x, y = (i % grid.rows + 0.5) * grid.y;
    text << "<path fill='" << (i % 2 ? "#e8e2d0" : "#b5862f") << "' d='M" << x - r << ' ' << y << 'C' << x - r << ' '
         << y - r << ' ' << x + 0.6 * r << ' ' << y - r << ' ' << x + r << ' ' << y << 'C' << x + 0.8 * r << ' '
         << y + r << ' ' << x - r << ' ' << y + r << ' ' << x - r << ' ' << y << "Z'/>\n";
  }
  return text.str();
}

std::string jagged(int count) {
  const int half = count / 2;
  std::ostringstream text;
  text << "<path fill='#e8e2d0' d='M";
  const auto saw = [&](int i, double middle, double out) {
    text << length * i / half << ' ' << middle + (i % 2 ? out : 0) << ' ';
  };
  for (int i = 0; i <= half; ++i) saw(i, 24, 2);
  for (int i = half; i >= 0; --i) saw(i, 12, -2);
  text << "Z'/>\n";
  return text.str();
}

/// Wavy circles of a hundred cubic curves each, tangent to the wave at their ends.
std::string rosettes(int count) {
  constexpr int curves = 100;
  const Grid grid(count, length, width);
  const double r = 0.42 * std::min(grid.x, grid.y), step = 2 * std::numbers::pi / curves;
  const auto out = [&](double t) { return r * (1 + 0.04 * std::sin(5 * t)); };
  const auto rate = [&](double t) { return 0.2 * r * std::cos(5 * t); };
  std::ostringstream text;
  for (int i = 0; i < count; ++i) {
    const double x = (i / grid.rows + 0.5) * grid.x, y = (i % grid.rows + 0.5) * grid.y;
    // `along`: of a third of a curve, forward or back.
    const auto point = [&](double t, double along) {
      text << x + out(t) * std::cos(t) + along * (rate(t) * std::cos(t) - out(t) * std::sin(t)) << ' '
           << y + out(t) * std::sin(t) + along * (rate(t) * std::sin(t) + out(t) * std::cos(t)) << ' ';
    };
    text << "<path fill='#e8e2d0' d='M";
    point(0, 0);
    for (int k = 0; k < curves; ++k) {
      text << 'C';
      point(k * step, step / 3), point((k + 1) * step, -step / 3), point((k + 1) * step, 0);
    }
    text << "Z'/>\n";
  }
  return text.str();
}

std::string drawing(Growing kind, int count) {
  if (kind == Growing::leaves) return leaves(count);
  return kind == Growing::rosettes ? rosettes(count) : jagged(count);
}

}  // namespace

std::string write_growing(Growing kind, int count, const std::string& folder) {
  std::filesystem::create_directories(folder);
  const std::string path = folder + "/board.toml";
  std::ofstream board(path);
  board << ground;
  if (kind == Growing::dots) {
    board << dots(count);
    return path;
  }
  std::ofstream(folder + "/drawing.svg") << "<svg xmlns='http://www.w3.org/2000/svg' width='450mm' height='36mm' "
                                            "viewBox='0 0 450 36'>\n"
                                         << drawing(kind, count) << "</svg>\n";
  board << "[[inlays]]\nshape = \"artwork\"\nfile = \"drawing.svg\"\nfrets = [12]\nshift_along = -75\nalong = 448\n"
           "depth = 1.5\n";
  if (kind == Growing::leaves) board << "colours = { \"#e8e2d0\" = \"shell\", \"#b5862f\" = \"brass\" }\n";
  return path;
}

}  // namespace sagitta::test
