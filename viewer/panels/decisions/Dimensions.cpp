#include "decisions/Dimensions.hpp"

#include <algorithm>
#include <cmath>

#include "board/ShapeKeys.hpp"
#include "decisions/Decisions.hpp"
#include "layout/LastFret.hpp"
#include "layout/Taper.hpp"

namespace sagitta::viewer {

namespace {

/// Everything that a dimension is worked out from.
struct Sketch {
  const Board& board;
  const Layout& layout;
  const Surface& surface;
  const Manner& manner;
  std::vector<Dimension> out;

  double top(double x, double y) const { return surface.exists(x, y) ? surface.height(x, y) : surface.thickness; }
  Vec on(double x, double y, double lift = 0.3) const {
    return {static_cast<float>(x), static_cast<float>(y), static_cast<float>(top(x, y) + lift)};
  }
  Vec at(double x, double y, double z) const {
    return {static_cast<float>(x), static_cast<float>(y), static_cast<float>(z)};
  }
  void between(Vec a, Vec b, const std::string& text) { out.push_back({a, b, text}); }
  void note(Vec a, const std::string& text) { out.push_back({a, a, text}); }
  std::string mm(double v) const { return shown(v, manner); }

  void width_at(double x) {
    between(on(x, -layout.edge(0, x)), on(x, layout.edge(1, x)), mm(2 * layout.half_width(x)));
  }
  void margin_at(double x) {
    const double string = layout.spread(x) / 2, low = layout.edge(0, x), high = layout.edge(1, x);
    between(on(x, -low), on(x, -string), mm(low - string));
    if (low != high) between(on(x, high), on(x, string), mm(high - string));
  }
  void radius_at(double x) {
    if (!surface.flat)
      note(on(x, 0, 1), "R " + shown(surface.radius(x), manner, 1));
    else
      note(on(x, 0, 1), "flat");
  }
  /// Where the heel end cuts slots.
  void note_cut_slots() {
    for (const Slot& slot : layout.slots)
      for (const auto& [open, end] : {std::pair{slot.bass_open, slot.bass_end}, {slot.treble_open, slot.treble_end}})
        if (open) note(on(end.x, end.y, 1), "fret " + std::to_string(slot.fret) + " cut here");
  }
  void height_at(double x, double y) { between(at(x, y, 0), on(x, y, 0), mm(top(x, y))); }
};

double outside(const Layout& layout) {
  const Taper taper = taper_in(layout);
  return std::max(taper.larger_edge(0), taper.larger_edge(layout.heel_end)) + 8;
}

void for_scale(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  const FretLine& last = l.frets.back();
  if (key == "scale.frets" || key == "scale.steps_per_octave" || key == "scale.cents") {
    for (const FretLine& f : l.frets)
      if (f.fret == 1 || f.fret == last.fret || f.fret % 12 == 0)
        s.note(s.on(f.middle.x, 0, 1),
               f.fret == 0 ? "nut" : "fret " + std::to_string(f.fret) + ": " + s.mm(f.middle.x));
    return;
  }
  const double y = outside(l);
  if (l.bass_scale != l.treble_scale) {
    s.between(s.on(l.frets.front().bass.x, -y), s.on(last.bass.x, -y), "bass " + s.mm(l.bass_scale) + " to the saddle");
    s.between(s.on(l.frets.front().treble.x, y), s.on(last.treble.x, y),
              "treble " + s.mm(l.treble_scale) + " to the saddle");
    if (key == "scale.square_fret" && s.board.scale.square_fret < static_cast<int>(l.frets.size()))
      s.note(s.on(l.frets[static_cast<std::size_t>(s.board.scale.square_fret)].middle.x, 0, 1), "square here");
    return;
  }
  s.between(s.on(0, -y), s.on(last.middle.x, -y), "last fret " + s.mm(last.middle.x) + " of " + s.mm(l.mean_scale));
}

void for_strings(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  if (key.starts_with("strings.course") && s.board.strings.course > 1 && l.strings.size() > 1) {
    const Point a = l.strings[0].a, b = l.strings[1].a;
    return s.between(s.on(a.x, a.y, 2), s.on(b.x, b.y, 2), s.mm(distance(a, b)));
  }
  const double end = last_fret(l).middle.x;
  for (const double x : {0.0, end})
    s.between(s.on(x, -l.spread(x) / 2, 2), s.on(x, l.spread(x) / 2, 2), s.mm(l.spread(x)));
}

void for_tongue(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  if (!l.tongue) return;
  const FretLine& last = l.frets.back();
  const LineSegment& side = l.tongue->bass_side;
  if (key == "tongue.past_last_fret")
    return s.between(s.on(last.middle.x, last.bass.y), s.on(l.tongue->end, last.bass.y),
                     s.mm(l.tongue->end - last.middle.x));
  if (key == "tongue.corner_radius")
    return s.note(s.on(side.b.x, side.b.y, 1), "R " + s.mm(s.board.tongue->corner_radius));
  if (key == "tongue.margin") {
    const LineSegment& string = l.strings[l.strings.size() - static_cast<std::size_t>(s.board.tongue->strings)];
    const double part = side.a.x / string.b.x, y = string.a.y + part * (string.b.y - string.a.y);
    return s.between(s.on(side.a.x, side.a.y), s.on(side.a.x, y), s.mm(std::abs(y - side.a.y)));
  }
  for (const FretLine& fret : l.frets)
    if (fret.on_tongue) s.note(s.on(fret.bass.x, fret.bass.y, 1), "fret " + std::to_string(fret.fret));
}

void for_shape(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  if (key.rfind("tongue", 0) == 0) return for_tongue(s, key);
  const double heel = l.heel_end;
  if (key == "board.thickness") return s.height_at(0, 0), s.height_at(heel, -l.edge(0, heel));
  if (key == "board.edge_margin") return s.margin_at(0), s.margin_at(heel);
  if (key == "board.nut_margin") return s.margin_at(0);
  if (key == "board.heel_margin") return s.margin_at(heel);
  if (key == "board.nut_width") return s.width_at(0);
  if (key == "board.heel_width") return s.width_at(heel);
  if (key == "board.width_at_fret" && s.board.board.width_at_fret)
    return s.width_at(l.frets[static_cast<std::size_t>((*s.board.board.width_at_fret)[0])].middle.x);
  if (key == "board.behind_nut") return s.between(s.on(l.nut_end, 0), s.on(0, 0), s.mm(-l.nut_end));
  if (key == "board.past_last_fret")
    return s.between(s.on(last_fret(l).middle.x, 0), s.on(heel, 0), s.mm(heel - last_fret(l).middle.x));
  if (key == "board.corner_radius")
    return s.note(s.on(heel, -l.edge(0, heel), 1), "R " + s.mm(s.board.board.corner_radius));
  if (key == "board.heel_angle")
    return s.note(s.on(heel, 0, 1),
                  "heel end turned by " + fixed_number(s.board.board.heel_angle.value_or(0), 1) + " deg");
  if (key.rfind("board.heel", 0) == 0 && key != "board.heel_width") return s.note(s.on(heel, 0, 1), "heel end");
  if (key == "board.ends_cut_slots") return s.note_cut_slots();
  if (plain_key(key).rfind("binding", 0) == 0 && s.board.binding) {
    const double x = heel / 2, edge = l.edge(0, x);
    const double wide =
        plain_key(key).starts_with("binding.line") ? ledge_width(*s.board.binding) : s.board.binding->width;
    return s.between(s.on(x, -edge), s.on(x, -edge + wide), s.mm(wide));
  }
  s.width_at(0), s.width_at(heel);
}

void for_surface(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  const double heel = l.heel_end, edge = -l.edge(0, heel);
  if (key == "surface.radius_at_nut") return s.radius_at(0);
  if (key == "surface.radius_at_heel")
    return s.radius_at(s.board.surface.heel_at == HeelAt::last_fret ? last_fret(l).middle.x : heel);
  if (key.rfind("surface.fall", 0) == 0 && l.fall_start) {
    s.note(s.on(*l.fall_start, 0, 1), "falls from here");
    return s.between(s.at(heel, 0, s.surface.thickness), s.on(heel, 0, 0), s.mm(s.surface.thickness - s.top(heel, 0)));
  }
  s.radius_at(0), s.radius_at(heel), s.height_at(0, -l.edge(0, 0)), s.height_at(heel, edge);
}

void for_nut_and_slots(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  if (key.rfind("nut.", 0) == 0 && l.nut) {
    const double y = -l.edge(0, 0) - 4;
    if (!l.nut->shelf) s.between(s.on(l.nut->back.x, y), s.on(l.nut->face.x, y), s.mm(s.board.nut.width));
    s.note(s.on(l.nut->face.x, 0, 1), "seat " + s.mm(l.nut->depth) + " deep");
    return;
  }
  if (l.slots.empty()) return;
  const Slot& slot = l.slots[l.slots.size() / 2];
  const Point middle = sagitta::between(slot.bass_end, slot.treble_end, 0.5);
  s.note(s.on(middle.x, middle.y, 0.5), "slot " + s.mm(slot.width) + " wide, " + s.mm(slot_depth(s.board)) + " deep");
}

void for_inlays(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  if (plain_key(key).rfind("side_dots", 0) == 0) {
    for (const SideDot& dot : l.side_dots)
      if (&dot == &l.side_dots.front())
        s.note(s.at(dot.mouth.x, dot.mouth.y, s.top(dot.mouth.x, dot.mouth.y) / 2),
               "\u00f8 " + s.mm(2 * dot.radius) + ", " + s.mm(dot.depth) + " deep");
    return;
  }
  const auto open = key.find('[');
  const int wanted = open == key.npos ? 0 : std::atoi(key.c_str() + open + 1);
  for (const Marker& marker : l.markers) {
    if (marker.inlay != wanted) continue;
    const Inlay& inlay = s.board.inlays[static_cast<std::size_t>(wanted)];
    const std::vector<InlaySize> sizes = sizes_of(inlay);
    const bool sized_along = !sizes.empty() && sizes.front().key != "across";
    const double along = sized_along ? sizes.front().value : 0;
    const std::string plain = plain_key(key);
    const bool of_depth = plain == "inlays.depth" || plain == "inlays.piece_thickness";
    const bool of_size = plain == "inlays.along" || plain == "inlays.across";
    if (along > 0 && !of_depth) {
      const double turn = (s.board.hand == Hand::left ? -1 : 1) * inlay.turn_degrees * std::numbers::pi / 180;
      const Point half = turned({along / 2, 0}, turn), a = marker.centre - half, b = marker.centre + half;
      s.between(s.on(a.x, a.y), s.on(b.x, b.y), s.mm(along));
    }
    if (!of_size) s.note(s.on(marker.centre.x, marker.centre.y - 6, 0.5), s.mm(inlay.depth) + " deep");
    return;
  }
}

void for_pins(Sketch& s) {
  for (const Pin& p : s.layout.pins) {
    const Point pin = p.centre;
    const double r = s.board.pins->diameter / 2;
    s.between(s.at(pin.x - r, pin.y, 0), s.at(pin.x + r, pin.y, 0),
              "\u00f8 " + s.mm(2 * r) + " at " + shown_bare(pin.x, s.manner) + ", " + shown_bare(pin.y, s.manner));
  }
}

/// The row of the list that a key belongs to; the first where it names none.
std::size_t row_of(const std::string& key) {
  const auto open = key.find('[');
  return open == key.npos ? 0 : static_cast<std::size_t>(std::max(0, std::atoi(key.c_str() + open + 1)));
}

void for_cuts(Sketch& s, const std::string& key) {
  const std::size_t row = row_of(key);
  if (row >= s.board.cuts.size()) return;
  const Cut& cut = s.board.cuts[row];
  const bool left = s.board.hand == Hand::left;
  const Point at{cut.at[0], left ? -cut.at[1] : cut.at[1]};
  const double z = cut.from == CutFrom::below ? 0 : s.surface.thickness;
  const double turn = (left ? -1 : 1) * cut.turn_degrees * std::numbers::pi / 180;
  const double along = cut.shape == CutShape::dot ? cut.diameter.value_or(0) : cut.along.value_or(0);
  if (along > 0) {
    const Point half = turned({along / 2, 0}, turn), a = at - half, b = at + half;
    s.between(s.at(a.x, a.y, z), s.at(b.x, b.y, z), s.mm(along));
  }
  if (cut.across && cut.shape != CutShape::dot) {
    const Point half = turned({0, *cut.across / 2}, turn), a = at - half, b = at + half;
    s.between(s.at(a.x, a.y, z), s.at(b.x, b.y, z), s.mm(*cut.across));
  }
  s.note(s.at(at.x, at.y, z), std::isinf(cut.depth) ? "right through" : s.mm(cut.depth) + " deep");
}

void for_blank(Sketch& s, const std::string& key) {
  if (plain_key(key).rfind("cuts", 0) == 0) return for_cuts(s, key);
  if (plain_key(key).rfind("pins", 0) == 0 && s.board.pins) return for_pins(s);
  const Box& b = s.layout.blank;
  const double z = key == "work.thickness_to" ? raw_top(s.board, s.layout) : s.layout.blank_thickness;
  if (key == "blank.at") {
    s.between(s.at(b.low.x, b.low.y, z), s.at(0, b.low.y, z), s.mm(-b.low.x));
    s.between(s.at(0, b.low.y, z), s.at(0, 0, z), s.mm(-b.low.y));
  }
  s.between(s.at(b.low.x, b.high.y, z), s.at(b.high.x, b.high.y, z), "");
  s.between(s.at(b.low.x, b.low.y, z), s.at(b.low.x, b.high.y, z), "");
  s.between(s.at(b.low.x, b.low.y, z), s.at(b.high.x, b.low.y, z), s.mm(b.high.x - b.low.x));
  s.between(s.at(b.high.x, b.low.y, z), s.at(b.high.x, b.high.y, z), s.mm(b.high.y - b.low.y));
  s.between(s.at(b.low.x, b.low.y, 0), s.at(b.low.x, b.low.y, z), s.mm(z));
}

void for_neck(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  if (!s.board.neck) return;
  const Neck& n = *s.board.neck;
  const double end = n.body_at.value_or(l.heel_end), low = -0.5;
  const auto width = [&](double x, double wide) {
    s.between(s.at(x, -wide / 2, low), s.at(x, wide / 2, low), s.mm(wide));
  };
  if (n.channel_width && n.channel_depth && key.rfind("neck.channel", 0) == 0) {
    const double from = n.channel_from.value_or(0), to = n.channel_to.value_or(end), half = *n.channel_width / 2;
    for (const double y : {-half, half}) s.between(s.at(from, y, low), s.at(to, y, low), "");
    s.between(s.at(from, -half, low), s.at(from, half, low), s.mm(2 * half));
    return s.note(s.at((from + to) / 2, 0, low), "channel " + s.mm(*n.channel_depth) + " deep");
  }
  if (n.limit && key == "neck.limit") {
    const double y = outside(l);
    s.between(s.at(*n.limit, -y, 0), s.at(*n.limit, y, 0), "");
    return s.note(s.at(*n.limit, 0, s.surface.thickness), "no further than " + s.mm(*n.limit));
  }
  if (n.joint_fret && *n.joint_fret < static_cast<int>(l.frets.size()))
    s.note(s.on(l.frets[static_cast<std::size_t>(*n.joint_fret)].middle.x, 0, 1),
           "joint, " + s.mm(l.frets[static_cast<std::size_t>(*n.joint_fret)].middle.x));
  if (n.nut_width) width(0, *n.nut_width);
  if (n.body_width) width(end, *n.body_width);
}

}  // namespace

std::vector<Dimension> dimensions_for(const std::string& key, const PreparedBoard& prepared, const Manner& manner) {
  Sketch s{prepared.board(), prepared.layout(), prepared.surface(), manner, {}};
  if (s.layout.frets.empty()) return {};
  switch (group_of_key(key)) {
    case 0:
      for_scale(s, key);
      break;
    case 1:
      for_strings(s, key);
      break;
    case 2:
      for_shape(s, key);
      break;
    case 3:
      for_surface(s, key);
      break;
    case 4:
      for_nut_and_slots(s, key);
      break;
    case 5:
      for_inlays(s, key);
      break;
    case 6:
      for_blank(s, key);
      break;
    case 8:
      for_neck(s, key);
      break;
    default:
      break;
  }
  return std::move(s.out);
}

}  // namespace sagitta::viewer
