#pragma once

/// Everything that the background has made for the window.

#include <optional>
#include <string>

#include "jobs/Model.hpp"

namespace sagitta::viewer {

/// The other board that is drawn over this one.
struct Comparison {
  std::string name;
  Board board;
  ModelPtr model;            ///< once it is built
  std::string trouble = {};  ///< why it cannot be built
};

/// What the background is at, for the bar.
struct Progress {
  std::string what;    ///< empty: idle
  double seconds = 0;  ///< since this part began
  double share = -1;   ///< 0 .. 1 of it done; -1: not known
};

/// Whether the picture, with the stages and the figures beside it, is of a board before the document's.
struct Behind {
  bool picture = false;
  bool stopped = false;  ///< nothing works at the new one any more
  std::string why;
};

/// What the background has made of the document's board so far. The values never change; newer ones take their place.
struct Results {
  ModelPtr model;  ///< the newest; its board may be a step behind the document's
  ModelPtr good;   ///< the newest that could be built
  std::optional<Comparison> comparison;
  std::uint64_t reading = 0;  ///< grows with each change of a drawing on the disk; a model made for less is behind
  Progress working;
  Behind behind;

  /// A stage of the board, as far as it has been made.
  const StageModel* at(Stage stage) const { return good ? good->at(stage) : nullptr; }
  bool laid_out() const { return good && good->prepared; }
  /// The good model is of the newest board that came in, not of one before it.
  bool current() const { return laid_out() && model == good; }
};

}  // namespace sagitta::viewer
