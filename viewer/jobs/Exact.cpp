#include <cmath>

#include "jobs/Building.hpp"
#include "solid/Failure.hpp"
#include "solid/Solid.hpp"

namespace sagitta::viewer {

std::optional<Exact> make_exact(const StageModel& stage, std::string& trouble) {
  Exact exact;
  const auto wrong = failure_of([&] {
    const MassProperties found = mass_properties(make_solid(*stage.shell));
    exact.volume = found.volume, exact.area = found.area;
  });
  if (!wrong) return exact;
  trouble = "The exact solid could not be made: " + *wrong;
  return std::nullopt;
}

}  // namespace sagitta::viewer
