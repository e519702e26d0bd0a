#pragma once

/// One thread that turns boards into models. The newest order wins: a newer one replaces the order that waits, stops
/// the long parts of the one in hand, and lets its short first part finish so that the screen keeps following.

#include <condition_variable>
#include <functional>
#include <mutex>
#include <optional>
#include <thread>

#include "jobs/NeckReader.hpp"
#include "jobs/Order.hpp"
#include "jobs/Results.hpp"
#include "plane/Cancel.hpp"
#include "plane/ProgressCounter.hpp"

namespace sagitta::viewer {

class Worker {
 public:
  /// `wake` is called from the worker's thread whenever something is new.
  explicit Worker(std::function<void()> wake);
  ~Worker();
  Worker(const Worker&) = delete;
  Worker& operator=(const Worker&) = delete;

  void submit(Order order);
  /// The newest model since the last call, if any; never an older generation than one already taken.
  ModelPtr take();
  /// Stops the order in hand; what it has made stays.
  void cancel();
  Progress progress() const;
  bool idle() const;
  std::uint64_t finished() const;  ///< generation of the last order that ran to its end

 private:
  void run();
  void carry_out(const Order& order);
  /// Publishes what there is of the order's board, and why there is no more.
  void give_up(const Order& order, const std::string& why);
  /// Whether a newer order stops what is in hand.
  enum class Stops { never, when_slow, at_once };
  void begin(const std::string& what, Stops stops);
  bool yields() const;
  void publish(Model model);
  bool stopped() const;

  std::function<void()> wake_;
  mutable std::mutex mutex_;
  std::condition_variable changed_;
  std::optional<Order> waiting_;
  ModelPtr made_;
  Cancel cancel_;
  bool busy_ = false, ending_ = false;
  Stops stops_ = Stops::never;
  ProgressCounter progress_;  ///< of the drawings' fit
  std::uint64_t finished_ = 0;
  std::string what_;
  double since_ = 0;
  Model last_;  ///< the worker's own
  NeckReader neck_;
  InlayFitter fitter_;
  std::thread thread_;
};

}  // namespace sagitta::viewer
