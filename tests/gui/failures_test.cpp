/// What the geometry kernel throws in a thread of the window is told there, and does not end it. Each failure is put in
/// through the call with which the thread says that something is new.

#include <gtest/gtest.h>

#include <Standard_ConstructionError.hxx>
#include <atomic>
#include <chrono>
#include <filesystem>
#include <thread>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "jobs/Sending.hpp"
#include "jobs/Worker.hpp"

namespace sagitta::test {
namespace {

Board heron() { return read_board(places::source() + "/presets/heron-six.toml").board; }

template <class Done>
bool in_time(Done done) {
  for (int i = 0; i < 6000 && !done(); ++i) std::this_thread::sleep_for(std::chrono::milliseconds(10));
  return done();
}

TEST(Failures, InTheWorkerLeaveTheBoardAndTheReason) {
  std::atomic<int> calls{0};
  viewer::Worker worker([&] {
    if (calls++ == 0) throw Standard_ConstructionError("put in by a test");
  });
  worker.submit({1, heron(), Stage::board, true});
  ASSERT_TRUE(in_time([&] { return worker.finished() == 1; }));
  const viewer::ModelPtr failed = worker.take();
  ASSERT_TRUE(failed);
  EXPECT_EQ(failed->generation, 1U);
  EXPECT_TRUE(failed->settled);
  EXPECT_FALSE(failed->trouble.empty());
  worker.submit({2, heron(), Stage::board, true});
  ASSERT_TRUE(in_time([&] { return worker.finished() == 2; }));
  const viewer::ModelPtr made = worker.take();
  ASSERT_TRUE(made);
  EXPECT_TRUE(made->trouble.empty()) << made->trouble;
  EXPECT_TRUE(made->at(Stage::board));
}

TEST(Failures, InSendingOutAreTheOutcomeAndLeaveNoFolder) {
  const auto folder = std::filesystem::path(testing::TempDir()) / "sagitta-failed-sending";
  std::filesystem::remove_all(folder);
  viewer::SendingOrder order;
  order.board = heron();
  order.folder = folder.string();
  order.kinds = {};
  order.kinds.stl = true;
  std::atomic<int> calls{0};
  viewer::Sending sending;
  sending.start(order, [&] {
    if (calls++ == 1) throw Standard_ConstructionError("put in by a test");  // the first call is the starter's
  });
  ASSERT_TRUE(in_time([&] { return !sending.state().running; }));
  EXPECT_FALSE(sending.state().good);
  EXPECT_FALSE(sending.state().outcome.empty());
  EXPECT_GE(calls.load(), 2);
  EXPECT_FALSE(std::filesystem::exists(folder));
}

}  // namespace
}  // namespace sagitta::test
