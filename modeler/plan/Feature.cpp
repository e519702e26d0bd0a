#include "plan/Feature.hpp"

#include <algorithm>

#include "board/CutSide.hpp"
#include "layout/SlotLines.hpp"
#include "plan/SideHoles.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// How far beyond the strip the cuts that run to its sides are drawn. mm.
constexpr double overrun = 1;

BoundingSurface level(double z) { return {BoundingSurface::Kind::level, z}; }
BoundingSurface moved_down(double by) { return {BoundingSurface::Kind::offset_surface, by}; }

/// The band between two parallel lines through p and q, from y = low to y = high.
Loop band(Point p, Point q, Point direction, double low, double high) {
  const auto at = [&](Point on, double y) { return Point{on.x + (y - on.y) / direction.y * direction.x, y}; };
  if (p.x > q.x) std::swap(p, q);
  const Point a = at(p, low), b = at(q, low), c = at(q, high), d = at(p, high);
  return {line(a, b), line(b, c), line(c, d), line(d, a)};
}

Point square_fretward(Point direction) { return {direction.y, -direction.x}; }  // unit normal that points along +x

/// The band of a slot of the tongue, from the tongue's bass side to the strip's side beyond its treble edge.
Loop tongue_band(const Layout& layout, const Slot& slot, Point direction, Point aside) {
  const LineSegment& side = layout.tongue->bass_side;
  const Point way = side.b - side.a;
  const bool bass_low = slot.bass_end.y < slot.treble_end.y;
  const double far = bass_low ? layout.strip.high.y + overrun : layout.strip.low.y - overrun;
  const auto on_side = [&](Point p) { return p + cross(side.a - p, way) / cross(direction, way) * direction; };
  const auto at_far = [&](Point p) { return p + (far - p.y) / direction.y * direction; };
  const Point before = slot.bass_end - aside, behind = slot.bass_end + aside;
  const Point a = on_side(before), b = on_side(behind), c = at_far(behind), d = at_far(before);
  if (bass_low) return {line(a, b), line(b, c), line(c, d), line(d, a)};
  return {line(d, c), line(c, b), line(b, a), line(a, d)};
}

/// `part`: a slot, or the first part of one that the heel end cuts. The slot is cut whole; the outline parts it.
Feature slot_feature(const Board& board, const Layout& layout, const Slot& part) {
  const Slot slot = whole_slot(board, layout, part);
  Feature f = feature_called(id_of(slot));
  f.kind = Source::Kind::slot;
  f.key = "slots.depth";
  f.in_strip = true;
  const double depth = slot_depth(board);
  f.bound = board.slots.floor == SlotFloor::arc ? moved_down(depth) : level(board.board.thickness - depth);
  if (slot.blind) {
    f.shape = slot_shape(layout, slot);
    f.key = "slots.edge_left";
    return f;
  }
  Point low = slot.bass_end, high = slot.treble_end;
  if (low.y > high.y) std::swap(low, high);
  const Point direction = unit(high - low);
  const Point aside = slot.width / 2 * square_fretward(direction);
  if (slot.on_tongue)
    f.loop = tongue_band(layout, slot, direction, aside);
  else
    f.loop = band(low - aside, low + aside, direction, layout.strip.low.y - overrun, layout.strip.high.y + overrun);
  return f;
}

Feature nut_feature(const Board& board, const Layout& layout) {
  const NutGround& seat = *layout.nut;
  Feature f = feature_called({.kind = FeatureId::Kind::nut_seat});
  f.kind = Source::Kind::nut;
  f.key = "nut.depth";
  f.in_strip = true;
  f.bound = board.nut.floor == NutFloor::arc ? moved_down(seat.depth) : level(board.board.thickness - seat.depth);
  const double low = layout.strip.low.y - overrun, high = layout.strip.high.y + overrun;
  const double lean = std::abs(seat.direction.x / seat.direction.y) * (high - low);
  const Point back = seat.shelf ? Point{layout.strip.low.x - lean - overrun, 0} : seat.back;
  f.loop = band(seat.face, back, seat.direction, low, high);
  return f;
}

std::vector<Feature> binding_features(const Board& board, const Layout& layout) {
  std::vector<Feature> features;
  const double width = ledge_width(*board.binding);
  for (const LineSegment& edge : layout.edges) {
    const int side = edge.a.y + edge.b.y < 0 ? FeatureId::lower : FeatureId::upper;
    Feature f = feature_called({.kind = FeatureId::Kind::binding, .part = side});
    f.kind = Source::Kind::binding;
    f.key = "binding.width";
    f.role = board.binding->height > 0 ? Feature::Role::cut : Feature::Role::removal;
    f.bound = moved_down(board.binding->height);
    Point along = unit(edge.b - edge.a);
    if (along.x < 0) along = -1 * along;
    Point in = left_of(along);
    if (edge.a.y + edge.b.y > 0) in = -1 * in;
    const double reach = layout.strip.high.x - layout.strip.low.x;
    const Point middle = between(edge.a, edge.b, 0.5) + width * in;
    const Point a = middle - reach * along, b = middle + reach * along;
    const double out = layout.strip.high.y - layout.strip.low.y;
    const Point c = b - out * in, d = a - out * in;
    f.loop = {line(a, b), line(b, c), line(c, d), line(d, a)};
    if (area(f.loop) < 0) f.loop = {line(b, a), line(a, d), line(d, c), line(c, b)};
    features.push_back(f);
  }
  return features;
}

/// A pocket without its outline.
Feature pocket_ground(const Board& board, const Pocket& pocket) {
  Feature f = feature_called({FeatureId::Kind::inlay, pocket.inlay, pocket.fret, pocket.pair});
  f.kind = Source::Kind::pocket;
  f.key = "inlays[" + std::to_string(pocket.inlay) + "]";
  f.bound =
      level(board.board.thickness - pocket.depth.value_or(board.inlays[static_cast<std::size_t>(pocket.inlay)].depth));
  return f;
}

/// Drawn ones: every pocket of one figure at one cut.
Feature pocket_feature(const Board& board, const Pocket& pocket) {
  Feature f = pocket_ground(board, pocket);
  f.shape = pocket.shape;
  f.drawn = !pocket.shape;
  f.ellipse = pocket.beside;
  if (f.drawn)
    for (const Loop& loop : pocket.outlines) f.loop.insert(f.loop.end(), loop.begin(), loop.end());
  return f;
}

Feature pin_feature(const Pin& pin, int index) {
  Feature f = feature_called({.kind = FeatureId::Kind::pin, .index = index});
  f.role = Feature::Role::pin;
  f.kind = Source::Kind::pin;
  f.key = "pins.at";
  f.bound = level(pin.depth);
  f.shape = RoundedPolygon{{pin.centre}, pin.radius};
  return f;
}

/// Of the builder's own.
Feature cut_feature(const Board& board, const FittedCut& fitted) {
  const Cut& cut = board.cuts[static_cast<std::size_t>(fitted.cut)];
  Feature f = feature_called(id_of(fitted));
  f.kind = Source::Kind::cut;
  f.name = "cut \"" + cut.name + "\"";
  f.key = "cuts[" + std::to_string(fitted.cut) + "]";
  f.shape = fitted.shape;
  f.drawn = !fitted.shape;
  if (fitted.ellipse) f.ellipse = {*fitted.ellipse, 0};
  if (f.drawn)
    for (const Loop& loop : fitted.outlines) f.loop.insert(f.loop.end(), loop.begin(), loop.end());
  if (is_through(cut)) {
    f.role = Feature::Role::removal;
  } else if (cut.from == CutFrom::below) {
    f.role = Feature::Role::pin;
    f.bound = level(cut.depth);
  } else {
    f.bound = level(board.board.thickness - cut.depth);
  }
  return f;
}

/// Those of one side, drawn ones first: a plain one that only touches one of them is what is to be drawn back.
void add_cuts(const Board& board, const Inlays& inlays, bool from_below, std::vector<Feature>& features) {
  for (const bool may_give : {false, true})
    for (const FittedCut& fitted : inlays.cuts)
      if (fitted.shape.has_value() == may_give &&
          is_from_below(board.cuts[static_cast<std::size_t>(fitted.cut)]) == from_below)
        features.push_back(cut_feature(board, fitted));
}

Feature stock_feature(const Layout& layout, bool outlined) {
  Feature f = feature_called({.kind = outlined ? FeatureId::Kind::outline : FeatureId::Kind::blank});
  f.role = Feature::Role::stock;
  f.kind = outlined ? Source::Kind::outline : Source::Kind::blank;
  f.loop = outlined ? layout.outline : rectangle(layout.blank.low, layout.blank.high);
  return f;
}

Feature strip_feature(const Layout& layout) {
  Feature f = feature_called({.kind = FeatureId::Kind::radius_cut});
  f.role = Feature::Role::strip;
  f.kind = Source::Kind::strip;
  f.loop = rectangle(layout.strip.low, layout.strip.high);
  return f;
}

/// A scalloped space runs to the strip's sides.
Feature scallop_feature(const Layout& layout, const Surface& surface, std::size_t i, double on_top) {
  const ScallopedSpace& space = surface.scallops[i];
  Feature f = feature_called({.kind = FeatureId::Kind::scallop, .fret = space.fret});
  f.kind = Source::Kind::scallop;
  f.key = "scallop.depth";
  f.in_strip = true;
  f.bound = moved_down(-on_top);
  f.bound.form = static_cast<int>(i) + 1;
  const double low = layout.strip.low.y - overrun, high = layout.strip.high.y + overrun;
  const Point a{space.x(0, low), low}, b{space.x(1, low), low}, c{space.x(1, high), high}, d{space.x(0, high), high};
  f.loop = {line(a, b), line(b, c), line(c, d), line(d, a)};
  return f;
}

/// Where the lines between which scallops lie meet the line where an edge's face begins: x, rising.
std::vector<double> lands_at(const Surface& surface, const WorkedEdge& edge) {
  std::vector<double> xs;
  for (const ScallopedSpace& space : surface.scallops)
    for (const double s : {0.0, 1.0}) {
      double x = space.x(s, 0);
      constexpr int rounds = 60;  // each changes x by the lean times the taper of what it changed by before
      for (int i = 0; i < rounds; ++i) x = space.x(s, edge.side * surface.begins(edge, x));
      xs.push_back(x);
    }
  return xs;
}

/// Points of the line where an edge's face begins, so near to each other that a chord lies no further off it than a
/// roll lets pass: two arcs that are tangent are d^2 / 2r apart at d from where they touch. Those where a scallop
/// begins are among them: from there the curve runs along which the roll and the scallop meet.
std::vector<Point> beginning_of(const Surface& surface, const WorkedEdge& edge, double low, double high) {
  constexpr double unseen = 5e-9;  // mm of height
  constexpr double beside = 0.1;   // mm; no point is needed so near to one that is wanted
  const double off = std::max(std::sqrt(2 * edge.roll * unseen), tolerance::same);
  const auto at = [&](double x) { return Point{x, edge.side * surface.begins(edge, x)}; };
  const auto strays = [&](Point a, Point b) { return std::abs(at((a.x + b.x) / 2).y - (a.y + b.y) / 2) > off; };
  std::vector<double> wanted = lands_at(surface, edge);
  std::erase_if(wanted, [&](double x) { return x < low + beside || x > high - beside; });
  wanted.push_back(low);
  wanted.push_back(high);
  std::sort(wanted.begin(), wanted.end());
  std::vector<Point> points{at(low)};
  for (std::size_t i = 0; i + 1 < wanted.size(); ++i) {
    if (wanted[i + 1] - wanted[i] < beside) continue;
    const Point from = points.back(), to = at(wanted[i + 1]);
    int parts = 1;
    constexpr int most_parts = 1024;
    while (parts < most_parts && strays(from, at(from.x + (to.x - from.x) / parts))) parts *= 2;
    for (int k = 1; k < parts; ++k) points.push_back(at(from.x + (to.x - from.x) * k / parts));
    points.push_back(to);
  }
  return points;
}

/// All that lies outside the line where the face of a worked edge begins.
Feature worked_edge_feature(const Board& board, const Layout& layout, const Surface& surface, std::size_t i,
                            double on_top) {
  const WorkedEdge& edge = surface.worked_edges[i];
  Feature f = feature_called(
      {.kind = FeatureId::Kind::worked_edge, .part = edge.side < 0 ? FeatureId::lower : FeatureId::upper});
  f.kind = Source::Kind::worked_edge;
  f.key = board.edges->roll > 0 ? "edges.roll" : "edges.bevel";
  f.bound = edge.roll > 0 ? roll_along(surface, static_cast<int>(i), -on_top) : moved_down(-on_top);
  if (edge.roll == 0) f.bound.form = -1 - static_cast<int>(i);
  const double low = layout.strip.low.x - overrun, high = layout.strip.high.x + overrun;
  std::vector<Point> points = beginning_of(surface, edge, low, high);
  const double out = edge.side < 0 ? layout.strip.low.y - overrun : layout.strip.high.y + overrun;
  points.push_back({high, out});
  points.push_back({low, out});
  if (edge.side < 0) std::reverse(points.begin(), points.end());
  for (std::size_t k = 0; k < points.size(); ++k) f.loop.push_back(line(points[k], points[(k + 1) % points.size()]));
  return f;
}

/// Scallops and worked edges, last: they give way by a snap to what they run beside.
void add_forms(std::vector<Feature>& features, const Board& board, const Layout& layout, const Surface& surface,
               const WorkDone& done) {
  if (!done.radius) return;
  for (std::size_t i = 0; i < surface.scallops.size(); ++i)
    features.push_back(scallop_feature(layout, surface, i, done.on_top));
  for (std::size_t i = 0; done.edges && i < surface.worked_edges.size(); ++i)
    features.push_back(worked_edge_feature(board, layout, surface, i, done.on_top));
}

/// The line where the fall-away begins, across everything that has the playing surface.
Feature seam_feature(const Layout& layout, double x) {
  Feature f = feature_called({.kind = FeatureId::Kind::fall_away});
  f.role = Feature::Role::strip;
  f.kind = Source::Kind::fall;
  f.seam = Point{x, 0};
  f.loop = {line({x, layout.strip.low.y - overrun}, {x, layout.strip.high.y + overrun})};
  return f;
}

}  // namespace

double moved_by(const RoundedPolygon& before, const RoundedPolygon& after) {
  double most = 0;
  for (const Point p : before.core) {
    double nearest = 1e300;
    for (const Point q : after.core) nearest = std::min(nearest, distance(p, q));
    most = std::max(most, nearest);
  }
  return most + std::abs(after.radius - before.radius);
}

Feature feature_called(const FeatureId& id) {
  Feature f;
  f.id = id;
  f.name = feature_name(id);
  return f;
}

WorkDone work_done_at(const Board& board, Stage stage) {
  WorkDone done;
  done.on_top = stage == Stage::finished ? 0 : board.sanding;
  const auto last = stage == Stage::thicknessed ? Operation::thickness
                    : stage == Stage::pocketed  ? Operation::pockets
                    : stage == Stage::radiused  ? Operation::radius
                    : stage == Stage::slotted   ? Operation::slots
                                                : Operation::outline;
  if (stage == Stage::blank) return done;
  for (const Operation operation : board.order) {
    if (operation == Operation::thickness) done.thickness = true;
    if (operation == Operation::pockets) done.pockets = true;
    if (operation == Operation::radius) done.radius = true;
    if (operation == Operation::slots) done.slots = true;
    if (operation == Operation::outline) done.outline = true;
    if (operation == last && stage != Stage::finished) break;
  }
  done.edges =
      works_edges(board) && (board.edges->stage == EdgeStage::machine ? done.outline : stage == Stage::finished);
  return done;
}

double stock_top(const Board& board, const Layout& layout, const WorkDone& done) {
  return done.thickness ? thickness_to(board) : layout.blank_thickness;
}

std::vector<Feature> features_of(const Board& board, const Layout& layout, const Surface& surface, const Inlays& inlays,
                                 const WorkDone& done) {
  std::vector<Feature> features{stock_feature(layout, done.outline)};
  if ((done.radius || done.slots) && !done.outline) features.push_back(strip_feature(layout));
  if (surface.fall_start && (done.radius || done.slots || (done.outline && board.binding)))
    features.push_back(seam_feature(layout, *surface.fall_start));
  if (done.slots) {
    for (const Slot& slot : layout.slots)
      if (slot.part == 0) features.push_back(slot_feature(board, layout, slot));
    if (layout.nut) features.push_back(nut_feature(board, layout));
  }
  if (done.outline && board.binding)
    for (Feature& f : binding_features(board, layout)) features.push_back(std::move(f));
  if (done.pockets)  // drawn ones first: a dot that only touches one is what is to be drawn back
    for (const bool may_give : {false, true})
      for (const Pocket& pocket : inlays.pockets)
        if (pocket.shape.has_value() == may_give) features.push_back(pocket_feature(board, pocket));
  if (done.pockets) add_cuts(board, inlays, false, features);
  if (done.outline) {
    add_cuts(board, inlays, true, features);
    for (std::size_t i = 0; i < layout.pins.size(); ++i)
      features.push_back(pin_feature(layout.pins[i], static_cast<int>(i)));
    for (Feature& f : side_hole_features(board, layout, surface)) features.push_back(std::move(f));
  }
  add_forms(features, board, layout, surface, done);
  return features;
}

}  // namespace sagitta
