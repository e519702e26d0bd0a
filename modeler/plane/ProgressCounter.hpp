#pragma once

/// A counter of the steps of a job.

#include <atomic>
#include <memory>

namespace sagitta {

/// A copyable token, fresh for each job: the job says how many steps it expects and counts them as it goes; whoever
/// holds a copy can ask how far it is.
class ProgressCounter {
 public:
  void expect(int steps) const { counts_->expected.fetch_add(steps, std::memory_order_relaxed); }
  void count(int steps = 1) const { counts_->done.fetch_add(steps, std::memory_order_relaxed); }
  int expected() const { return counts_->expected.load(std::memory_order_relaxed); }
  int done() const { return counts_->done.load(std::memory_order_relaxed); }

 private:
  struct Counts {
    std::atomic<int> expected{0}, done{0};
  };
  std::shared_ptr<Counts> counts_ = std::make_shared<Counts>();
};

}  // namespace sagitta
