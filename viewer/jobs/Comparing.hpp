#pragma once

/// What two boards differ by and what each difference does to the wood, as `sagitta compare` says it, worked out in the
/// background.

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "jobs/Model.hpp"
#include "package/Compare.hpp"

namespace sagitta::viewer {

/// From the first board to the second.
struct Compared {
  ModelPtr from, to;
  std::vector<KeyDifference> keys;
  Effect all;
  std::string trouble;  ///< why it could not be worked out
};

class Comparing {
 public:
  Comparing() = default;
  ~Comparing();
  Comparing(const Comparing&) = delete;
  Comparing& operator=(const Comparing&) = delete;

  /// Asks for it; the same boards again cost nothing. The newest order wins, after the one in hand. Both models must be
  /// prepared. `wake` is called from the other thread when it is there.
  void want(ModelPtr from, ModelPtr to, std::function<void()> wake);
  /// The last that was worked out; null before. It may be of boards before.
  std::shared_ptr<const Compared> found() const;
  bool busy() const;

 private:
  void run();

  mutable std::mutex mutex_;
  std::condition_variable changed_;
  ModelPtr from_, to_;
  bool waiting_ = false, busy_ = false, ending_ = false;
  std::function<void()> wake_;
  std::shared_ptr<const Compared> made_;
  std::thread thread_;
};

}  // namespace sagitta::viewer
