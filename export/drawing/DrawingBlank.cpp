/// The figures that hold the blank: its outline and middle, clamps, dowels, tabs.

#include <algorithm>

#include "drawing/DrawingParts.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

/// Dowel pins of 6 mm with 4 mm of wood around them: common practice, no source. mm.
constexpr double dowel_radius = 3, wood_round_dowel = 4;
/// How far the heel end's dowel stands off the blank's centre line, as a share of the blank's width.
constexpr double dowel_offset = 0.15;
/// A clamp needs a foot this large; smaller places are not drawn. Common practice, no source. mm.
constexpr double clamp_foot = 10;
/// The cutter that is expected where none is named. mm.
constexpr double usual_cutter = 6;
/// Tabs 3 to 6 mm wide, three at least (common practice, no source): three on each long edge.
constexpr double tab_width = 5, tab_places[] = {0.15, 0.5, 0.85};
/// A tab is drawn as a patch over the edge, this far to either side, so that no line lies on the outline. mm.
constexpr double tab_reach = 3;

double across(const Box& box) { return box.high.y - box.low.y; }
Point middle(const Box& box) { return between(box.low, box.high, 0.5); }

Figure box_figure(std::string name, Point low, Point high) { return {std::move(name), rectangle(low, high), true}; }

/// Stretches of one long edge, as fractions of it, that tabs may not touch: slots and side dots.
std::vector<double> stops_on(const Layout& layout, const LineSegment& edge) {
  const Point along = unit(edge.b - edge.a);
  const double whole = distance(edge.a, edge.b);
  const bool low = edge.a.y + edge.b.y < 0;
  std::vector<double> stops{0, 1};
  const auto stop = [&](Point p) { stops.push_back(std::clamp(dot(p - edge.a, along) / whole, 0.0, 1.0)); };
  for (const FretLine& fret : layout.frets) stop((fret.bass_edge.y < 0) == low ? fret.bass_edge : fret.treble_edge);
  for (const SideDot& dot : layout.side_dots)
    if (low == (dot.mouth.y < 0)) stop(dot.mouth);
  if (layout.nut) stop(edge.a);
  std::sort(stops.begin(), stops.end());
  return stops;
}

/// The middle of the gap between stops that lies nearest to `wanted` and holds a tab; the widest gap when none does.
double tab_place(const std::vector<double>& stops, double wanted, double need) {
  double best = 0.5, nearest = 2, widest = 0, fallback = 0.5;
  for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
    const double gap = stops[i + 1] - stops[i], place = (stops[i] + stops[i + 1]) / 2;
    if (gap > widest) widest = gap, fallback = place;
    if (gap >= need && std::abs(place - wanted) < nearest) nearest = std::abs(place - wanted), best = place;
  }
  return nearest < 2 ? best : fallback;
}

Figure tab_figure(const LineSegment& edge, double place) {
  const Point along = unit(edge.b - edge.a), m = between(edge.a, edge.b, place);
  const Point u = tab_width / 2 * along, v = tab_reach * left_of(along);
  const Point a = m - u - v, b = m + u - v, c = m + u + v, d = m - u + v;
  return {"tab", {line(a, b), line(b, c), line(c, d), line(d, a)}, true};
}

}  // namespace

double waste_for_dowels() { return 2 * (dowel_radius + wood_round_dowel); }

std::vector<Dowel> dowels_of(const Layout& layout) {
  const double y = middle(layout.blank).y, off = dowel_offset * across(layout.blank);
  const int treble = layout.frets.front().treble.y > 0 ? 1 : -1;
  const double at_nut = layout.strip.low.x - layout.blank.low.x, at_heel = layout.blank.high.x - layout.strip.high.x;
  const bool wide = across(layout.blank) / 2 - off >= dowel_radius + wood_round_dowel;
  if (std::min(at_nut, at_heel) < waste_for_dowels() || !wide) return {};
  return {{{layout.blank.low.x + at_nut / 2, y}, dowel_radius},
          {{layout.blank.high.x - at_heel / 2, y + treble * off}, dowel_radius}};
}

std::vector<Figure> dowel_figures(const Layout& layout) {
  std::vector<Figure> figures;
  for (const Dowel& dowel : dowels_of(layout))
    figures.push_back({"dowel " + std::to_string(figures.size() + 1), circle(dowel.centre, dowel.radius), true});
  return figures;
}

std::vector<Figure> clamp_figures(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const Layout& layout = ready.layout();
  double cutter = 0;
  for (const Cutter& each : board.cutters) cutter = std::max(cutter, each.measured_cut.value_or(each.diameter));
  const double clear = board.cutters.empty() ? usual_cutter : cutter;
  const Box& blank = layout.blank;
  const double left = layout.strip.low.x - clear, right = layout.strip.high.x + clear;
  const double foot = across(blank) / 4;
  std::vector<Figure> figures;
  if (foot < clamp_foot) return figures;
  const auto corner = [&](double from, double to) {
    if (to - from < clamp_foot) return;
    figures.push_back(box_figure("clamp", {from, blank.low.y}, {to, blank.low.y + foot}));
    figures.push_back(box_figure("clamp", {from, blank.high.y - foot}, {to, blank.high.y}));
  };
  corner(blank.low.x, left);
  corner(right, blank.high.x);
  return figures;
}

std::vector<Figure> tab_figures(const Layout& layout) {
  std::vector<Figure> figures;
  for (const LineSegment& edge : layout.edges) {
    const double whole = distance(edge.a, edge.b);
    const std::vector<double> stops = stops_on(layout, edge);
    double last = -1;
    for (const double wanted : tab_places) {
      const double place = tab_place(stops, wanted, 2 * tab_width / whole);
      if (place == last) continue;
      last = place;
      figures.push_back(tab_figure(edge, place));
    }
  }
  return figures;
}

Figure centre_line_figure(const Layout& layout) {
  return {"centre line", {line({layout.blank.low.x, 0}, {layout.blank.high.x, 0})}, false};
}

std::vector<Figure> blank_centre_figures(const Layout& layout) {
  const Box& blank = layout.blank;
  const Point m = middle(blank);
  std::vector<Figure> figures{{"middle of the blank, across", {line({m.x, blank.low.y}, {m.x, blank.high.y})}, false}};
  if (std::abs(m.y) > tolerance::vertex)
    figures.push_back({"middle of the blank, along", {line({blank.low.x, m.y}, {blank.high.x, m.y})}, false});
  return figures;
}

Figure blank_figure(const Layout& layout) { return box_figure("blank", layout.blank.low, layout.blank.high); }

}  // namespace sagitta
