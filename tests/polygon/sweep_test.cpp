// Clipping in strips, against closed forms: many squares' area, together and taken away.

#include <gtest/gtest.h>

#include "polygon/TiledBoolean.hpp"

namespace sagitta {
namespace {

/// A job too large for one strip gives what one strip would: squares in a row have their own area, and where they
/// overlap, the inclusion-exclusion sum.
TEST(Sweep, OfManySquaresHasTheirArea) {
  const auto square = [](double x, double y, double size) {
    return fine_grid.path({{x, y}, {x + size, y}, {x + size, y + size}, {x, y + size}});
  };
  for (const double size : {1.5, 2.5}) {  // apart, and overlapping by half a millimetre each way
    ClipJob job;
    const int wide = 120, high = 60;
    for (int i = 0; i < wide; ++i)
      for (int k = 0; k < high; ++k) job.subject.push_back(square(2 * i, 2 * k, size));
    double sum = 0;
    for (const GridPath& path : tiled_boolean(job, {})) sum += area(path) / fine_grid.per_mm / fine_grid.per_mm;
    const double apart = wide * high * size * size;
    const double together = (2 * (wide - 1) + size) * (2 * (high - 1) + size);
    EXPECT_NEAR(sum, size < 2 ? apart : together, 1e-6 * sum);
  }
}

/// Without a large job's hole: what is clipped away is missing once, whatever strip it lies in.
TEST(Sweep, TakesAwayWhatIsClipped) {
  ClipJob job;
  job.how = SetOperation::without;
  job.fill = FillRule::nonzero;
  job.subject = {fine_grid.path({{0, 0}, {400, 0}, {400, 40}, {0, 40}})};
  const int holes = 3000;
  for (int i = 0; i < holes; ++i) {
    const double x = 1 + 4 * (i % 99), y = 1 + 1.25 * (i / 99);
    job.clip.push_back(fine_grid.path({{x, y}, {x + 2, y}, {x + 2, y + 1}, {x, y + 1}}));
  }
  double sum = 0;
  for (const GridPath& path : tiled_boolean(job, {})) sum += area(path) / fine_grid.per_mm / fine_grid.per_mm;
  EXPECT_NEAR(sum, 16000 - 2.0 * holes, 1e-3);
}

}  // namespace
}  // namespace sagitta
