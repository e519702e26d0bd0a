// Heights of the strings against a table worked out by hand, and against the string followed in small steps.

#include <cmath>
#include <numbers>

#include "findings/GoodBoard.hpp"
#include "neck/HeightChain.hpp"

namespace sagitta::test {
namespace {

/// A board whose strings run parallel to the centre line: every y is constant along a string.
struct Instrument {
  double scale;
  int frets;
  double thickness, crown, radius, spread;
  LengthPair nut, action;
  double relief;
  int relief_fret, joint;
  double body_step, angle, bridge;
};

Board board_of(const Instrument& i) {
  Board board;
  board.scale.length = i.scale;
  board.scale.frets = i.frets;
  board.strings = {6, i.spread, i.spread, StringSpacing::equal_centres, {}, 1, {}};
  board.board.thickness = i.thickness;
  board.board.nut_width = board.board.heel_width = i.spread + 10;
  if (i.radius > 0) board.surface.profile = Profile::single, board.surface.radius_at_nut = i.radius;
  board.wire.crown_height = i.crown;
  Heights& heights = board.height.emplace();
  heights.nut = i.nut, heights.action = i.action;
  heights.relief = i.relief, heights.relief_fret = i.relief_fret;
  heights.body_step = i.body_step, heights.bridge = i.bridge;
  Neck& neck = board.neck.emplace();
  neck.joint_fret = i.joint;
  if (i.angle != 0) neck.angle_degrees = i.angle;
  return board;
}

const Instrument classical{650, 19, 6, 1.1, 0, 44, {0.9, 0.7}, {4, 3}, 0.1, 7, 12, 3, 0, 11};
const Instrument bolted{647.7, 22, 6.35, 1.2, 304.8, 46, {0.5, 0.5}, {1.8, 1.5}, 0.2, 8, 16, 0, 0, 11};
const Instrument archtop{628.65, 20, 6, 1.0, 304.8, 40, {0.6, 0.4}, {2, 1.6}, 0.15, 7, 14, -8, 3.5, 22};

/// By hand, to five decimals. Fret n at L (1 - 2^(-n/12)); tops at thickness + crown - drop(y) less the parabola; the
/// line from the nut's height through the action at fret 12. Bridge: (z + step) cos a + (S - J) sin a; angle by
/// bisection of that.
struct Hand {
  const Instrument& instrument;
  double bass[5], treble[5];          ///< over frets 1, 5, 7, 12 and the last
  double bass_saddle, treble_saddle;  ///< z
  double ahead_bass, behind_bass;     ///< held down at fret 5
  double bridge, angle;               ///< needed; degrees
};
const Hand table[] = {
    {classical,
     {1.29272, 2.56749, 3.062, 4.0, 5.031},
     {1.00292, 1.96614, 2.32987, 3.0, 3.76493},
     14.2,
     12.4,
     0.40149,
     0.17633,
     16.3,
     -0.93402},
    {bolted,
     {0.70369, 1.29711, 1.49381, 1.8, 2.19835},
     {0.67001, 1.1466, 1.29426, 1.5, 1.76672},
     9.54182,
     8.94182,
     0.17786,
     0.1101,
     10.11084,
     0.19821},
    {archtop,
     {0.80777, 1.42936, 1.64436, 2.0, 2.44213},
     {0.58532, 1.12902, 1.31133, 1.6, 1.96812},
     9.63228,
     9.03228,
     0.19422,
     0.12523,
     19.08098,
     4.09885},
};
constexpr double printed5 = 0.000006;

TEST(Heights, AreThoseOfAHandComputedTable) {
  for (const Hand& hand : table) {
    const auto chain = height_chain(prepared(board_of(hand.instrument)));
    ASSERT_TRUE(chain);
    const StringHeights &bass = chain->strings.front(), &treble = chain->strings.back();
    const int frets[] = {1, 5, 7, 12, hand.instrument.frets};
    for (std::size_t i = 0; i < 5; ++i) {
      const auto at = static_cast<std::size_t>(frets[i] - 1);
      EXPECT_NEAR(bass.frets[at].height, hand.bass[i], printed5) << hand.instrument.scale << " fret " << frets[i];
      EXPECT_NEAR(treble.frets[at].height, hand.treble[i], printed5) << hand.instrument.scale << " fret " << frets[i];
    }
    EXPECT_NEAR(bass.saddle_z, hand.bass_saddle, printed5);
    EXPECT_NEAR(treble.saddle_z, hand.treble_saddle, printed5);
    EXPECT_NEAR(bass.frets[4].ahead.value(), hand.ahead_bass, printed5);
    EXPECT_NEAR(bass.frets[4].behind.value(), hand.behind_bass, printed5);
    EXPECT_NEAR(chain->needed_bridge.value(), hand.bridge, printed5);
    EXPECT_NEAR(chain->needed_angle.value() * 180 / std::numbers::pi, hand.angle, printed5);
  }
}

// The string followed from the nut to the saddle in steps of its slope, Euler's rule; for a straight line that is exact
// but for rounding. Its height over each fret's top where it passes.
TEST(Heights, AreThoseOfTheStringFollowedInSmallSteps) {
  for (const Hand& hand : table) {
    const PreparedBoard ready = prepared(board_of(hand.instrument));
    const auto chain = height_chain(ready);
    ASSERT_TRUE(chain);
    for (const StringHeights& s : chain->strings) {
      constexpr int steps = 200000;
      const double dx = (s.saddle_x - s.nut_x) / steps, slope = (s.saddle_z - s.nut_z) / (s.saddle_x - s.nut_x);
      double x = s.nut_x, z = s.nut_z;
      std::size_t next = 0;
      for (int i = 0; i < steps && next < s.frets.size(); ++i) {
        for (; next < s.frets.size() && s.frets[next].at.x < x + dx; ++next) {
          const FretHeight& fret = s.frets[next];
          EXPECT_NEAR(z + slope * (fret.at.x - x) - fret.top, fret.height, 1e-9);
        }
        x += dx, z += slope * dx;
      }
      EXPECT_EQ(next, s.frets.size());
    }
  }
}

TEST(Heights, OfBridgeAndAngleAreSolvedBackAndForth) {
  for (const double step : {-12.0, 0.0, 7.5})
    for (const double saddle_z : {6.0, 9.7, 21.3})
      for (double degrees = -4; degrees <= 8; degrees += 0.37) {
        const BodyLine body{330, 648, step};
        const double angle = degrees * std::numbers::pi / 180, bridge = bridge_for(body, saddle_z, angle);
        EXPECT_NEAR(angle_for(body, saddle_z, bridge).value(), angle, 1e-9);
        EXPECT_NEAR(saddle_for(body, bridge, angle), saddle_z, 1e-9);
      }
  EXPECT_FALSE(angle_for({330, 648, 0}, 10, 400)) << "no angle brings the strings 400 mm up over 318 mm";
}

// The needed bridge and the needed angle put back into the board ask for nothing more, and give the action asked for.
TEST(Heights, NeedNothingMoreOnceTheyAreGiven) {
  for (const Hand& hand : table) {
    Board board = board_of(hand.instrument);
    const auto chain = height_chain(prepared(board));
    Board other = board;
    other.neck->angle_degrees = chain->needed_angle.value() * 180 / std::numbers::pi;
    EXPECT_NEAR(height_chain(prepared(other))->needed_bridge.value(), board.height->bridge.value(), 1e-9);
    EXPECT_NEAR(height_chain(prepared(other))->bridge_action.value(), chain->action, 1e-9);
    board.height->bridge = chain->needed_bridge;
    EXPECT_NEAR(height_chain(prepared(board))->needed_angle.value(), chain->angle, 1e-9);
    // The action follows from the bridge where the board file does not ask for one.
    board.height->action.reset();
    EXPECT_NEAR(height_chain(prepared(board))->action, chain->action, 1e-9);
  }
}

// At the end of the range of reliefs one gap is closed and none is less.
TEST(Heights, AtTheLeastAndTheMostReliefAStringJustTouches) {
  Board board = board_of(bolted);
  const auto chain = height_chain(prepared(board));
  ASSERT_LT(chain->least_relief, chain->relief);
  ASSERT_GT(chain->most_relief, chain->relief);
  for (const double relief : {chain->least_relief, chain->most_relief}) {
    if (std::abs(relief) > 100) continue;
    board.height->relief = relief;
    EXPECT_NEAR(height_chain(prepared(board))->least_ahead.gap, 0, 1e-9);
  }
}

/// How far an arc lies below its chord from 0 to `joint` at x, when it lies `relief` below it at `place`. Circle
/// through three points: its centre lies above the chord's middle by c, with (joint / 2)^2 + c^2 = R^2.
long double arc_at(long double relief, long double place, long double joint, long double x) {
  if (relief == 0) return 0;
  const long double c = (place * (joint - place) - relief * relief) / (2 * relief);
  // z^2 + 2 c z = x (joint - x), solved without cancellation.
  const long double product = x * (joint - x);
  return product / (c + std::copysign(std::sqrt(c * c + product), c));
}

// Relief as a circular arc instead: every relief of the board file, joints from 250 to 500 mm, measured anywhere in the
// middle half. Against the closed form of the circle.
TEST(Heights, OfAReliefThatIsACircularArcAreTheSame) {
  int compared = 0;
  for (const double scale : {520.0, 650.0, 864.0})
    for (const int joint : {12, 14, 17})
      for (int fret = 3; fret <= 9; ++fret)
        for (const double relief : {-5.0, -1.0, -0.1, 0.05, 0.15, 0.3, 1.0, 2.5, 5.0}) {
          Instrument made = bolted;
          made.scale = scale, made.joint = joint, made.relief = relief, made.relief_fret = fret;
          const PreparedBoard ready = prepared(board_of(made));
          const double end = joint_place(ready), place = scale * (1 - std::exp2(-fret / 12.0));
          if (end < 250 || place < end / 4 || place > 3 * end / 4) continue;
          const double k = relief / (place * (end - place)), bound = std::abs(relief) <= 1 ? 5e-5 : 5e-3;
          for (int i = 0; i <= 100; ++i) {
            const double x = end * i / 100;
            const auto arc = static_cast<double>(arc_at(relief, place, end, x));
            EXPECT_NEAR(relief_at(ready, x) - arc, k * arc * (arc - relief), 1e-12);
            EXPECT_LT(std::abs(relief_at(ready, x) - arc), bound) << scale << " " << joint << " " << fret;
            ++compared;
          }
          EXPECT_NEAR(relief_at(ready, place), relief, 1e-12);
        }
  EXPECT_GT(compared, 20000);
}

}  // namespace
}  // namespace sagitta::test
