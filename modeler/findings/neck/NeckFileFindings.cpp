#include <algorithm>
#include <cmath>

#include "neck/HeightChain.hpp"
#include "neck/NeckFamilies.hpp"
#include "neck/NeckShape.hpp"
#include "neck/NeckWords.hpp"
#include "plane/Tolerance.hpp"
#include "rules/ShownMeasures.hpp"
#include "rules/Subject.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

/// What of the neck's sides is compared: between the nut line and the joint.
std::vector<Overlap> compared_sides(const Subject& subject, const NeckShape& shape) {
  const BoardSeat seat = board_seat(subject.prepared);
  std::vector<Overlap> all = overlaps(shape, subject.prepared.layout());
  // Where the keys give no joint the neck's sides end where its body begins.
  const double to = seat.joint_given ? seat.compare_to : std::min(seat.compare_to, shape.body_from.value_or(1e300));
  std::erase_if(all, [&](const Overlap& o) { return o.x < 0 || o.x > to; });
  return all;
}

/// The stretch of x where one side stands out by more than `most`.
std::string stretch_words(const std::vector<Overlap>& all, int side, double most, const Judge& judge) {
  double from = 1e300, to = -1e300;
  for (const Overlap& o : all)
    if (o.side == side && o.out > most) from = std::min(from, o.x), to = std::max(to, o.x);
  return from > to ? "" : "from x = " + judge.shown(from) + " to " + judge.shown(to);
}

Spot side_spot(const Subject& subject, const Overlap& place) {
  const int side = place.side < 0 ? 0 : 1;
  return {{place.x, place.side * subject.prepared.layout().edge(side, place.x)},
          0,
          {.kind = Kind::neck_side, .part = place.side < 0 ? FeatureId::lower : FeatureId::upper},
          place.side < 0 ? "the lower side of the neck" : "the upper side of the neck"};
}

void judge_sides(const Subject& subject, const NeckShape& shape, double trim, Judge& judge) {
  const std::vector<Overlap> all = compared_sides(subject, shape);
  if (all.empty()) return;
  const auto [in, out] =
      std::minmax_element(all.begin(), all.end(), [](const Overlap& a, const Overlap& b) { return a.out < b.out; });
  const Spot outer = side_spot(subject, *out), inner = side_spot(subject, *in);
  const double stands = out->out - trim, most = judge.limit(rule("neck-outside-board"));
  const double lack = 2 * (stands - most);
  judge.hold(rule("neck-outside-board"), stands, outer,
             "in its file " + outer.feature + " stands " + judge.shown(stands) + " out beyond the board at x = " +
                 judge.shown(out->x) + (trim > 0 ? ", trimming included" : "") + sharing_words(shape),
             "take " + judge.shown(stands) + " off it " + stretch_words(all, out->side, trim + most, judge) +
                 ", or make the board " + judge.shown(lack) + " wider there",
             subject.prepared.board().board.edge_margin ? widened(subject, out->x, lack, judge) : std::nullopt);
  judge.hold(rule("board-outside-neck"), -in->out, inner,
             "at x = " + judge.shown(in->x) + " the board stands " + judge.shown(-in->out) + " out beyond " +
                 inner.feature + " in its file" + sharing_words(shape),
             "make the board narrower there, or plan to trim it to the neck");
}

void judge_face(const Subject& subject, const NeckShape& shape, Judge& judge) {
  const Layout& layout = subject.prepared.layout();
  const double length = layout.heel_end - layout.nut_end, half = layout.half_width(0);
  const Spot spot{{layout.heel_end, 0}, 0, {Kind::neck_face}, "the neck's glue face"};
  if (const auto lean = lean_in_file(shape)) {
    const double lengthwise = std::abs(lean->along) * length, crosswise = std::abs(lean->across) * 2 * half;
    judge.hold(rule("glue-face-tilted"), std::max(lengthwise, crosswise), spot,
               "the neck's glue face rises by " + judge.shown(lengthwise) + " along the board and by " +
                   judge.shown(crosswise) + " across it, against the nearest axis of its file",
               "draw the neck with its glue face level, or plane it");
  }
  const double twist = std::abs(glue_twist(shape, layout));
  judge.hold(rule("glue-face-twisted"), twist, spot,
             "the neck's glue face is twisted: with its nut end level, one side stands " + judge.shown(twist) +
                 " above the other at the body end",
             "plane the glue face flat before the board is glued on");
  const double bow = glue_bow(shape, layout);
  judge.hold(rule("glue-face-bowed"), std::abs(bow), spot,
             "the neck's glue face is bowed along the board: its middle lies " + judge.shown(std::abs(bow)) +
                 (bow < 0 ? " under" : " above") + " the line between its ends",
             "plane the glue face flat before the board is glued on");
  judge.hold(rule("neck-edge-rounded"), shape.edge_rounding, spot,
             "the edge of the neck's glue face is rounded by " + judge.shown(shape.edge_rounding) +
                 "; its sides were compared where the rounding ends",
             "round the edge after the board is glued on");
}

void judge_found_channel(const Subject& subject, const NeckShape& shape, Judge& judge) {
  const auto found = channel_in(shape);
  const Neck& neck = *subject.prepared.board().neck;
  const Spot spot{{found ? found->from : 0, 0}, 0, {Kind::neck_channel}, "the neck's channel"};
  judge.hold(rule("channel-missing"), neck.channel_width && !found ? 1 : 0, spot,
             "the board file gives the neck a rod channel " + judge.shown(neck.channel_width.value_or(0)) +
                 " wide, and the glue face in the neck's file has none",
             "cut the channel in the neck's model, or look whether this is the neck");
  if (!found || !neck.channel_width) return;
  double off = std::max(std::abs(found->width - *neck.channel_width), found->across);
  if (neck.channel_from) off = std::max(off, std::abs(found->from - *neck.channel_from));
  if (neck.channel_to) off = std::max(off, std::abs(found->to - *neck.channel_to));
  if (neck.channel_depth && found->depth) off = std::max(off, std::abs(*found->depth - *neck.channel_depth));
  judge.hold(
      rule("channel-differs"), off, spot,
      "in the neck's file the channel is " + channel_words(*found, judge) + "; the board file says something else",
      "make neck.channel_width, channel_depth, channel_from and channel_to agree with the neck");
}

void judge_holes(const Subject& subject, const NeckShape& shape, Judge& judge) {
  const std::vector<FoundHole> holes = holes_in(shape);
  if (holes.empty()) return;
  const auto& pins = subject.prepared.layout().pins;
  for (std::size_t i = 0; i < pins.size(); ++i) {
    const auto nearest = std::min_element(holes.begin(), holes.end(), [&](const FoundHole& a, const FoundHole& b) {
      return distance(a.centre, pins[i].centre) < distance(b.centre, pins[i].centre);
    });
    const FeatureId id{Kind::pin, static_cast<int>(i)};
    const double off = distance(nearest->centre, pins[i].centre);
    judge.hold(rule("pin-hole-differs"), off, {pins[i].centre, 0, id, feature_name(id)},
               "the hole in the neck that is nearest to " + feature_name(id) + " lies " + judge.shown(off) +
                   " from it, at x = " + judge.shown(nearest->centre.x) + ", y = " + judge.shown(nearest->centre.y),
               "bore the neck where the pin is, or move the pin");
  }
}

/// How far the ends of the board's edges lie in the neck's file from where its own frame has them.
double moved_by(const Subject& subject, const NeckShape& shape) {
  const Layout& layout = subject.prepared.layout();
  double most = 0;
  for (const double x : {0.0, layout.heel_end})
    for (const double y : {-layout.edge(0, x), layout.edge(1, x)}) {
      const Place3 there = moved(shape.place, {x, y, 0});
      most = std::max(most, std::hypot(there[0] - x, there[1] - y, there[2]));
    }
  return most;
}

/// Where the body begins in the file, against where the keys have it.
void judge_body_end(const Subject& subject, const NeckShape& shape, Judge& judge) {
  const Neck& neck = *subject.prepared.board().neck;
  if (!shape.body_from || (!neck.body_at && !neck.joint_fret)) return;
  const double joint = joint_place(subject.prepared), off = *shape.body_from - joint;
  judge.hold(rule("body-end-differs"), std::abs(off), {{joint, 0}, 0, {Kind::body_end}, "the body end"},
             "in the neck's file the body begins at x = " + judge.shown(*shape.body_from) + ", " +
                 judge.shown(std::abs(off)) + (off < 0 ? " before" : " beyond") + " " +
                 (neck.body_at ? "neck.body_at" : "fret " + std::to_string(*neck.joint_fret)),
             "set the neck otherwise, or make neck.body_at or joint_fret agree with it");
}

/// Whether the board's place on the neck is known, and what to give where it is not.
bool judge_place(const Subject& subject, const NeckShape& shape, Judge& judge) {
  const Spot spot{{0, 0}, 0, {Kind::neck_face}, "the neck's glue face"};
  const NeckPlace& place = shape.place;
  judge.hold(rule("board-in-neck-file"), shape.boards, spot,
             "the neck's file holds " + std::to_string(shape.boards) +
                 (shape.boards == 1 ? " body on the glue face that looks like the board itself: it was left out"
                                    : " bodies on the glue face that look like the board itself: they were left out"),
             "export the neck without the board, if it is something else");
  if (place.sure && place.other_hand)
    return !judge.hold(rule("neck-other-hand"), 1, spot,
                       "the neck in the file fits the mirror image of this board: it is for the other hand",
                       "mirror the neck, or set hand in the board file");
  if (shape.times != 1)
    return !judge.hold(rule("neck-unit-doubtful"), std::max(shape.times, 1 / shape.times), spot, unit_words(shape),
                       "export the neck again, in the unit that it is drawn in");
  const double compared = place.sure ? 100 * place.compared : 0;
  judge.hold(rule("neck-not-found"), compared, spot, unsure_words(shape),
             subject.prepared.board().neck->file_nut
                 ? "look whether neck.file_nut and file_heel are right, or give neck.joint_fret where the neck's glue "
                   "face ends"
                 : "give neck.file_nut and neck.file_heel, two points of the centre line in the file's own frame; "
                   "neck.joint_fret where its glue face ends at the joint");
  return is_measured(shape);
}

}  // namespace

void judge_neck_file(const Subject& subject, Judge& judge) {
  if (!subject.neck || !subject.prepared.board().neck) return;
  if (!subject.neck->shape) {
    judge.hold(rule("neck-file-unread"), 1, {{}, 0, {Kind::neck_file}, "the neck's file"}, subject.neck->failure,
               "export the neck again as a STEP solid, or leave neck.file out");
    return;
  }
  const NeckShape& shape = *subject.neck->shape;
  if (!judge_place(subject, shape, judge)) return;
  const Neck& neck = *subject.prepared.board().neck;
  judge_sides(subject, shape, neck.state == NeckState::rough ? neck.trim : 0, judge);
  judge_face(subject, shape, judge);
  judge_found_channel(subject, shape, judge);
  judge_holes(subject, shape, judge);
  judge_body_end(subject, shape, judge);
  judge.hold(rule("glue-face-elsewhere"), moved_by(subject, shape),
             {{0, 0}, 0, {Kind::neck_face}, "the neck's glue face"}, place_words(shape, judge),
             "look whether this is the face that the board is glued to");
  judge.hold(rule("neck-into-board"), shape.interference, {{0, 0}, 0, {Kind::neck}, "the neck"},
             "the neck stands in the board's place: " + shown_volume(subject.prepared.board(), shape.interference) +
                 " of it lie above the glue face under the board's outline",
             "look at what rises there: a rod's end, a fillet, the heel");
}

}  // namespace sagitta
