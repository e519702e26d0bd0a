#pragma once

/// The ways out of what was measured, looked for in the background.

#include <condition_variable>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "board/Board.hpp"
#include "rescue/Way.hpp"

namespace sagitta::viewer {

/// What was found for one board.
struct FoundWays {
  Board board;
  std::vector<Way> ways;  ///< best first
  std::string trouble;    ///< why they could not be looked for
};

class WaysOut {
 public:
  WaysOut() = default;
  ~WaysOut();
  WaysOut(const WaysOut&) = delete;
  WaysOut& operator=(const WaysOut&) = delete;

  /// Asks for the ways out of this board; the same again costs nothing. The newest order wins; the search in hand is
  /// ended first. `wake` is called from the other thread when they are there.
  void want(const Board& board, std::function<void()> wake);
  /// The last that were found; null before. They may be of an earlier board.
  std::shared_ptr<const FoundWays> found() const;
  bool busy() const;

 private:
  void run();

  mutable std::mutex mutex_;
  std::condition_variable changed_;
  std::optional<Board> asked_;
  bool waiting_ = false, busy_ = false, ending_ = false;
  std::function<void()> wake_;
  std::shared_ptr<const FoundWays> made_;
  std::thread thread_;
};

}  // namespace sagitta::viewer
