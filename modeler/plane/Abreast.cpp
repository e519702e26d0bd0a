#include "plane/Abreast.hpp"

#include <atomic>
#include <exception>
#include <thread>
#include <vector>

namespace sagitta {

void abreast(int count, const std::function<void(int)>& job) {
  std::atomic<int> next{0};
  std::vector<std::exception_ptr> wrong(static_cast<std::size_t>(count));
  const auto work = [&] {
    for (int i = next++; i < count; i = next++) try {
        job(i);
      } catch (...) {
        wrong[static_cast<std::size_t>(i)] = std::current_exception();
      }
  };
  if (count > 1) {
    std::thread other(work);
    work();
    other.join();
  } else {
    work();
  }
  for (const std::exception_ptr& one : wrong)
    if (one) std::rethrow_exception(one);
}

void abreast(int count, std::size_t points, const std::function<void(int)>& job) {
  constexpr std::size_t worth_two = 5000;
  if (points > worth_two) return abreast(count, job);
  for (int i = 0; i < count; ++i) job(i);
}

}  // namespace sagitta
