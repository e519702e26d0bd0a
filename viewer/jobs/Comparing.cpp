#include "jobs/Comparing.hpp"

#include "solid/Failure.hpp"

namespace sagitta::viewer {

namespace {

bool same_boards(const ModelPtr& a, const ModelPtr& b) {
  return a && b && a->board == b->board && a->reading == b->reading;
}

}  // namespace

Comparing::~Comparing() {
  {
    const std::lock_guard lock(mutex_);
    ending_ = true;
  }
  changed_.notify_all();
  if (thread_.joinable()) thread_.join();
}

void Comparing::want(ModelPtr from, ModelPtr to, std::function<void()> wake) {
  const std::lock_guard lock(mutex_);
  if (same_boards(from, from_) && same_boards(to, to_)) return;
  from_ = std::move(from), to_ = std::move(to);
  waiting_ = true;
  wake_ = std::move(wake);
  if (!thread_.joinable()) thread_ = std::thread([this] { run(); });
  changed_.notify_all();
}

std::shared_ptr<const Compared> Comparing::found() const {
  const std::lock_guard lock(mutex_);
  return made_;
}

bool Comparing::busy() const {
  const std::lock_guard lock(mutex_);
  return waiting_ || busy_;
}

void Comparing::run() {
  std::unique_lock lock(mutex_);
  while (true) {
    changed_.wait(lock, [this] { return waiting_ || ending_; });
    if (ending_) return;
    waiting_ = false, busy_ = true;
    auto found = std::make_shared<Compared>();
    found->from = from_, found->to = to_;
    lock.unlock();
    const auto wrong = failure_of([&] {
      found->keys = differences(*found->from->prepared, *found->to->prepared);
      found->all = effect_of(*found->from->prepared, *found->to->prepared);
    });
    if (wrong) found->trouble = *wrong;
    lock.lock();
    busy_ = false;
    if (waiting_ || ending_) continue;
    made_ = std::move(found);
    if (wake_) wake_();
  }
}

}  // namespace sagitta::viewer
