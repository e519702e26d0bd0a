#pragma once

/// What the background work makes of a board: an immutable value that grows by being replaced. Lengths in mm.

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>

#include "neck/NeckShape.hpp"
#include "neck/NeckWood.hpp"
#include "prepared/PreparedBoard.hpp"
#include "release/Release.hpp"
#include "rules/Finding.hpp"
#include "scene/StageModel.hpp"

namespace sagitta::viewer {

/// Figures of the exact solid.
struct Exact {
  double volume = 0;  ///< mm^3
  double area = 0;    ///< mm^2
};

/// What the picture of the neck is.
enum class NeckAs {
  none,    ///< its file is not read yet, cannot be read, or its place under the board is not sure
  sketch,  ///< its sides by the widths that the board file gives, a back for the picture's sake
  solid    ///< the wood of its file, where it was found
};

/// Everything of the board that is not wood.
struct Fittings {
  RenderMesh frets, strings, neck;
  NeckAs neck_as = NeckAs::none;
};

struct Model {
  std::uint64_t generation = 0;
  std::uint64_t reading = 0;  ///< of the order that it was made for: which state of the drawings it is made from
  Board board;
  Faults faults;        ///< what keeps it, or one of its stages, from being built
  std::string trouble;  ///< a stage that could not be made, in words
  std::optional<PreparedBoard>
      prepared;  ///< none where the board's faults keep it from that: what follows is then missing
  std::shared_ptr<const FittedInlays>
      fitted;                     ///< what was read and fitted of its drawings; null where it did not come to that
  std::vector<Finding> findings;  ///< the costliest first
  std::shared_ptr<const NeckReading> neck;    ///< of the neck's STEP file; null until it is read, or without one
  std::shared_ptr<const NeckWood> neck_wood;  ///< of that file, for the picture; null as long as it is not to be shown
  std::shared_ptr<const Fittings> fittings;
  std::array<std::shared_ptr<const StageModel>, stage_count> stages;
  std::optional<Exact> exact;      ///< of the stage shown
  std::optional<Release> release;  ///< of the next cut; none until it is judged, or where all is cut
  bool settled = false;            ///< nothing more comes for this board

  const StageModel* at(Stage stage) const { return stages[static_cast<std::size_t>(stage)].get(); }
};

using ModelPtr = std::shared_ptr<const Model>;

}  // namespace sagitta::viewer
