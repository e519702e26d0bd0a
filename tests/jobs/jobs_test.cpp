/// The window's background work without a window: orders that come faster than they are carried out, two jobs at once,
/// and ends in the middle. The values are those of a job that is left alone. The preset "thread" runs these tests with
/// the thread sanitizer.

#include <gtest/gtest.h>
#include <unistd.h>

#include <atomic>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <functional>
#include <thread>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "input/NeckReply.hpp"
#include "jobs/Paperwork.hpp"
#include "jobs/Sending.hpp"
#include "jobs/Worker.hpp"

namespace sagitta::viewer {
namespace {

namespace fs = std::filesystem;
using namespace std::chrono_literals;

constexpr auto patience = 300s;  ///< the thread sanitizer makes all of it some twenty times slower

Board preset(const std::string& name) {
  BoardFile file = read_board(places::source() + "/presets/" + name + ".toml");
  EXPECT_TRUE(file.sound()) << name;
  return std::move(file.board);
}

/// An empty folder that goes when the test does.
class Jobs : public testing::Test {
 protected:
  Jobs() : folder(fs::temp_directory_path() / ("sagitta_jobs_" + std::to_string(::getpid()))) {
    fs::remove_all(folder);
    fs::create_directories(folder);
  }
  ~Jobs() override { fs::remove_all(folder); }
  /// Looks every few milliseconds, as the window does with every frame.
  static bool comes_true(const std::function<bool()>& so) {
    const auto end = std::chrono::steady_clock::now() + patience;
    while (!so()) {
      if (std::chrono::steady_clock::now() > end) return false;
      std::this_thread::sleep_for(2ms);
    }
    return true;
  }
  /// The settled model of the order; every model on the way is no older than the one before.
  static ModelPtr settled(Worker& worker, std::uint64_t generation) {
    ModelPtr newest;
    EXPECT_TRUE(comes_true([&] {
      worker.progress();
      if (const ModelPtr model = worker.take()) {
        EXPECT_TRUE(!newest || newest->generation <= model->generation);
        newest = model;
      }
      return newest && newest->generation == generation && newest->settled;
    }));
    return newest;
  }
  static SendingOrder order(const Board& board, const fs::path& to) {
    SendingOrder order;
    order.board = board;
    order.folder = to.string();
    order.kinds.step = order.kinds.stl = order.kinds.pdf = order.kinds.dxf = true;
    return order;
  }
  fs::path folder;
  std::atomic<int> woken{0};
  std::function<void()> wake = [this] { ++woken; };
};

TEST_F(Jobs, OfAHandThatDragsEndWithTheLastBoard) {
  Worker worker(wake);
  Board board = preset("heron-six");
  constexpr std::uint64_t last = 40;
  for (std::uint64_t i = 1; i <= last; ++i) {
    board.slots.width = 0.5 + 0.001 * static_cast<double>(i);
    worker.submit({i, board, Stage::slotted, i < last});
    worker.progress(), worker.idle(), worker.finished();
    std::this_thread::sleep_for(1ms);
  }
  const ModelPtr model = settled(worker, last);
  ASSERT_TRUE(model);
  EXPECT_EQ(model->board, board);
  Worker alone(wake);
  alone.submit({1, board, Stage::slotted, false});
  const ModelPtr wanted = settled(alone, 1);
  ASSERT_TRUE(wanted && wanted->exact && model->exact);
  EXPECT_EQ(model->exact->volume, wanted->exact->volume);
  for (std::size_t i = 0; i < stage_count; ++i) {
    ASSERT_EQ(!model->stages[i], !wanted->stages[i]);
    if (!wanted->stages[i]) continue;
    EXPECT_EQ(model->stages[i]->mesh.points, wanted->stages[i]->mesh.points);
  }
  EXPECT_GT(woken, 0);
}

TEST_F(Jobs, OfDrawingsAreStoppedAndBegunAgain) {
  Worker worker(wake);
  Board board = preset("egret-figure");
  for (std::uint64_t i = 1; i <= 4; ++i) {
    board.inlays.back().clearance = 0.05 + 0.01 * static_cast<double>(i);
    worker.submit({i, board, Stage::pocketed, false});
    std::this_thread::sleep_for(30ms);
    if (i == 2) worker.cancel();
  }
  const ModelPtr model = settled(worker, 4);
  ASSERT_TRUE(model && model->fitted);
  EXPECT_EQ(model->board, board);
  EXPECT_FALSE(model->prepared->inlays().pieces.empty());
}

TEST_F(Jobs, OfThreeKindsRunSideBySide) {
  const Board board = preset("reed-tenor");
  Worker worker(wake);
  Paperwork papers;
  Sending sending;
  worker.submit({1, board, Stage::board, false});
  papers.want(board, "A4", false, wake);
  sending.start(order(board, folder / "out"), wake);
  EXPECT_TRUE(comes_true([&] {
    sending.state(), worker.progress();
    return !sending.state().running && papers.pages();
  }));
  EXPECT_TRUE(settled(worker, 1));
  EXPECT_TRUE(sending.state().good) << sending.state().outcome;
  EXPECT_TRUE(fs::exists(folder / "out/board.step"));
  EXPECT_TRUE(fs::exists(folder / "out/manifest.json"));
  ASSERT_TRUE(papers.pages());
  EXPECT_EQ(papers.pages()->trouble, "");
  EXPECT_GT(papers.pages()->pages.size(), 1U);
}

TEST_F(Jobs, OfPaperFollowTheNewestOrder) {
  Paperwork papers;
  const Board board = preset("plover-zero");
  for (const char* paper : {"A4", "A3", "Letter", "Tabloid"}) {
    papers.want(board, paper, true, wake);
    std::this_thread::sleep_for(5ms);
  }
  EXPECT_TRUE(comes_true([&] { return papers.pages() && !papers.busy(); }));
  ASSERT_TRUE(papers.pages());
  ASSERT_FALSE(papers.pages()->pages.empty()) << papers.pages()->trouble;
  // Tabloid lies 17 in wide and 11 in high.
  const sagitta::Picture& page = papers.pages()->pages.front().picture;
  EXPECT_NEAR(static_cast<double>(page.width) / page.height, 17.0 / 11, 0.01);
}

TEST_F(Jobs, ThatAreCancelledLeaveNothing) {
  Sending sending;
  sending.start(order(preset("reed-tenor"), folder / "out"), wake);
  EXPECT_TRUE(comes_true([&] { return sending.state().share > 0 || !sending.state().running; }));
  sending.cancel();
  EXPECT_TRUE(comes_true([&] { return !sending.state().running; }));
  EXPECT_FALSE(sending.state().good);
  EXPECT_TRUE(fs::is_empty(folder));
  sending.forget();
  EXPECT_EQ(sending.state().outcome, "");
}

TEST_F(Jobs, ThatAreInHandEndWithTheWindow) {
  const Board board = preset("egret-figure");
  {
    Worker worker(wake);
    Paperwork papers;
    Sending sending;
    worker.submit({1, board, Stage::board, false});
    papers.want(board, "A4", false, wake);
    sending.start(order(board, folder / "out"), wake);
    std::this_thread::sleep_for(100ms);
  }
  EXPECT_TRUE(fs::is_empty(folder));
}

TEST_F(Jobs, OfANeckDoNotHoldTheBoardUp) {
  Board board = preset("heron-six");
  std::ofstream(folder / "neck.step") << "ISO-10303-21;\nno neck\n";
  board.folder = folder.string();
  board.neck.emplace();
  board.neck->file = "neck.step";
  Worker worker(wake);
  worker.submit({1, board, Stage::board, false});
  std::this_thread::sleep_for(20ms);
  worker.submit({2, board, Stage::slotted, false});
  const ModelPtr model = settled(worker, 2);
  ASSERT_TRUE(model && model->neck);
  EXPECT_NE(model->neck->failure, "") << "the file holds no neck";
  EXPECT_TRUE(model->exact);
}

}  // namespace
}  // namespace sagitta::viewer

int main(int argc, char** argv) {
  if (const auto code = sagitta::run_as_neck_reader(argc, argv)) return *code;
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
