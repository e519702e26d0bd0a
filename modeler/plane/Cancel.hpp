#pragma once

/// A token that asks a job to stop.

#include <atomic>
#include <memory>

namespace sagitta {

/// A token that can be copied; each job has a new one. Any copy can request the job to stop; the job tests `wanted()`
/// while it works.
class Cancel {
 public:
  void request() const { flag_->store(true, std::memory_order_relaxed); }
  bool wanted() const { return flag_->load(std::memory_order_relaxed); }

 private:
  std::shared_ptr<std::atomic<bool>> flag_ = std::make_shared<std::atomic<bool>>(false);
};

}  // namespace sagitta
