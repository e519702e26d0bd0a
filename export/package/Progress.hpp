#pragma once

/// The line on a terminal that says what the program is doing.

#include <chrono>
#include <string>

namespace sagitta {

/// One line on the terminal that says what is being done, for work that takes over half a second. Silent when the error
/// output is not a terminal. The line is gone when the Progress goes.
class Progress {
 public:
  explicit Progress(int steps);
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress();

  /// The next step begins: "slotted board, solid".
  void step(const std::string& what);

 private:
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
  bool terminal_;
  bool shown_ = false;
  int steps_;
  int done_ = 0;
};

}  // namespace sagitta
