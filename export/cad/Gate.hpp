#pragma once

/// The gate before the disk: the only place of export/ that makes solids, meshes and STEP texts to be written. Each is
/// judged here, and what is not sound does not come through.

#include <stdexcept>
#include <string>
#include <vector>

#include "cad/StepFile.hpp"
#include "cad/ThreeMfFile.hpp"
#include "lift/Flaw.hpp"
#include "lift/Shell.hpp"
#include "mesh/Mesh.hpp"
#include "plane/Cancel.hpp"
#include "solid/Solid.hpp"

namespace sagitta {

/// Whose solid or mesh it is: "board" of stage "slotted", "shell-03" of "pieces".
struct BodyPlace {
  std::string stage, body;
};

/// A result is not sound: a fault of the program, not of the board. what() says which, where and why.
struct Unsound : std::runtime_error {
  Unsound(BodyPlace place_, std::string feature_, Flaw flaw_);
  BodyPlace place;
  std::string feature;  ///< of the cut beside the flaw; empty where none is known
  Flaw flaw;
};

/// A solid that was found sound, with its figures.
struct SoundSolid {
  TopoDS_Solid solid;
  MassProperties measured;
};

/// The one solid of a shell. Throws Unsound, BuildError.
SoundSolid sound_solid(const Shell& shell, const BodyPlace& place);

/// The solids of a shell, one for each of its connected bodies; together they have the plan's volume. Throws Unsound,
/// BuildError, and Interrupted when the token is asked to stop.
std::vector<SoundSolid> sound_solids(const Shell& shell, const BodyPlace& place, const Cancel& cancel);

/// The mesh of a shell within `deviation`, mm. Throws Unsound, and Interrupted when the token is asked to stop.
Mesh sound_mesh(const Shell& shell, double deviation, const BodyPlace& place, const Cancel& cancel);

/// The bytes of a 3MF file whose bodies came through here, if no two of their points are one in its figures. Throws
/// Unsound.
std::string sound_three_mf(const std::string& title, const std::vector<ThreeMfBody>& bodies, const std::string& stage);

/// The text of a STEP file whose bodies came through here. Throws Unsound.
std::string sound_step(const StepModel& model, const StepStyle& style, const std::string& stage);

}  // namespace sagitta
