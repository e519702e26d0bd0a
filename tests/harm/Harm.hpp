#pragma once

/// One folder that is exported into while something goes wrong, and what must hold afterwards.

#include <optional>
#include <string>

#include "export/CommandLine.hpp"

namespace sagitta::test {

/// A board with a drawing, its export in place, and files of somebody else beside it.
class Workshop {
 public:
  Workshop();
  const fs::path& path() const { return scratch_.path(); }
  /// The export's arguments: few files, so that it takes a fraction of a second.
  std::string line(const std::string& options = "--replace") const;
  /// Runs the program with these variables set: "FAIL_CALL=write FAIL_AT=3".
  Outcome run(const std::string& options = "--replace", const std::string& variables = "") const;
  /// Empty when nothing of others is lost, the folder is whole or, if `may_be_absent`, absent; else what is wrong.
  std::string harm(bool may_be_absent) const;
  /// Empty when nothing was left behind beside the folder; else what.
  std::string left() const;
  void remove_export() const;

 private:
  ScratchFolder scratch_;
  std::string first_;  ///< the export's files and their bytes
};

}  // namespace sagitta::test
