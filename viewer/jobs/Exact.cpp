#include <cmath>

#include "jobs/Building.hpp"
#include "solid/Solid.hpp"

namespace sagitta::viewer {

std::optional<Exact> make_exact(const StageModel& stage, std::string& trouble) {
  try {
    const TopoDS_Solid solid = make_solid(stage.shell);
    const SolidFigures found = figures(solid);
    Exact exact;
    exact.volume = found.volume, exact.area = found.area;
    return exact;
  } catch (const BuildError& error) {
    trouble =
        "The exact solid of stage " + error.stage + " could not be made near " + error.feature + ": " + error.what();
  } catch (const std::exception& error) {
    trouble = std::string("The exact solid could not be made: ") + error.what();
  }
  return std::nullopt;
}

}  // namespace sagitta::viewer
