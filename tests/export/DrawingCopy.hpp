#pragma once

/// Drawings as another program reads them: ezdxf for DXF, Python's XML reader for SVG. See read_drawing.py.

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <nlohmann/json.hpp>

#include "CommandLine.hpp"
#include "Places.hpp"
#include "plane/Plane.hpp"

namespace sagitta::test {

using nlohmann::json;

/// What was read back must be what was drawn to this. mm.
inline constexpr double read_back = 1e-6;

/// All drawings below a folder, by their names there. One run of Python reads them all: it takes long to start.
inline json drawing_copies(const fs::path& folder) {
  const Outcome read = shell("cd '" + folder.string() + "' && /usr/bin/python3 '" + places::tests() +
                             "/export/read_drawing.py' $(find . -path ./sources -prune -o -name '*.dxf' -print -o "
                             "-name '*.svg' -print | sed 's|^[.]/||')");
  if (read.code != 0) throw std::runtime_error(folder.string() + ": " + read.err);
  return json::parse(read.out);
}

/// A figure's corners, bulges (tangent of a quarter of the arc's angle) after them; of a circle centre and radius; of
/// an ellipse none.
struct CopiedFigure {
  bool closed = true;
  bool circle = false;
  std::optional<std::array<double, 5>> ellipse{};  ///< centre, half of the long axis, ratio of the axes
  std::vector<std::array<double, 3>> corners;
};

inline CopiedFigure copied(const json& figure) {
  CopiedFigure copy;
  copy.circle = figure.contains("circle");
  if (copy.circle) {
    copy.corners.push_back(figure["circle"]);
  } else {
    copy.closed = figure.at("closed");
    if (figure.contains("ellipse"))
      copy.ellipse = figure["ellipse"];
    else
      copy.corners = figure.at("points");
  }
  return copy;
}

inline std::vector<CopiedFigure> copied_layer(const json& drawing, const std::string& layer) {
  std::vector<CopiedFigure> figures;
  for (const json& figure : drawing["layers"].value(layer, json::array())) figures.push_back(copied(figure));
  return figures;
}

inline bool near(const std::array<double, 3>& a, const std::array<double, 3>& b) {
  return std::abs(a[0] - b[0]) < read_back && std::abs(a[1] - b[1]) < read_back && std::abs(a[2] - b[2]) < read_back;
}

/// A place in an ellipse's own frame, where the ellipse is the unit circle.
inline Point in_ellipse(const std::array<double, 5>& ellipse, Point p) {
  const Point major{ellipse[2], ellipse[3]}, away{p.x - ellipse[0], p.y - ellipse[1]};
  return {dot(away, major) / dot(major, major), cross(major, away) / dot(major, major) / ellipse[4]};
}

/// The ends of both half axes.
inline std::array<Point, 4> ends_of(const std::array<double, 5>& ellipse) {
  const Point centre{ellipse[0], ellipse[1]}, major{ellipse[2], ellipse[3]},
      minor{-ellipse[4] * ellipse[3], ellipse[4] * ellipse[2]};
  return {centre + major, centre + minor, centre - major, centre - minor};
}

inline bool same_ellipse(const std::array<double, 5>& a, const std::array<double, 5>& b) {
  for (const Point p : ends_of(b))
    if (std::abs(length(in_ellipse(a, p)) - 1) > read_back) return false;
  return std::abs(a[4] - b[4]) < read_back;
}

/// The arcs that stand for an ellipse where a file has none keep within 0.1 um of it.
inline bool drawn_as_arcs(const std::array<double, 5>& ellipse, const CopiedFigure& arcs) {
  for (const auto& corner : arcs.corners) {
    const Point p{corner[0], corner[1]}, unit = in_ellipse(ellipse, p);
    if (std::abs(length(unit) - 1) * std::hypot(ellipse[2], ellipse[3]) > 1e-4) return false;
  }
  return arcs.closed && !arcs.circle && arcs.corners.size() > 8;
}

/// The same corners in the same sense, wherever a closed figure begins.
inline bool same(const CopiedFigure& a, const CopiedFigure& b) {
  if (a.ellipse && b.ellipse) return same_ellipse(*a.ellipse, *b.ellipse);
  if (a.ellipse) return drawn_as_arcs(*a.ellipse, b);
  if (b.ellipse) return drawn_as_arcs(*b.ellipse, a);
  if (a.closed != b.closed || a.circle != b.circle || a.corners.size() != b.corners.size()) return false;
  const std::size_t count = a.corners.size();
  for (std::size_t shift = 0; shift < (a.closed ? count : 1); ++shift) {
    std::size_t alike = 0;
    while (alike < count && near(a.corners[alike], b.corners[(alike + shift) % count])) ++alike;
    if (alike == count) return true;
  }
  return false;
}

inline CopiedFigure reversed(const CopiedFigure& figure) {
  CopiedFigure other = figure;
  const std::size_t count = figure.corners.size();
  for (std::size_t i = 0; i < count && !figure.circle; ++i) {
    other.corners[i] = figure.corners[count - 1 - i];
    other.corners[i][2] = -figure.corners[(2 * count - 2 - i) % count][2];
  }
  return other;
}

inline CopiedFigure moved(CopiedFigure figure, Point by) {
  for (auto& corner : figure.corners) corner[0] += by.x, corner[1] += by.y;
  if (figure.ellipse) (*figure.ellipse)[0] += by.x, (*figure.ellipse)[1] += by.y;
  return figure;
}

/// y -> -y; a closed figure keeps its sense of turning round.
inline CopiedFigure mirrored(CopiedFigure figure) {
  for (auto& corner : figure.corners) {
    corner[1] = -corner[1];
    if (!figure.circle) corner[2] = -corner[2];
  }
  if (figure.ellipse) {
    (*figure.ellipse)[1] = -(*figure.ellipse)[1];
    (*figure.ellipse)[3] = -(*figure.ellipse)[3];
    return figure;
  }
  return figure.closed ? reversed(figure) : figure;
}

/// A drawn loop as a polyline carries it.
inline CopiedFigure expected(const Loop& loop) {
  CopiedFigure figure;
  for (const CurveSegment& segment : loop)
    figure.corners.push_back({segment.a.x, segment.a.y, segment.is_arc() ? std::tan(segment.sweep / 4) : 0});
  return figure;
}

/// Area inside a closed figure: shoelace and circular segments.
inline double area_of(const CopiedFigure& figure) {
  if (figure.circle) return std::numbers::pi * figure.corners[0][2] * figure.corners[0][2];
  if (const auto& e = figure.ellipse) return std::numbers::pi * ((*e)[2] * (*e)[2] + (*e)[3] * (*e)[3]) * (*e)[4];
  double area = 0;
  for (std::size_t i = 0; i < figure.corners.size(); ++i) {
    const auto& a = figure.corners[i];
    const auto& b = figure.corners[(i + 1) % figure.corners.size()];
    area += (a[0] * b[1] - b[0] * a[1]) / 2;
    if (a[2] == 0) continue;
    const double angle = 4 * std::atan(a[2]), radius = std::hypot(b[0] - a[0], b[1] - a[1]) / 2 / std::sin(angle / 2);
    area += radius * radius / 2 * (angle - std::sin(angle));
  }
  return area;
}

/// True when every figure of `a` has its own in `b`, and none is left over.
inline bool same_layer(const std::vector<CopiedFigure>& a, std::vector<CopiedFigure> b) {
  for (const CopiedFigure& figure : a) {
    const auto found = std::find_if(b.begin(), b.end(), [&](const CopiedFigure& other) {
      return same(figure, other) || (!figure.closed && same(figure, reversed(other)));
    });
    if (found == b.end()) return false;
    b.erase(found);
  }
  return b.empty();
}

}  // namespace sagitta::test
