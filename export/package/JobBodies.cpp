#include "package/JobBodies.hpp"

#include "cad/Interrupt.hpp"
#include "plane/ParallelFor.hpp"

namespace sagitta {
namespace {

BodyPlace place_of(Stage stage) { return {std::string(name(stage)), "board"}; }
BodyPlace place_of(Assembly assembly, const PieceBody& piece) { return {std::string(name(assembly)), piece.name}; }

/// What `make` makes of each piece, side by side.
template <class Made, class Make>
std::vector<Made> each(const std::vector<PieceBody>& pieces, const Cancel& cancel, const Make& make) {
  std::vector<Made> all(pieces.size());
  parallel_for(static_cast<int>(pieces.size()), [&](int i) {
    stop_if_wanted(cancel);
    all[static_cast<std::size_t>(i)] = make(pieces[static_cast<std::size_t>(i)]);
  });
  return all;
}

}  // namespace

JobBodies::Kept& JobBodies::kept(Stage stage) {
  const std::lock_guard lock(looking_);
  return stages_[stage];
}

const SoundSolid& JobBodies::solid(Stage stage) {
  stop_if_wanted(cancel_);
  return kept(stage).solid.get([&] { return sound_solid(ready_.shell(stage), place_of(stage)); });
}

const Mesh& JobBodies::mesh(Stage stage) {
  stop_if_wanted(cancel_);
  return kept(stage).mesh.get([&] { return sound_mesh(ready_.shell(stage), deviation_, place_of(stage), cancel_); });
}

const std::vector<PieceBody>& JobBodies::pieces(Assembly assembly) {
  const auto& once = [&]() -> const Once<std::vector<PieceBody>>& {
    const std::lock_guard lock(looking_);
    return pieces_[assembly];
  }();
  return once.get([&] { return piece_bodies(ready_, assembly); });
}

std::vector<std::vector<SoundSolid>> JobBodies::piece_solids(Assembly assembly) {
  return each<std::vector<SoundSolid>>(pieces(assembly), cancel_, [&](const PieceBody& piece) {
    return sound_solids(piece.shell, place_of(assembly, piece), cancel_);
  });
}

std::vector<Mesh> JobBodies::piece_meshes(Assembly assembly) {
  return each<Mesh>(pieces(assembly), cancel_, [&](const PieceBody& piece) {
    return sound_mesh(piece.shell, deviation_, place_of(assembly, piece), cancel_);
  });
}

}  // namespace sagitta
