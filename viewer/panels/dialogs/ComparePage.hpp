#pragma once

/// Two boards compared: each from above, one over the other, and what differs with its effect on the wood.

#include <memory>
#include <string>

#include "jobs/Comparing.hpp"
#include "jobs/Results.hpp"
#include "requests/Request.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// What the page works with.
struct ComparePage {
  Ui& ui;
  const Results& results;
  std::string title;                      ///< of this board
  std::shared_ptr<const Compared> found;  ///< the last that was worked out; null before
};

Requests draw_compared(const ComparePage& page);

}  // namespace sagitta::viewer
