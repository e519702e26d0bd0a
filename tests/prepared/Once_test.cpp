// A lazy value: made once although several threads ask at once, and again where making it failed.

#include "prepared/Once.hpp"

#include <gtest/gtest.h>

#include <atomic>
#include <barrier>
#include <chrono>
#include <stdexcept>
#include <thread>
#include <vector>

namespace sagitta::test {
namespace {

TEST(Once, IsMadeByOneThreadAndWaitedForByTheOthers) {
  const Once<int> value;
  std::atomic<int> made = 0;
  constexpr int threads = 4;
  std::barrier start(threads);
  std::vector<const int*> got(threads, nullptr);
  std::vector<std::thread> all;
  for (std::size_t i = 0; i < got.size(); ++i)
    all.emplace_back([&, i] {
      start.arrive_and_wait();
      got[i] = &value.get([&] {
        ++made;
        std::this_thread::sleep_for(std::chrono::milliseconds(50));  // the others ask meanwhile
        return 7;
      });
      EXPECT_EQ(*got[i], 7);
    });
  for (std::thread& each : all) each.join();
  EXPECT_EQ(made, 1);
  for (const int* each : got) EXPECT_EQ(each, got.front());
}

TEST(Once, IsTriedAgainAfterAFailure) {
  const Once<int> value;
  EXPECT_THROW(value.get([]() -> int { throw std::runtime_error("no"); }), std::runtime_error);
  EXPECT_EQ(value.get([] { return 3; }), 3);
  EXPECT_EQ(value.get([] { return 4; }), 3) << "and then it stays";
}

}  // namespace
}  // namespace sagitta::test
