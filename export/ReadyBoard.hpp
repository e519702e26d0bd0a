#pragma once

#include <string>
#include <variant>
#include <vector>

#include "board/BoardFile.hpp"
#include "layout/Layout.hpp"
#include "plan/Plan.hpp"
#include "surface/Surface.hpp"

namespace sagitta {

/// A board file that could be read and drawn flat.
struct DrawnBoard {
  BoardFile file;
  Layout layout;
};

/// A board that can be built at every stage.
struct ReadyBoard {
  BoardFile file;
  Layout layout;
  Surface surface;
  std::vector<Plan> plans;  ///< one a stage, in the order of stages_of

  const Board& board() const { return file.board; }
  /// The stage must be one of the board's.
  const Plan& plan(Stage stage) const;
};

using Problems = std::vector<Problem>;

/// Reads the file and lays the board out, or says everything that keeps it from that.
std::variant<DrawnBoard, Problems> draw(const std::string& path);

/// Draws the board and makes sure that its surface and the plan of every stage can be made, or says everything that
/// keeps it from that.
std::variant<ReadyBoard, Problems> prepare(const std::string& path);

/// The same for a file that has been read, or for a board that never was in one.
std::variant<ReadyBoard, Problems> prepare(BoardFile file);

/// The same for a board that is laid out already: the layout may differ from what the board asks for.
std::variant<ReadyBoard, Problems> prepare(DrawnBoard drawn);

/// Empty when the board is ready.
Problems problems_of(const std::variant<ReadyBoard, Problems>& prepared);

}  // namespace sagitta
