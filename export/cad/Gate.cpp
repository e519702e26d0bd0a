#include "cad/Gate.hpp"

#include <Standard_Failure.hxx>
#include <cstdio>

#include "cad/Interrupt.hpp"
#include "lift/ConnectedComponents.hpp"
#include "mesh/MeshFlaw.hpp"
#include "plan/WoodVolume.hpp"
#include "solid/PlanePcurves.hpp"
#include "solid/SolidFlaw.hpp"

namespace sagitta {
namespace {

std::string at_place(const std::array<double, 3>& at) {
  char text[96];
  std::snprintf(text, sizeof text, "x %.3f, y %.3f, z %.3f mm", at[0], at[1], at[2]);
  return text;
}

std::string told(const BodyPlace& place, const std::string& feature, const Flaw& flaw) {
  return "stage " + place.stage + ", body " + place.body + ", " +
         (feature.empty() ? "at " : "near " + feature + " at ") + at_place(flaw.at) + ": " + flaw.what;
}

[[noreturn]] void refuse(const BodyPlace& place, const Shell& shell, const Flaw& flaw) {
  const bool known = flaw.face >= 0 && flaw.face < static_cast<int>(shell.faces.size());
  throw Unsound(place, known ? name(shell, shell.faces[static_cast<std::size_t>(flaw.face)]) : "", flaw);
}

/// Where the shell is: for a failure that names no place.
Flaw kernel_gave_up(const Shell& shell, const Standard_Failure& failure) {
  Flaw flaw{Flaw::Kind::kernel, std::string("the geometry kernel gave up: ") + failure.GetMessageString(), {}, -1};
  if (!shell.vertices.empty()) flaw.at = {shell.vertices[0].p.x, shell.vertices[0].p.y, shell.vertices[0].z};
  return flaw;
}

/// The solid of a connected shell, its volume not yet compared with the plan's.
SoundSolid made_solid(const Shell& shell, const BodyPlace& place) {
  try {
    SoundSolid made{make_solid(shell), {}};
    keep_plane_pcurves(made.solid);
    if (const auto flaw = flaw_in(made.solid, 2 - 2 * genus(shell))) refuse(place, shell, *flaw);
    made.measured = mass_properties(made.solid);
    return made;
  } catch (const Standard_Failure& failure) {
    refuse(place, shell, kernel_gave_up(shell, failure));
  }
}

void judge_plan(const Shell& shell, const BodyPlace& place) {
  if (const auto flaw = coverage_flaw(shell.plan)) refuse(place, shell, *flaw);
}

void judge_volume(const Shell& shell, double found, const BodyPlace& place) {
  const double planned = wood_volume(shell.plan);
  if (const auto flaw = volume_flaw(shell, found, planned, volume_agreement * planned)) refuse(place, shell, *flaw);
}

}  // namespace

Unsound::Unsound(BodyPlace place_, std::string feature_, Flaw flaw_)
    : std::runtime_error(told(place_, feature_, flaw_)),
      place(std::move(place_)),
      feature(std::move(feature_)),
      flaw(std::move(flaw_)) {}

SoundSolid sound_solid(const Shell& shell, const BodyPlace& place) {
  judge_plan(shell, place);
  SoundSolid made = made_solid(shell, place);
  judge_volume(shell, made.measured.volume, place);
  return made;
}

std::vector<SoundSolid> sound_solids(const Shell& shell, const BodyPlace& place, const Cancel& cancel) {
  judge_plan(shell, place);
  std::vector<SoundSolid> solids;
  double volume = 0;
  for (const Shell& part : connected_components(shell)) {
    solids.push_back(made_solid(part, place));
    volume += solids.back().measured.volume;
    stop_if_wanted(cancel);
  }
  judge_volume(shell, volume, place);
  return solids;
}

Mesh sound_mesh(const Shell& shell, double deviation, const BodyPlace& place, const Cancel& cancel) {
  judge_plan(shell, place);
  Mesh mesh = make_mesh(shell, deviation, cancel);
  stop_if_wanted(cancel);
  if (const auto flaw = flaw_in(mesh, shell, wood_volume(shell.plan))) refuse(place, shell, *flaw);
  if (const auto flaw = deviation_flaw(shell, mesh.deviation, deviation)) refuse(place, shell, *flaw);
  return mesh;
}

std::string sound_three_mf(const std::string& title, const std::vector<ThreeMfBody>& bodies, const std::string& stage) {
  static_assert(three_mf_step <= told_apart);
  for (const ThreeMfBody& body : bodies)
    if (const auto flaw = equal_points(body.mesh, three_mf_step)) throw Unsound({stage, body.name}, "", *flaw);
  return three_mf_bytes(title, bodies);
}

std::string sound_step(const StepModel& model, const StepStyle& style, const std::string& stage) try {
  return step_text(model, style);
} catch (const Standard_Failure& failure) {
  throw Unsound({stage, "all"}, "",
                {Flaw::Kind::file, std::string("the kernel cannot write it: ") + failure.GetMessageString(), {}, -1});
}

}  // namespace sagitta
