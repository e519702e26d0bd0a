#pragma once

/// Names in a STEP file that is being written.

#include <string>
#include <vector>

namespace sagitta {

/// Names stand as marks of one width until the text is complete: the kernel's writer breaks long names in the middle of
/// a character.
class StepNames {
 public:
  std::string mark(const std::string& name);
  /// The text with each mark replaced by its name as STEP writes it.
  std::string put_in(const std::string& whole) const;

 private:
  std::vector<std::string> names_;
};

}  // namespace sagitta
