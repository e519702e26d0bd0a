#include "prepared/HeelDrawing.hpp"

#include "inlay/Biarc.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// How far the arcs may stray from a Bezier curve: half of what the plan takes for one line. mm.
constexpr double drawn_arc = tolerance::snap / 2;
constexpr int most_halvings = 12;

Point direction_at_start(const Bezier& curve) {
  for (const Point p : {curve.c, curve.d, curve.b})
    if (distance(p, curve.a) > tolerance::same) return unit(p - curve.a);
  return {1, 0};
}

Point direction_at_end(const Bezier& curve) {
  for (const Point p : {curve.d, curve.c, curve.a})
    if (distance(curve.b, p) > tolerance::same) return unit(curve.b - p);
  return {1, 0};
}

/// De Casteljau's halves.
std::pair<Bezier, Bezier> halved(const Bezier& curve) {
  const Point p = between(curve.a, curve.c, 0.5), q = between(curve.c, curve.d, 0.5),
              r = between(curve.d, curve.b, 0.5);
  const Point pq = between(p, q, 0.5), qr = between(q, r, 0.5), middle = between(pq, qr, 0.5);
  return {{curve.a, p, pq, middle}, {middle, qr, r, curve.b}};
}

bool stays_at(const Loop& arcs, const Bezier& curve) {
  constexpr int stations = 16;
  if (arcs.empty()) return false;
  for (int i = 1; i < stations; ++i)
    if (off_chain(arcs, curve.at(static_cast<double>(i) / stations)) > drawn_arc) return false;
  return true;
}

void add_arcs(const Bezier& curve, int halvings, Loop& pieces) {
  const Loop arcs = biarc(curve.a, direction_at_start(curve), curve.b, direction_at_end(curve), 1, drawn_arc / 4);
  if (stays_at(arcs, curve)) {
    pieces.insert(pieces.end(), arcs.begin(), arcs.end());
  } else if (halvings == most_halvings) {
    pieces.push_back(line(curve.a, curve.b));
  } else {
    const auto [first, second] = halved(curve);
    add_arcs(first, halvings + 1, pieces);
    add_arcs(second, halvings + 1, pieces);
  }
}

}  // namespace

Loop as_lines_and_arcs(const OpenLine& line) {
  Loop pieces;
  for (const PathSegment& stroke : line) {
    if (const auto* segment = std::get_if<CurveSegment>(&stroke))
      pieces.push_back(*segment);
    else
      add_arcs(std::get<Bezier>(stroke), 0, pieces);
  }
  return pieces;
}

std::variant<DrawnEnd, Faults> read_heel_drawing(const Board& board, Outside outside) {
  const auto path = input_path({"drawing", board.folder, board.board.heel_file, board.folder}, outside);
  auto read = std::holds_alternative<Fault>(path) ? OpenLineOrFaults(Faults{std::get<Fault>(path)})
                                                  : read_open_line(std::get<std::string>(path), board.units);
  if (auto* faults = std::get_if<Faults>(&read)) {
    for (Fault& fault : *faults) {
      fault.key = "board.heel_file";
      fault.where = {FeatureId::Kind::heel_end};
    }
    return std::move(*faults);
  }
  return DrawnEnd{as_lines_and_arcs(std::get<OpenLine>(read))};
}

}  // namespace sagitta
