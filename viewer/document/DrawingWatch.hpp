#pragma once

/// The drawings that a board is made from, as they lie on the disk: looked at once a second, so that a drawing program
/// can be at work beside the window.

#include <map>
#include <string>
#include <vector>

#include "board/Board.hpp"

namespace sagitta::viewer {

class DrawingWatch {
 public:
  /// Looks at the board's drawings, at most once a second and only as far as size and times differ. Returns those that
  /// hold other bytes than before, or are gone or back, and rested since the look before: a program that is still
  /// writing is waited for. A file that is named for the first time is no change; it is looked at then and there, so
  /// that what is written into it from now on is one. `seconds`: of any clock that runs on.
  std::vector<std::string> changed(const Board& board, double seconds);
  /// When it wants to look next, of that clock.
  double next() const { return next_; }

 private:
  struct Known {
    std::string stamp, pending;  ///< of the bytes that are known; of others that may still be written
    std::string checksum;        ///< "" where there is no file, or none that can be read
  };
  bool has_changed(Known& known, const std::string& path) const;
  std::map<std::string, Known> known_;  ///< by whole path
  double next_ = 0;
};

}  // namespace sagitta::viewer
