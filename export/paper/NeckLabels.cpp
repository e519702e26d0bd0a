#include "paper/NeckLabels.hpp"

#include <algorithm>

#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// Of the letters, over and under their baseline.
constexpr double over_baseline = 2.2, under_baseline = 0.8;
/// Between words and a line.
constexpr double room = 0.6;

bool meet(const Box& a, const Box& b) {
  return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

Box grown(const Box& box, double by) { return {box.low - Point{by, by}, box.high + Point{by, by}}; }

class Placing {
 public:
  Placing(PdfBook& ruler, const Board& board, const NeckPlan& plan) : ruler_(ruler), board_(board), plan_(plan) {
    if (plan.face.channel) taken_.push_back(grown(bounds(*plan.face.channel), room));
    for (const Pin& pin : plan.face.pins) taken_.push_back(grown({pin.centre, pin.centre}, pin.radius + room));
    for (const DeepCut& cut : plan.deep_cuts)
      for (const Loop& loop : cut.outlines) taken_.push_back(grown(bounds(loop), room));
    keep_off({plan.face.nut_line.a, plan.face.nut_line.b});
    if (plan.face.joint) keep_off(*plan.face.joint);
    keep_off(plan.ledge);
    keep_off({{plan.ledge.a.x, 0}, {plan.sides[0].b.x, 0}});
    for (const LineSegment& side : plan.sides) keep_off(side);
  }

  void name_pin(const Pin& pin) {
    const std::string text = "pin, " + measure(board_, 2 * pin.radius) + " wide";
    const double wide = ruler_.width_of(text), off = pin.radius + 1, tall = over_baseline + under_baseline;
    const double out = pin.centre.y < 0 ? -1 : 1;
    std::vector<Point> middles;
    for (const double up : {out * (off + tall / 2), 0.0, 2 * out * tall, -out * (off + tall / 2), 4 * out * tall})
      for (const double side : {1.0, -1.0}) middles.push_back(pin.centre + Point{side * (off + wide / 2), up});
    put(text, wide, middles);
  }

  void name_channel() {
    const Box box = bounds(*plan_.face.channel);
    const auto& depth = board_.neck->channel_depth;
    const std::string text = "rod channel, " + measure(board_, box.high.y - box.low.y) + " wide" +
                             (depth ? ", " + measure(board_, *depth) + " deep" : "");
    const double wide = ruler_.width_of(text), tall = over_baseline + under_baseline;
    std::vector<Point> middles;
    for (double x = box.low.x + 40; x < box.high.x; x += 15)
      for (const double y : {box.low.y - tall / 2 - 2 * room, box.high.y + tall / 2 + 2 * room})
        middles.push_back({x + wide / 2, y});
    if (middles.empty()) middles.push_back({box.low.x + wide / 2, box.low.y - tall});
    put(text, wide, middles);
  }

  void name_cut(const DeepCut& cut) {
    if (cut.outlines.empty()) return;
    const Box box = bounds(cut.outlines.front());
    const std::string text = cut.name + (cut.left > 0 ? ": " + measure(board_, cut.left) + " left" : ": open here");
    const double wide = ruler_.width_of(text), tall = over_baseline + under_baseline;
    std::vector<Point> middles;
    for (int i = 0; i < 6; ++i)
      for (const double x : {box.low.x, box.high.x + 2 * room})
        for (const double y : {box.high.y + (i + 0.5) * tall + 2 * room, box.low.y - (i + 0.5) * tall - 2 * room})
          middles.push_back({x + wide / 2, y});
    put(text, wide, middles);
  }

  std::vector<NeckLabel> labels;

 private:
  /// A slanted line in pieces, so that words may stand close to it.
  void keep_off(const LineSegment& line) {
    constexpr int pieces = 40;
    for (int i = 0; i < pieces; ++i) {
      Box box;
      box.add(between(line.a, line.b, 1.0 * i / pieces)), box.add(between(line.a, line.b, 1.0 * (i + 1) / pieces));
      taken_.push_back(grown(box, room / 2));
    }
  }

  /// At the first of the places where nothing lies; at the first of all where there is none.
  void put(const std::string& text, double wide, const std::vector<Point>& middles) {
    const Point half{wide / 2, (over_baseline + under_baseline) / 2};
    const auto box_at = [&](Point middle) { return Box{middle - half, middle + half}; };
    const auto is_free = [&](Point middle) {
      return std::none_of(taken_.begin(), taken_.end(), [&](const Box& box) { return meet(box, box_at(middle)); });
    };
    const auto found = std::find_if(middles.begin(), middles.end(), is_free);
    const Box box = box_at(found == middles.end() ? middles.front() : *found);
    labels.push_back({text, box.low + Point{0, under_baseline}, box});
    taken_.push_back(grown(box, room / 2));
  }

  PdfBook& ruler_;
  const Board& board_;
  const NeckPlan& plan_;
  std::vector<Box> taken_;
};

}  // namespace

std::vector<NeckLabel> neck_labels(PdfBook& ruler, const Board& board, const NeckPlan& plan) {
  Placing placing(ruler, board, plan);
  for (const Pin& pin : plan.face.pins) placing.name_pin(pin);
  if (plan.face.channel) placing.name_channel();
  for (const DeepCut& cut : plan.deep_cuts) placing.name_cut(cut);
  return std::move(placing.labels);
}

}  // namespace sagitta
