#pragma once

/// What is known of the document's file besides the document: other versions of it, and what kept a file from opening.

#include <optional>
#include <string>
#include <vector>

#include "board/BoardFile.hpp"
#include "document/Recovery.hpp"

namespace sagitta::viewer {

/// The other version of the document's file, while the choice is open.
struct Elsewhere {
  std::string text, checksum;  ///< of the file as it is now
  BoardFile file;              ///< read from it; it may have problems
};

/// When the file was last looked at.
struct Watch {
  double next = 0;      ///< seconds, of the frame's clock: not before
  std::string stamp;    ///< of the file when it was last read: size and times
  std::string put_off;  ///< checksum of a version that the user has put the choice off for
};

/// A board file that could not be opened.
struct Unopened {
  std::string name;
  std::vector<Problem> problems;  ///< empty: the last one could be opened
};

struct OtherVersions {
  std::optional<Recovered> left_over;  ///< a copy that an earlier session left
  std::optional<Elsewhere> elsewhere;
  Watch watch;
  Unopened unopened;
};

}  // namespace sagitta::viewer
