#pragma once

/// The commands as panels see them.

#include <algorithm>
#include <string>
#include <vector>

namespace sagitta::viewer {

/// A command as panels show it.
struct OfferedCommand {
  std::string name;   ///< "undo"; what is asked for
  std::string title;  ///< "Undo"
  std::string group;  ///< "File", "Edit", "Look", "Window"
  std::string keys;   ///< "Ctrl+Z"
  bool can = true;    ///< it would do something now
};
/// Every command of the window, in the order in which they are listed.
using Offer = std::vector<OfferedCommand>;

/// The command of that name, which must be there.
inline const OfferedCommand& offered(const Offer& offer, const std::string& name) {
  return *std::find_if(offer.begin(), offer.end(), [&](const OfferedCommand& c) { return c.name == name; });
}

}  // namespace sagitta::viewer
