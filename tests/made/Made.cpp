#include "made/Made.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <vector>

#include "prepared/Drawn.hpp"

namespace sagitta::made {
namespace {

bool in_one_hole(const ShellFace& a, const ShellFace& b) {
  return a.bound.of_hole() && b.bound.of_hole() && a.bound.tunnel == b.bound.tunnel;
}

/// Of an oval: its wall stands on one curve, whatever arcs stand for it.
bool on_one_curve(const Shell& shell, const ShellFace& a, const ShellFace& b) {
  return a.feature == b.feature && a.feature >= 0 && shell.plan.features[static_cast<std::size_t>(a.feature)].drawn;
}

bool one_wall(const Shell& shell, const ShellFace& a, const ShellFace& b) {
  if (in_one_hole(a, b)) return true;
  if (a.kind != ShellFace::Kind::wall || b.kind != ShellFace::Kind::wall) return false;
  if (on_one_curve(shell, a, b)) return true;
  return a.segment.is_arc() && b.segment.is_arc() && a.segment.centre == b.segment.centre &&
         a.segment.radius == b.segment.radius;
}

}  // namespace

std::variant<Shell, Faults> shell_of(const Board& board, Stage stage) {
  auto made = draw(board);
  if (auto* faults = std::get_if<Faults>(&made)) return *faults;
  const Drawn& drawn = std::get<Drawn>(made);
  if (Faults faults = surface_faults(drawn); !faults.empty()) return faults;
  auto plan = make_plan(board, drawn.layout, drawn.surface, stage);
  if (auto* faults = std::get_if<Faults>(&plan)) return *faults;
  return lift(std::get<Plan>(std::move(plan)));
}

int face_count(const Shell& shell) {
  std::vector<int> group(shell.faces.size());
  std::iota(group.begin(), group.end(), 0);
  const auto root = [&](int i) {
    while (group[i] != i) i = group[i];
    return i;
  };
  std::map<int, int> first_face;
  for (int f = 0; f < static_cast<int>(shell.faces.size()); ++f)
    for (const auto& loop : shell.faces[f].loops)
      for (const Coedge& use : loop) {
        const auto [it, fresh] = first_face.emplace(use.edge, f);
        if (!fresh && one_wall(shell, shell.faces[f], shell.faces[it->second])) group[root(f)] = root(it->second);
      }
  int count = 0;
  for (int f = 0; f < static_cast<int>(group.size()); ++f) count += group[f] == f;
  return count;
}

std::string told(const Faults& faults) {
  std::string text;
  for (const Fault& fault : faults) text += fault.key + ": " + fault.message + "\n";
  return text;
}

}  // namespace sagitta::made
