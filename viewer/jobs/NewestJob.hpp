#pragma once

/// Work in the background of which only the newest order counts.

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

#include "solid/Failure.hpp"

namespace sagitta::viewer {

/// A thread, started by the first order, that makes a Made of an Asked. A new order replaces one that waits; what is in
/// hand is ended first, and not shown. Asked is a value with ==; Made has a text `trouble`, why it could not be made.
template <class Asked, class Made>
class NewestJob {
 public:
  /// `make` is run on the other thread; what it throws becomes the trouble.
  explicit NewestJob(std::function<void(const Asked&, Made&)> make) : make_(std::move(make)) {}
  NewestJob(const NewestJob&) = delete;
  NewestJob& operator=(const NewestJob&) = delete;
  ~NewestJob() {
    {
      const std::lock_guard lock(mutex_);
      ending_ = true;
    }
    changed_.notify_all();
    if (thread_.joinable()) thread_.join();
  }

  /// Asks for it; the same again costs nothing. `wake` is called from the other thread when it is there.
  void want(Asked asked, std::function<void()> wake) {
    const std::lock_guard lock(mutex_);
    if (asked_ == asked) return;
    asked_ = std::move(asked);
    waiting_ = true;
    wake_ = std::move(wake);
    if (!thread_.joinable()) thread_ = std::thread([this] { run(); });
    changed_.notify_all();
  }

  /// The last that was made; null before. It may be of an earlier order.
  std::shared_ptr<const Made> found() const {
    const std::lock_guard lock(mutex_);
    return made_;
  }

  bool busy() const {
    const std::lock_guard lock(mutex_);
    return waiting_ || busy_;
  }

 private:
  void run() {
    std::unique_lock lock(mutex_);
    while (true) {
      changed_.wait(lock, [this] { return waiting_ || ending_; });
      if (ending_) return;
      waiting_ = false, busy_ = true;
      const Asked asked = *asked_;
      lock.unlock();
      auto made = std::make_shared<Made>();
      if (const auto wrong = failure_of([&] { make_(asked, *made); })) made->trouble = *wrong;
      lock.lock();
      busy_ = false;
      if (waiting_ || ending_) continue;
      made_ = std::move(made);
      if (wake_) wake_();
    }
  }

  const std::function<void(const Asked&, Made&)> make_;
  mutable std::mutex mutex_;
  std::condition_variable changed_;
  std::optional<Asked> asked_;
  bool waiting_ = false, busy_ = false, ending_ = false;
  std::function<void()> wake_;
  std::shared_ptr<const Made> made_;
  std::thread thread_;
};

}  // namespace sagitta::viewer
