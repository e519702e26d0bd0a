#include "jobs/WaysOut.hpp"

#include "release/RescueReport.hpp"
#include "solid/Failure.hpp"

namespace sagitta::viewer {

WaysOut::~WaysOut() {
  {
    const std::lock_guard lock(mutex_);
    ending_ = true;
  }
  changed_.notify_all();
  if (thread_.joinable()) thread_.join();
}

void WaysOut::want(const Board& board, std::function<void()> wake) {
  const std::lock_guard lock(mutex_);
  if (asked_ == board) return;
  asked_ = board;
  waiting_ = true;
  wake_ = std::move(wake);
  if (!thread_.joinable()) thread_ = std::thread([this] { run(); });
  changed_.notify_all();
}

std::shared_ptr<const FoundWays> WaysOut::found() const {
  const std::lock_guard lock(mutex_);
  return made_;
}

bool WaysOut::busy() const {
  const std::lock_guard lock(mutex_);
  return waiting_ || busy_;
}

void WaysOut::run() {
  std::unique_lock lock(mutex_);
  while (true) {
    changed_.wait(lock, [this] { return waiting_ || ending_; });
    if (ending_) return;
    waiting_ = false, busy_ = true;
    auto found = std::make_shared<FoundWays>();
    found->board = *asked_;
    lock.unlock();
    BoardFile file;
    file.board = found->board;
    if (const auto wrong = failure_of([&] { found->ways = ways_out(file); })) found->trouble = *wrong;
    lock.lock();
    busy_ = false;
    if (waiting_ || ending_) continue;
    made_ = std::move(found);
    if (wake_) wake_();
  }
}

}  // namespace sagitta::viewer
