#pragma once

/// What work takes on a workshop's machine, whatever machine measures it.

#include <algorithm>
#include <cmath>
#include <ctime>
#include <numbers>
#include <polyclipping/clipper.hpp>
#include <stdexcept>

#include "plane/ParallelFor.hpp"

namespace sagitta::test {

/// Processor time of all threads of this program since std::clock() was asked, s. Other programs at work change it less
/// than they change the time that passes.
inline double processor_seconds(std::clock_t since) {
  return static_cast<double>(std::clock() - since) / CLOCKS_PER_SEC;
}

/// Work that never changes, of a general-purpose library: Clipper moves a star of 10,000 points outward and inward.
inline void reference_work() {
  constexpr int points = 10000;
  ClipperLib::Path star;
  for (int i = 0; i < points; ++i) {
    const double angle = 2 * std::numbers::pi * i / points;
    const double radius = 4e7 * (1 + 0.05 * std::sin(37 * angle) + (i % 2 == 0 ? 0.0002 : 0));
    star.emplace_back(std::llround(radius * std::cos(angle)), std::llround(radius * std::sin(angle)));
  }
  for (const double by : {4e5, -4e5}) {
    ClipperLib::ClipperOffset offset(2, 500);
    offset.AddPath(star, ClipperLib::jtRound, ClipperLib::etClosedPolygon);
    ClipperLib::Paths moved;
    offset.Execute(moved, by);
    if (moved.empty()) throw std::logic_error("the reference work came to nothing");
  }
}

/// Processor time of the reference work, s: on all threads at once, because two threads of one core slow each other.
inline double reference_seconds() {
  const int threads = parallel_threads();
  const std::clock_t since = std::clock();
  parallel_for(threads, [](int) { reference_work(); });
  return processor_seconds(since) / threads;
}

/// The reference work's processor time on the workshop's machine, s: a little under the least of 100 measurements
/// (0.0496 s) on the machine of two cores on which the bars were set, while it was at work on other things.
inline constexpr double reference_of_workshop = 0.048;
/// So much processor time passes there in a second at most.
inline constexpr double workshop_cores = 2;

/// Processor time that work takes on the workshop's machine, s: what it takes here times the ratio of the reference
/// work's times there and here. Here it is measured just before the work and just after, and the lesser time counts.
/// What disturbs a measurement lengthens it: work that does not come below `bar` is measured again, up to three times
/// in all, and the least counts. `work` returns the processor time that it took.
template <class Work>
double workshop_seconds(double bar, Work work) {
  double least = 1e300;
  for (int i = 0; i < 3 && least >= bar; ++i) {
    const double before = reference_seconds(), took = work();
    least = std::min(least, took * reference_of_workshop / std::min(before, reference_seconds()));
  }
  return least;
}

}  // namespace sagitta::test
