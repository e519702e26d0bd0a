#pragma once

/// Reading and writing STEP, one thread at a time.

#include <mutex>

namespace sagitta {

/// While it lives no other thread reads or writes STEP: the kernel keeps its options and the factors of its units in
/// one place for the whole program. The options begin as the kernel has them, lengths in mm; its messages are not
/// printed.
class StepTurn {
 public:
  StepTurn();
  StepTurn(const StepTurn&) = delete;
  StepTurn& operator=(const StepTurn&) = delete;

 private:
  std::lock_guard<std::mutex> turn_;
};

}  // namespace sagitta
