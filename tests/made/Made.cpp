#include "made/Made.hpp"

#include <algorithm>

namespace sagitta::made {

std::variant<Shell, Faults> shell_of(const Board& board, Stage stage) {
  auto layout = lay_out(board);
  if (auto* faults = std::get_if<Faults>(&layout)) return *faults;
  const Layout& sound = std::get<Layout>(layout);
  const Surface surface = surface_of(board, sound);
  if (Faults faults = surface_faults(board, sound, surface); !faults.empty()) return faults;
  auto plan = make_plan(board, sound, surface, stage);
  if (auto* faults = std::get_if<Faults>(&plan)) return *faults;
  return lift(std::get<Plan>(std::move(plan)));
}

bool only_not_built(const Faults& faults) {
  return std::all_of(faults.begin(), faults.end(),
                     [](const Fault& f) { return f.message.find("not built yet") != std::string::npos; });
}

std::string told(const Faults& faults) {
  std::string text;
  for (const Fault& fault : faults) text += fault.key + ": " + fault.message + "\n";
  return text;
}

}  // namespace sagitta::made
