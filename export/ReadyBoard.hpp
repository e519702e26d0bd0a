#pragma once

#include <string>
#include <variant>
#include <vector>

#include "board/BoardFile.hpp"
#include "board/InputPath.hpp"
#include "inlay/Inlays.hpp"
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
  Inlays inlays;
  std::vector<Plan> plans;             ///< one a stage, in the order of stages_of
  Outside outside = Outside::refused;  ///< whether its files could lie outside the board's folder

  const Board& board() const { return file.board; }
  /// The stage must be one of the board's.
  const Plan& plan(Stage stage) const;
};

using Problems = std::vector<Problem>;

/// Reads the file and lays the board out, or says everything that keeps it from that. `outside`: whether a base may lie
/// outside the board's folder.
std::variant<DrawnBoard, Problems> draw(const std::string& path, Outside outside = Outside::refused);

/// Draws the board, reads and fits its artwork, and makes sure that its surface and the plan of every stage can be
/// made, or says everything that keeps it from that. `outside`: whether drawings, bases and the neck's file may
/// lie outside the board's folder.
std::variant<ReadyBoard, Problems> prepare(const std::string& path, Outside outside = Outside::refused);

/// The same for a file that has been read, or for a board that never was in one.
std::variant<ReadyBoard, Problems> prepare(BoardFile file, Outside outside = Outside::refused);

/// The same for a board that is laid out already: the layout may differ from what the board asks for.
std::variant<ReadyBoard, Problems> prepare(DrawnBoard drawn, Outside outside = Outside::refused);

/// Empty when the board is ready.
Problems problems_of(const std::variant<ReadyBoard, Problems>& prepared);

}  // namespace sagitta
