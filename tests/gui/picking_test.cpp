/// A ray against the mesh names what the plan says lies there.

#include <gtest/gtest.h>

#include <random>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "jobs/Building.hpp"
#include "scene/Pick.hpp"

namespace sagitta::test {
namespace {

using namespace viewer;

struct Made {
  Model model;
  std::shared_ptr<const StageModel> stage;
};

Made make(const std::string& preset) {
  Made made;
  const BoardFile file = read_board(places::source() + "/presets/" + preset + ".toml");
  InlayFitter fitter;
  made.model = *begin_model({1, file.board}, nullptr, fitter, {}, {});
  std::string trouble;
  Faults faults;
  made.stage = make_stage(*made.model.prepared, Stage::board, resting_deviation, {}, trouble, faults);
  return made;
}

/// What the layout says lies under a point seen from above; kind none too near a border to say.
FeatureId expected(const Made& made, Point p) {
  constexpr double border = 0.02;
  const Layout& l = made.model.prepared->layout();
  const Board& board = made.model.board;
  FeatureId found{FeatureId::Kind::playing_surface};
  for (const Marker& m : l.markers) {
    const double r = board.inlays[static_cast<std::size_t>(m.inlay)].diameter / 2 +
                     board.inlays[static_cast<std::size_t>(m.inlay)].clearance;
    const double d = distance(p, m.centre) - r;
    if (std::abs(d) < border) return {};
    if (d < 0) found = id_of(m);
  }
  for (const Slot& s : l.slots) {
    const Point along = unit(s.treble_end - s.bass_end);
    const double off = std::abs(cross(along, p - s.bass_end)) - s.width / 2;
    if (std::abs(off) < border) return {};
    if (off < 0) found = id_of(s);
  }
  if (l.nut && p.x < l.nut->face.x + border) return {};
  return found;
}

void pick_all(const std::string& preset) {
  const Made made = make(preset);
  ASSERT_TRUE(made.stage);
  std::mt19937 random(20);
  std::uniform_real_distribution<double> any(0, 1);
  const Layout& l = made.model.prepared->layout();
  int told = 0, slots = 0, inlays = 0;
  while (told < 500) {
    Point p{5 + any(random) * (l.heel_end - 10), 0};
    // A third of the points near slots, a third near inlays: they are small.
    const int kind = static_cast<int>(random() % 3);
    p.y = (2 * any(random) - 1) * (l.half_width(p.x) - 0.5);
    if (kind == 1) {
      const Slot& slot = l.slots[random() % l.slots.size()];
      p = between(slot.bass_end, slot.treble_end, 0.02 + 0.96 * any(random)) + Point{(any(random) - 0.5) * 1.2, 0};
    }
    if (kind == 2) {
      const Marker& m = l.markers[random() % l.markers.size()];
      p = m.centre + Point{(any(random) - 0.5) * 8, (any(random) - 0.5) * 8};
    }
    const FeatureId wanted = expected(made, p);
    if (wanted.kind == FeatureId::Kind::none || p.x > l.heel_end - 3) continue;
    const Ray down{{static_cast<float>(p.x), static_cast<float>(p.y), 500}, {0, 0, -1}};
    const auto hit = cast(made.stage->mesh, down);
    ASSERT_TRUE(hit) << p.x << ", " << p.y;
    EXPECT_EQ(feature_at(*made.stage->shell, *hit), wanted) << p.x << ", " << p.y;
    ++told;
    slots += wanted.kind == FeatureId::Kind::slot, inlays += wanted.kind == FeatureId::Kind::inlay;
  }
  EXPECT_GT(slots, 30);
  EXPECT_GT(inlays, 30);
}

TEST(Picking, FiveHundredPointsOnTheCompoundBoard) { pick_all("heron-six"); }
TEST(Picking, FiveHundredPointsOnTheFan) { pick_all("curlew-seven-fan"); }

TEST(Picking, EveryFeatureLeadsToADecision) {
  using Kind = FeatureId::Kind;
  for (const Kind kind : {Kind::slot, Kind::inlay, Kind::nut_seat, Kind::binding, Kind::pin, Kind::outline, Kind::blank,
                          Kind::radius_cut, Kind::fall_away, Kind::playing_surface, Kind::glue_face, Kind::edge})
    EXPECT_NE(feature_key({kind}), "") << kind_word(kind);
  EXPECT_EQ(feature_key({Kind::inlay, 1, 12}), "inlays[1].depth");
}

}  // namespace
}  // namespace sagitta::test
