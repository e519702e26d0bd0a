#include <gmock/gmock.h>

#include <atomic>
#include <chrono>
#include <thread>
#include <vector>

#include "plane/ParallelFor.hpp"

using namespace sagitta;

namespace {

/// Sets the number of threads and puts the old one back.
struct Threads {
  int before = parallel_threads();
  explicit Threads(int count) { set_parallel_threads(count); }
  ~Threads() { set_parallel_threads(before); }
};

class ParallelFor : public testing::TestWithParam<int> {};

TEST_P(ParallelFor, does_each_job_once) {
  const Threads threads(GetParam());
  for (const int count : {0, 1, 2, 3, 1000}) {
    std::vector<std::atomic<int>> done(static_cast<std::size_t>(count));
    parallel_for(count, [&](int i) { ++done[static_cast<std::size_t>(i)]; });
    for (const auto& times : done) EXPECT_EQ(times, 1);
  }
}

TEST_P(ParallelFor, never_runs_on_more_threads_than_allowed_however_deep_calls_nest) {
  const Threads threads(GetParam());
  std::atomic<int> working{0}, most{0}, done{0};
  const auto leaf = [&](int) {
    const int now = ++working;
    for (int seen = most; now > seen && !most.compare_exchange_weak(seen, now);) {
    }
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
    --working;
    ++done;
  };
  parallel_for(4, [&](int) { parallel_for(4, [&](int) { parallel_for(4, leaf); }); });
  EXPECT_EQ(done, 64);
  EXPECT_LE(most, GetParam());
  if (GetParam() > 1) {
    EXPECT_GT(most, 1);
  }
}

TEST_P(ParallelFor, throws_the_first_jobs_exception_after_all_have_ended) {
  const Threads threads(GetParam());
  std::atomic<int> done{0};
  int thrown = -1;
  try {
    parallel_for(20, [&](int i) {
      ++done;
      if (i >= 7) throw i;
    });
  } catch (int i) {
    thrown = i;
  }
  EXPECT_EQ(thrown, 7);
  EXPECT_EQ(done, 20);
}

INSTANTIATE_TEST_SUITE_P(threads, ParallelFor, testing::Values(1, 2, 8));

}  // namespace
