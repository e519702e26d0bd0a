#include "decisions/Dimensions.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "board/ShapeKeys.hpp"
#include "decisions/Decisions.hpp"
#include "decisions/Sketch.hpp"
#include "layout/CutMiddle.hpp"
#include "layout/LastFret.hpp"

namespace sagitta::viewer {

namespace {

/// Where the heel end cuts slots.
void note_cut_slots(Sketch& s) {
  for (const Slot& slot : s.layout.slots)
    for (const auto& [open, end] : {std::pair{slot.bass_open, slot.bass_end}, {slot.treble_open, slot.treble_end}})
      if (open) s.note(s.on(end.x, end.y, 1), "fret " + std::to_string(slot.fret) + " cut here");
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

void for_binding(Sketch& s, const std::string& key) {
  const Binding& binding = *s.board.binding;
  const double x = s.layout.heel_end / 2;
  const bool lined = key.starts_with("binding.line");
  for (const int side : {0, 1}) {
    const double edge = s.edge_y(side, x), inward = side == 0 ? 1 : -1, top = s.top(x, edge);
    const double wide = lined ? ledge_width(binding) : binding.width;
    if (key != "binding.height") {
      s.between(s.on(x, edge), s.on(x, edge + inward * wide), s.mm(wide));
      continue;
    }
    const double tall = binding.height > 0 ? binding.height : top;
    s.between(s.at(x, edge, top - tall), s.at(x, edge, top), s.mm(tall));
  }
}

void for_shape(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
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
  if (key == "board.ends_cut_slots") return note_cut_slots(s);
  if (key.starts_with("binding.") && s.board.binding) return for_binding(s, key);
  if (key == "finish.sanding") return s.note(s.on(heel / 2, 0, 1), s.mm(s.board.sanding) + " sanded off");
  s.width_at(0), s.width_at(heel);
}

void for_nut(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  const double y = -l.edge(0, 0) - 4;
  if (key == "nut.floor" || key == "nut.seat" || key == "nut.distance" || !l.nut)
    return s.note(s.on(l.nut ? l.nut->face.x : 0, 0, 1), s.named(key));
  if (key == "nut.compensation" && s.board.nut.compensation > 0)
    return s.between(s.on(0, y), s.on(s.board.nut.compensation, y), s.mm(s.board.nut.compensation));
  if (!l.nut->shelf) s.between(s.on(l.nut->back.x, y), s.on(l.nut->face.x, y), s.mm(s.board.nut.width));
  s.note(s.on(l.nut->face.x, 0, 1), "seat " + s.mm(l.nut->depth) + " deep");
}

void for_slots(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  if (l.slots.empty()) return s.note(s.on(last_fret(l).middle.x, 0, 1), s.named(key));
  const Slot& slot = l.slots[l.slots.size() / 2];
  const Point middle = sagitta::between(slot.bass_end, slot.treble_end, 0.5);
  const bool of_slot = key == "slots.width" || key == "slots.depth" || key == "wire.tang_depth";
  const std::string text =
      of_slot ? "slot " + s.mm(slot.width) + " wide, " + s.mm(slot_depth(s.board)) + " deep" : s.named(key);
  s.note(s.on(middle.x, middle.y, 0.5), text);
}

/// The first dot of each edge.
void for_side_dots(Sketch& s, const std::string& key) {
  for (const int side : {0, 1}) {
    const auto& dots = s.layout.side_dots;
    const auto dot = std::find_if(dots.begin(), dots.end(), [&](const SideDot& each) { return each.side == side; });
    if (dot == dots.end()) continue;
    const bool named = key == "side_dots.edge" || key == "side_dots.in" || key == "side_dots.spread";
    s.note(s.at(dot->mouth.x, dot->mouth.y, s.top(dot->mouth.x, dot->mouth.y) / 2),
           named ? s.named(key) : "\u00f8 " + s.mm(2 * dot->radius) + ", " + s.mm(dot->depth) + " deep");
  }
}

void for_inlays(Sketch& s, const std::string& key) {
  const Layout& l = s.layout;
  const auto wanted = static_cast<int>(row_of(key));
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

void for_pins(Sketch& s, const std::string&) {
  for (const Pin& p : s.layout.pins) {
    const Point pin = p.centre;
    const double r = s.board.pins->diameter / 2;
    s.between(s.at(pin.x - r, pin.y, 0), s.at(pin.x + r, pin.y, 0),
              "\u00f8 " + s.mm(2 * r) + " at " + shown_bare(pin.x, s.manner) + ", " + shown_bare(pin.y, s.manner));
  }
}

void for_cuts(Sketch& s, const std::string& key) {
  const std::size_t row = row_of(key);
  if (row >= s.board.cuts.size()) return;
  const Cut& cut = s.board.cuts[row];
  const bool left = s.board.hand == Hand::left;
  const Point at = middle_of(cut, s.board.hand);
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

/// Where the machine's zero lies in this set-up.
void for_zero(Sketch& s, std::size_t row) {
  if (row >= s.board.setups.size()) return;
  const Setup& setup = s.board.setups[row];
  const Box& b = s.layout.blank;
  const double z = setup.z_zero == ZZero::blank_top ? raw_top(s.board, s.layout)
                   : setup.z_zero == ZZero::bed     ? -setup.tape
                                                    : 0;
  const Point place = setup.zero == Zero::corner   ? b.low
                      : setup.zero == Zero::centre ? sagitta::between(b.low, b.high, 0.5)
                                                   : Point{0, 0};
  s.note(s.at(place.x, place.y, z), "zero of x, y and z");
}

void for_blank(Sketch& s, const std::string& key) {
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
  if (key.starts_with("setups")) for_zero(s, row_of(key));
}

using Dimensioning = void (*)(Sketch&, const std::string&);
/// Who draws the dimensions of each table's keys. What has no place on the board is not among them.
constexpr std::pair<std::string_view, Dimensioning> by_table[] = {{"scale", for_scale},
                                                                  {"strings", for_strings},
                                                                  {"board", for_shape},
                                                                  {"tongue", for_tongue},
                                                                  {"binding", for_shape},
                                                                  {"finish", for_shape},
                                                                  {"surface", dimension_surface},
                                                                  {"scallop", dimension_surface},
                                                                  {"edges", dimension_surface},
                                                                  {"nut", for_nut},
                                                                  {"wire", for_slots},
                                                                  {"slots", for_slots},
                                                                  {"inlays", for_inlays},
                                                                  {"side_dots", for_side_dots},
                                                                  {"blank", for_blank},
                                                                  {"pins", for_pins},
                                                                  {"cuts", for_cuts},
                                                                  {"work", for_blank},
                                                                  {"setups", for_blank},
                                                                  {"neck", dimension_neck},
                                                                  {"height", dimension_heights},
                                                                  {"measured", dimension_measured}};

}  // namespace

std::vector<Dimension> dimensions_for(const std::string& key, const PreparedBoard& prepared, const Manner& manner) {
  Sketch s{prepared, prepared.board(), prepared.layout(), prepared.surface(), manner, {}};
  if (s.layout.frets.empty()) return {};
  const std::string table = key.substr(0, key.find_first_of("[."));
  for (const auto& [name, draw] : by_table)
    if (name == table) draw(s, key);
  return std::move(s.out);
}

}  // namespace sagitta::viewer
