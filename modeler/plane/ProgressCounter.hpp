#pragma once

/// A counter of the steps of a job.

#include <atomic>
#include <memory>

namespace sagitta {

/// A token that can be copied; each job has a new one. The job says how many steps it expects and counts them; any copy
/// can be read while it works.
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
