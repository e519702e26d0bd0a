#pragma once

/// How far what is on screen is behind the document, and why.

#include "document/Document.hpp"
#include "jobs/Results.hpp"
#include "view/View.hpp"

namespace sagitta::viewer {

/// Watches the document and the results from frame to frame.
class Lag {
 public:
  /// `idle`: the background does nothing; `seconds`: the frame's time.
  Behind judged(const Document& document, const View& view, const Results& results, bool idle, double seconds);
  /// Seconds from now until what is behind must be shown as such; nothing when nothing waits for that.
  std::optional<double> due(double seconds) const;

 private:
  const Model* shown_ = nullptr;  ///< the model that was on screen last
  double since_ = -1;             ///< when the picture fell behind; under 0: it is not
  bool told_ = false;             ///< it is shown as behind
};

}  // namespace sagitta::viewer
