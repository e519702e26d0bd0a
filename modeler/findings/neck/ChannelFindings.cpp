#include <algorithm>
#include <limits>

#include "board/CutSide.hpp"
#include "inlay/FitTolerance.hpp"
#include "inlay/Flatten.hpp"
#include "layout/SlotLines.hpp"
#include "layout/Taper.hpp"
#include "neck/NeckFamilies.hpp"
#include "neck/NeckShape.hpp"
#include "plan/Feature.hpp"
#include "polygon/Gap.hpp"
#include "rules/Work.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

struct Channel {
  double from, to, half;
  RoundedPolygon shape() const { return {{{from, -half}, {to, -half}, {to, half}, {from, half}}, 0}; }
};

/// The channel in the neck's file, where the neck's place in it is known.
std::optional<FoundChannel> found_channel(const Subject& subject) {
  if (!subject.neck || !subject.neck->shape || !is_measured(*subject.neck->shape)) return {};
  return channel_in(*subject.neck->shape);
}

std::optional<Channel> channel_of(const Subject& subject) {
  const auto& neck = subject.prepared.board().neck;
  if (!neck) return {};
  if (!neck->channel_width) {
    const auto found = found_channel(subject);
    if (!found) return {};
    return Channel{std::max(found->from, subject.prepared.layout().nut_end),
                   std::min(found->to, subject.prepared.layout().heel_end), found->width / 2};
  }
  const double from = std::max(neck->channel_from.value_or(0), subject.prepared.layout().nut_end);
  const double to =
      std::min(neck->channel_to.value_or(subject.prepared.layout().heel_end), subject.prepared.layout().heel_end);
  if (to <= from) return {};
  return Channel{from, to, *neck->channel_width / 2};
}

/// The least wood over the channel, under what.
struct Thin : OverChannel {
  Thin() { left = std::numeric_limits<double>::infinity(); }
  void take(double wood, Point p, const FeatureId& id, const std::string& name) {
    if (wood < left) left = wood, at = p, where = id, feature = name;
  }
};

/// The part of a cut of the builder's own that lies over the channel.
Region over_channel(const FittedCut& cut, const Channel& channel) {
  return intersection(flattened(cut.outlines, tolerance::fine_chords),
                      flattened({outline(channel.shape())}, tolerance::fine_chords));
}

/// Cuts of the builder's own from the top, by their floor.
void take_cuts(const Subject& subject, const Channel& channel, Thin& thin) {
  const Board& board = subject.prepared.board();
  for (const FittedCut& fitted : subject.prepared.inlays().cuts) {
    const Cut& cut = board.cuts[static_cast<std::size_t>(fitted.cut)];
    if (is_through(cut) || is_from_below(cut)) continue;
    for (const Polygon& part : over_channel(fitted, channel))
      for (const Point& p : part) thin.take(lowest_floor(subject, p), p, id_of(fitted), "cut \"" + cut.name + "\"");
  }
}

Thin thinnest(const Subject& subject, const Channel& channel) {
  Thin thin;
  for (const Slot& slot : subject.prepared.layout().slots)
    if (distance(slot_shape(subject.prepared.layout(), slot), channel.shape()) <= 0)
      for (const double y : {-channel.half, 0.0, channel.half}) {
        const Point way = slot.treble_end - slot.bass_end;
        const Point p = slot.bass_end + ((y - slot.bass_end.y) / way.y) * way;
        if (p.x >= channel.from && p.x <= channel.to)
          thin.take(slot_floor(subject, p), p, id_of(slot), slot_name(slot));
      }
  for (const LetPiece& let : subject.let) {
    const Region both = let.taken(outline(channel.shape()));
    if (both.empty()) continue;
    const Box box = bounds(both);
    thin.take(let.floor(), between(box.low, box.high, 0.5), let.where(), let.name());
  }
  take_cuts(subject, channel, thin);
  if (const auto& nut = subject.prepared.layout().nut; nut && channel.from < nut->face.x)
    for (const double y : {0.0, -channel.half, channel.half}) {
      const Point p = nut->face + y / nut->direction.y * nut->direction;
      thin.take(seat_floor(subject, p), p, {Kind::nut_seat}, "the nut's seat");
    }
  return thin;
}

void judge_pins(const Subject& subject, const Channel& channel, Judge& judge) {
  for (std::size_t i = 0; i < subject.prepared.layout().pins.size(); ++i) {
    const Pin& pin = subject.prepared.layout().pins[i];
    const double wall = distance(RoundedPolygon{{pin.centre}, pin.radius}, channel.shape());
    const FeatureId id{Kind::pin, static_cast<int>(i)};
    const std::string name = feature_name(id);
    judge.hold(rule("pin-in-channel"), wall, {pin.centre, 0, id, name},
               wall > 0
                   ? "between " + name + " and the neck's channel only " + judge.shown(wall) + " of the neck is left"
                   : name + " lies over the neck's channel: it holds nothing",
               "move it " + judge.shown(judge.limit(rule("pin-in-channel")) - wall) + " away from the channel");
  }
}

/// Cuts from below that come near the channel without opening into it.
void judge_cuts_below(const Subject& subject, const Channel& channel, Judge& judge) {
  const Board& board = subject.prepared.board();
  for (const FittedCut& fitted : subject.prepared.inlays().cuts) {
    const Cut& cut = board.cuts[static_cast<std::size_t>(fitted.cut)];
    if (!is_from_below(cut) || !over_channel(fitted, channel).empty()) continue;
    const Gap wall = gap(fitted.outlines, {outline(channel.shape())});
    const std::string name = "cut \"" + cut.name + "\"";
    judge.hold(
        rule("cut-beside-channel"), wall.width, {wall.a, 0, id_of(fitted), name},
        "between " + name + " and the neck's channel only " + judge.shown(wall.width) + " of the glue face is left",
        "move it " + judge.shown(judge.limit(rule("cut-beside-channel")) - wall.width) +
            " away from the channel, or let it open into it");
  }
}

void judge_land(const Subject& subject, const Channel& channel, Judge& judge) {
  const auto nearer_edge = [&](double x) {
    return std::min(subject.prepared.layout().edge(0, x), subject.prepared.layout().edge(1, x));
  };
  const double x = nearer_edge(channel.from) < nearer_edge(channel.to) ? channel.from : channel.to;
  const double land = nearer_edge(x) - channel.half;
  const std::string side = taper_in(subject.prepared.layout()).symmetric() ? "each side" : "the narrower side";
  judge.hold(rule("glue-land-narrow"), land, {{x, channel.half}, 0, {Kind::neck_channel}, "the neck's channel"},
             "beside the channel only " + judge.shown(land) + " is left on " + side + " to glue the board to",
             "use a narrower channel, or end it before the neck gets so narrow");
}

/// The depth as the keys say it, else as the neck's file has it.
void judge_depth(const Subject& subject, Judge& judge) {
  const auto& neck = subject.prepared.board().neck;
  if (!neck) return;
  const auto found = found_channel(subject);
  const auto depth = neck->channel_depth ? neck->channel_depth : found ? found->depth : std::nullopt;
  if (!depth) return;
  const Spot spot{{neck->channel_from.value_or(0), 0}, -*depth, {Kind::neck_channel}, "the neck's channel"};
  judge.hold(
      rule("channel-deep"), *depth, spot, "the rod channel is " + judge.shown(*depth) + " deep",
      "look whether neck.channel_depth is right; a truss rod needs about " + judge.shown(6) + " to " + judge.shown(12));
  judge.hold(
      rule("channel-shallow"), *depth, spot, "the rod channel is only " + judge.shown(*depth) + " deep",
      "look whether neck.channel_depth is right; a truss rod needs about " + judge.shown(6) + " to " + judge.shown(12));
}

}  // namespace

std::optional<OverChannel> least_over_channel(const Subject& subject) {
  const auto channel = channel_of(subject);
  if (!channel) return {};
  const Thin thin = thinnest(subject, *channel);
  if (thin.feature.empty()) return {};
  return thin;
}

void judge_channel(const Subject& subject, Judge& judge) {
  judge_depth(subject, judge);
  const auto channel = channel_of(subject);
  if (!channel) return;
  const Thin thin = thinnest(subject, *channel);
  const Rule& over = rule("thin-over-channel");
  if (!thin.feature.empty())
    judge.hold(over, thin.left, {thin.at, thin.left, thin.where, thin.feature},
               "under " + thin.feature + " the channel leaves the board " + judge.shown(thin.left) +
                   " of wood with nothing beneath it",
               "make the board " + judge.shown(judge.limit(over) - thin.left) + " thicker, or the cut shallower",
               Fix{"board.thickness", judge.up(subject.prepared.surface().thickness + judge.limit(over) - thin.left)});
  judge_pins(subject, *channel, judge);
  judge_cuts_below(subject, *channel, judge);
  judge_land(subject, *channel, judge);
  judge.hold(
      rule("glue-in-channel"), 2 * channel->half, {{channel->from, 0}, 0, {Kind::neck_channel}, "the neck's channel"},
      "the board closes a channel " + judge.shown(2 * channel->half) + " wide: glue that runs into it locks the rod",
      "cover the channel with a strip or tape before the glue goes on");
}

}  // namespace sagitta
