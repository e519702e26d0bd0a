#include <algorithm>
#include <cmath>

#include "neck/NeckFamilies.hpp"
#include "neck/NeckShape.hpp"
#include "plane/Tolerance.hpp"
#include "rules/ShownMeasures.hpp"
#include "rules/Subject.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

void judge_sides(const Subject& subject, const NeckShape& shape, double trim, Judge& judge) {
  const std::vector<Overlap> all = overlaps(shape, subject.prepared.layout());
  if (all.empty()) return;
  const auto [in, out] =
      std::minmax_element(all.begin(), all.end(), [](const Overlap& a, const Overlap& b) { return a.out < b.out; });
  const auto spot = [&](const Overlap& place) {
    return Spot{{place.x, place.side * subject.prepared.layout().edge(place.side < 0 ? 0 : 1, place.x)},
                0,
                {.kind = Kind::neck_side, .part = place.side < 0 ? FeatureId::lower : FeatureId::upper},
                place.side < 0 ? "the lower side of the neck" : "the upper side of the neck"};
  };
  const double stands = out->out - trim;
  const double lack = 2 * (stands - judge.limit(rule("neck-outside-board")));
  judge.hold(rule("neck-outside-board"), stands, spot(*out),
             "in its file " + spot(*out).feature + " stands " + judge.shown(stands) +
                 " out beyond the board at x = " + judge.shown(out->x) + (trim > 0 ? ", trimming included" : ""),
             "make the board " + judge.shown(lack) + " wider there, or look whether the neck is drawn straight",
             subject.prepared.board().board.edge_margin ? widened(subject, out->x, lack, judge) : std::nullopt);
  judge.hold(rule("board-outside-neck"), -in->out, spot(*in),
             "at x = " + judge.shown(in->x) + " the board stands " + judge.shown(-in->out) + " out beyond " +
                 spot(*in).feature + " in its file",
             "make the board narrower there, or plan to trim it to the neck");
}

void judge_face(const Subject& subject, const NeckShape& shape, Judge& judge) {
  const GluePlane plane = glue_plane(shape);
  const double length = subject.prepared.layout().heel_end - subject.prepared.layout().nut_end,
               half = subject.prepared.layout().half_width(0);
  const double lengthwise = std::abs(plane.along) * length, crosswise = std::abs(plane.across) * 2 * half;
  const double tilt = std::max(lengthwise, crosswise);
  const Spot spot{{subject.prepared.layout().heel_end, 0}, plane.height, {Kind::neck_face}, "the neck's glue face"};
  judge.hold(rule("glue-face-tilted"), tilt, spot,
             "the neck's glue face rises by " + judge.shown(lengthwise) + " along the board and by " +
                 judge.shown(crosswise) + " across it",
             "draw the neck with its glue face level, or plane it");
  const double twist = std::abs(glue_twist(shape, subject.prepared.layout()));
  judge.hold(rule("glue-face-twisted"), twist, spot,
             "the neck's glue face is twisted: at one end a side stands " + judge.shown(twist) +
                 " above the plane of the rest",
             "plane the glue face flat before the board is glued on");
  judge.hold(rule("glue-face-elsewhere"), std::abs(plane.height), spot,
             "the neck's glue face lies at z = " + judge.shown(plane.height) +
                 " in its file; it was taken as the board's z = 0",
             "make sure that the neck is drawn as the board lies, x = 0 at the nut and its middle at y = 0");
}

void judge_found_channel(const Subject& subject, const NeckShape& shape, Judge& judge) {
  const auto found = channel_in(shape);
  const Neck& neck = *subject.prepared.board().neck;
  if (!found || !neck.channel_width) return;
  double off = std::abs(found->width - *neck.channel_width);
  if (neck.channel_from) off = std::max(off, std::abs(found->from - *neck.channel_from));
  if (neck.channel_to) off = std::max(off, std::abs(found->to - *neck.channel_to));
  judge.hold(rule("channel-differs"), off, {{found->from, 0}, 0, {Kind::neck_channel}, "the neck's channel"},
             "in the neck's file the channel is " + judge.shown(found->width) + " wide and runs from x = " +
                 judge.shown(found->from) + " to " + judge.shown(found->to) + "; the board file says something else",
             "make neck.channel_width, channel_from and channel_to agree with the neck");
}

}  // namespace

void judge_neck_file(const Subject& subject, Judge& judge) {
  if (!subject.neck || !subject.prepared.board().neck) return;
  if (!subject.neck->shape) {
    judge.hold(rule("neck-file-unread"), 1, {{}, 0, {Kind::neck_file}, "the neck's file"}, subject.neck->failure,
               "export the neck again as a STEP solid, drawn as the board lies, or leave neck.file out");
    return;
  }
  const NeckShape& shape = *subject.neck->shape;
  const Neck& neck = *subject.prepared.board().neck;
  judge_sides(subject, shape, neck.state == NeckState::rough ? neck.trim : 0, judge);
  judge_face(subject, shape, judge);
  judge_found_channel(subject, shape, judge);
  judge.hold(rule("neck-into-board"), shape.interference, {{0, 0}, 0, {Kind::neck}, "the neck"},
             "the neck stands in the board's place: " + shown_volume(subject.prepared.board(), shape.interference) +
                 " of it lie above the glue face under the board's outline",
             "look at what rises there: a rod's end, a fillet, the heel");
}

}  // namespace sagitta
