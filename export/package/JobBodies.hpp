#pragma once

/// The bodies of a job, each made and judged once.

#include <map>
#include <mutex>
#include <vector>

#include "cad/Gate.hpp"
#include "cad/PieceBodies.hpp"
#include "mesh/Mesh.hpp"
#include "plan/Stage.hpp"
#include "plane/Cancel.hpp"
#include "prepared/Once.hpp"
#include "prepared/PreparedBoard.hpp"

namespace sagitta {

/// Solids and meshes of the stages, and the pieces as they lie in each assembly: each is made when it is first asked
/// for, whichever thread asks. What is asked for throws as the Gate does, and Interrupted.
class JobBodies {
 public:
  /// `ready` must outlive this.
  JobBodies(const PreparedBoard& ready, double deviation, const Cancel& cancel)
      : ready_(ready), deviation_(deviation), cancel_(cancel) {}

  const SoundSolid& solid(Stage stage);
  const Mesh& mesh(Stage stage);
  const std::vector<PieceBody>& pieces(Assembly assembly);
  /// The solids of each of those pieces; they are not kept.
  std::vector<std::vector<SoundSolid>> piece_solids(Assembly assembly);
  /// The mesh of each of those pieces; they are not kept.
  std::vector<Mesh> piece_meshes(Assembly assembly);

 private:
  struct Kept {
    Once<SoundSolid> solid;
    Once<Mesh> mesh;
  };
  Kept& kept(Stage stage);

  const PreparedBoard& ready_;
  double deviation_;
  Cancel cancel_;
  std::mutex looking_;
  std::map<Stage, Kept> stages_;
  std::map<Assembly, Once<std::vector<PieceBody>>> pieces_;
};

}  // namespace sagitta
