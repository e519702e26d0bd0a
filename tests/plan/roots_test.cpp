#include "plan/Roots.hpp"

#include <gmock/gmock.h>

#include <cmath>

namespace sagitta {
namespace {

using testing::DoubleNear;
using testing::ElementsAre;
using testing::IsEmpty;

TEST(Roots, FindsBothWaysThroughZero) {
  EXPECT_THAT(contacts_of([](double t) { return (t - 0.2) * (t - 0.7); }, 1e-5, 6),
              ElementsAre(DoubleNear(0.2, 1e-14), DoubleNear(0.7, 1e-14)));
}

TEST(Roots, FindsTwoWaysThroughZeroBetweenTwoSamples) {
  EXPECT_THAT(contacts_of([](double t) { return (t - 0.51) * (t - 0.55); }, 1e-6, 6),
              ElementsAre(DoubleNear(0.51, 1e-12), DoubleNear(0.55, 1e-12)));
}

TEST(Roots, ATouchIsOneContact) {
  EXPECT_THAT(contacts_of([](double t) { return -(t - 0.3) * (t - 0.3); }, 1e-5, 6),
              ElementsAre(DoubleNear(0.3, 1e-6)));
  EXPECT_THAT(contacts_of([](double t) { return 1e-6 - (t - 0.3) * (t - 0.3); }, 1e-5, 6),
              ElementsAre(DoubleNear(0.3, 1e-6)))
      << "a dip of less than the tolerance is a touch";
}

TEST(Roots, AMissByMoreThanTheToleranceIsNone) {
  EXPECT_THAT(contacts_of([](double t) { return -2e-5 - (t - 0.3) * (t - 0.3); }, 1e-5, 6), IsEmpty());
}

TEST(Roots, ZeroAllAlongAndZeroAtTheEndsAreLeftToTheCaller) {
  EXPECT_THAT(contacts_of([](double) { return 1e-7; }, 1e-5, 6), IsEmpty());
  EXPECT_THAT(contacts_of([](double t) { return t * (1 - t); }, 1e-5, 6), IsEmpty());
}

TEST(Roots, AVeryFlatTouchNearAnEndIsSeen) {
  // A slot's floor that just reaches a pocket's: -(y^2)/2R along y = 1.5 .. -17.6, R = 640.
  const auto gap = [](double t) {
    const double y = 1.517 - 19.131 * t;
    return -y * y / 1280;
  };
  EXPECT_THAT(contacts_of(gap, 1e-5, 6), ElementsAre(DoubleNear(1.517 / 19.131, 1e-4)));
}

}  // namespace
}  // namespace sagitta
