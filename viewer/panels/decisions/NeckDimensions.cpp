#include <algorithm>
#include <cmath>

#include "decisions/Sketch.hpp"
#include "neck/HeightChain.hpp"

namespace sagitta::viewer {

namespace {

constexpr double under = -0.5;  ///< z of what is drawn below the glue face

/// Width of the neck's wood at x, under the glue face.
void neck_width(Sketch& s, double x, double wide) {
  s.between(s.at(x, -wide / 2, under), s.at(x, wide / 2, under), s.mm(wide));
}

void channel(Sketch& s, const Neck& n) {
  const double from = n.channel_from.value_or(0), to = n.channel_to.value_or(n.body_at.value_or(s.layout.heel_end));
  const double half = *n.channel_width / 2;
  for (const double y : {-half, half}) s.between(s.at(from, y, under), s.at(to, y, under), "");
  s.between(s.at(from, -half, under), s.at(from, half, under), s.mm(2 * half));
  s.note(s.at((from + to) / 2, 0, under), "channel " + s.mm(*n.channel_depth) + " deep");
}

/// What the neck is wider than the board on each side, at the nut and at the joint.
void beside(Sketch& s, double by, double joint) {
  for (const double x : {0.0, joint})
    for (const int side : {0, 1}) {
      const double y = s.edge_y(side, x), out = side == 0 ? -by : by;
      s.between(s.at(x, y, under), s.at(x, y + out, under), s.mm(by));
    }
}

/// From the fretted surface to the neck's back.
void depth_at(Sketch& s, int fret, double depth) {
  if (fret >= static_cast<int>(s.layout.frets.size())) return;
  const double x = s.layout.frets[static_cast<std::size_t>(fret)].middle.x, top = s.top(x, 0);
  s.between(s.at(x, 0, top - depth), s.at(x, 0, top), s.mm(depth));
}

/// The neck where nothing of one key is to be shown: its widths and its joint.
void whole_neck(Sketch& s, const Neck& n, double joint) {
  if (n.joint_fret) s.note(s.on(joint, 0, 1), "joint, " + s.mm(joint));
  if (n.nut_width) neck_width(s, 0, *n.nut_width);
  if (n.body_width) neck_width(s, n.body_at.value_or(s.layout.heel_end), *n.body_width);
  if (s.out.empty()) s.width_at(0), s.width_at(joint);
}

}  // namespace

void dimension_neck(Sketch& s, const std::string& key) {
  if (!s.board.neck) return;
  const Neck& n = *s.board.neck;
  const double joint = joint_place(s.prepared);
  if (n.channel_width && n.channel_depth && key.starts_with("neck.channel")) return channel(s, n);
  if (n.limit && key == "neck.limit") {
    const double y = outside(s.layout);
    s.between(s.at(*n.limit, -y, 0), s.at(*n.limit, y, 0), "");
    return s.note(s.at(*n.limit, 0, s.surface.thickness), "no further than " + s.mm(*n.limit));
  }
  if (n.trim > 0 && key == "neck.trim") return beside(s, n.trim, joint);
  if (n.allowance > 0 && key == "neck.allowance") return beside(s, n.allowance, joint);
  if (n.depth_first && key == "neck.depth_first") return depth_at(s, 1, *n.depth_first);
  if (n.depth_twelfth && key == "neck.depth_twelfth") return depth_at(s, 12, *n.depth_twelfth);
  if (key == "neck.angle" || key == "neck.joint") return s.note(s.at(joint, 0, under), s.named(key));
  if (n.file_nut && key == "neck.file_nut") return s.note(s.at(0, 0, under), s.named(key));
  if (n.file_heel && key == "neck.file_heel") return s.note(s.at(s.layout.heel_end, 0, under), s.named(key));
  whole_neck(s, n, joint);
}

void dimension_heights(Sketch& s, const std::string& key) {
  const auto chain = height_chain(s.prepared);
  if (!chain || chain->strings.empty()) return s.width_at(0);
  const Heights heights = s.board.height.value_or(Heights());
  const auto place = [&](int fret) {
    return s.layout.frets[static_cast<std::size_t>(std::clamp(fret, 0, static_cast<int>(s.layout.frets.size()) - 1))]
        .middle.x;
  };
  if (key == "height.relief" || key == "height.relief_fret")
    return s.note(s.on(place(heights.relief_fret), 0, 1), "relief " + s.mm(chain->relief));
  const StringHeights* const outer[] = {&chain->strings.front(), &chain->strings.back()};
  for (const StringHeights* string : outer) {
    const LineSegment& line = s.layout.strings[static_cast<std::size_t>(string->string)];
    const double nut_y = line.a.y, saddle_y = line.b.y;
    s.between(s.at(string->nut_x, nut_y, string->nut_z), s.at(string->saddle_x, saddle_y, string->saddle_z), "");
    if (key == "height.nut")
      s.between(s.on(string->nut_x, nut_y, s.board.wire.crown_height), s.at(string->nut_x, nut_y, string->nut_z),
                s.mm(string->nut_z - s.top(string->nut_x, nut_y) - s.board.wire.crown_height));
    if (!key.starts_with("height.action")) continue;
    for (const FretHeight& fret : string->frets)
      if (fret.fret == heights.action_fret)
        s.between(s.at(fret.at.x, fret.at.y, fret.top), s.at(fret.at.x, fret.at.y, fret.top + fret.height),
                  s.mm(fret.height));
  }
  const double joint = joint_place(s.prepared), saddle = outer[0]->saddle_x;
  if (key == "height.body_step" && heights.body_step)
    s.between(s.at(joint, 0, 0), s.at(joint, 0, -*heights.body_step), s.mm(*heights.body_step));
  if (key == "height.bridge" && heights.bridge)
    s.between(s.at(saddle, 0, chain->saddle_z - *heights.bridge), s.at(saddle, 0, chain->saddle_z),
              s.mm(*heights.bridge));
}

}  // namespace sagitta::viewer
