#include "plane/ParallelFor.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <system_error>
#include <thread>
#include <vector>

namespace sagitta {
namespace {

std::atomic<int> most_threads{std::max(1, static_cast<int>(std::thread::hardware_concurrency()))};
std::atomic<int> helping{0};  ///< threads that parallel_for has started and that still run

/// Takes up to `wanted` of the threads that are still free.
int take_threads(int wanted) {
  int running = helping.load();
  for (;;) {
    const int taken = std::clamp(most_threads.load() - 1 - running, 0, std::max(0, wanted));
    if (taken == 0) return 0;
    if (helping.compare_exchange_weak(running, running + taken)) return taken;
  }
}

}  // namespace

void parallel_for(int count, const std::function<void(int)>& job) {
  std::atomic<int> next{0};
  std::vector<std::exception_ptr> thrown(static_cast<std::size_t>(std::max(0, count)));
  const auto work = [&] {
    for (int i = next++; i < count; i = next++) try {
        job(i);
      } catch (...) {
        thrown[static_cast<std::size_t>(i)] = std::current_exception();
      }
  };
  {
    std::vector<std::jthread> others;
    const int taken = take_threads(count - 1);
    others.reserve(static_cast<std::size_t>(taken));
    for (int i = 0; i < taken; ++i) try {
        others.emplace_back([&] {
          work();
          --helping;
        });
      } catch (const std::system_error&) {  // the system has no thread left: the others do its work
        --helping;
      }
    work();
  }
  for (const std::exception_ptr& one : thrown)
    if (one) std::rethrow_exception(one);
}

void parallel_for(int count, std::size_t points, const std::function<void(int)>& job) {
  constexpr std::size_t worth_a_thread = 5000;
  if (points > worth_a_thread) return parallel_for(count, job);
  for (int i = 0; i < count; ++i) job(i);
}

int parallel_threads() { return most_threads; }
void set_parallel_threads(int count) { most_threads = std::max(1, count); }

}  // namespace sagitta
