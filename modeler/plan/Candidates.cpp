#include "plan/Candidates.hpp"

#include <vector>

#include "plan/FormCurves.hpp"

namespace sagitta {
namespace {

/// The forms of the playing surface in one cell against the floors in it and beside it, and against each other: a roll
/// first, then a bevel.
void add_pairs_of_forms(const Surface& surface, const Candidates& here, const std::vector<BoundingSurface>& levels,
                        const std::vector<BoundingSurface>& moved, std::set<BoundPair>& pairs) {
  for (const Candidates::Form& form : here.forms) {
    for (const auto* others : {&levels, &moved})
      for (const BoundingSurface& other : *others)
        if (!joins(surface, form.bound, other)) pairs.insert({form.bound, other});
    for (const Candidates::Form& other : here.forms)
      if (!form.bound.scalloped() && other.bound.scalloped()) pairs.insert({form.bound, other.bound});
  }
}

}  // namespace

std::set<BoundPair> pairs_of(const Surface& surface, const Candidates& left, const Candidates& right) {
  std::vector<BoundingSurface> levels, moved;
  for (const Candidates* here : {&left, &right}) {
    if (!here->wood) continue;
    levels.push_back(
        {BoundingSurface::Kind::level, here->bottom});  // beside the board a cut may go right through the blank
    if (here->level) levels.push_back(*here->level);
    if (here->moved) moved.push_back(*here->moved);
  }
  std::set<BoundPair> pairs;
  for (const BoundingSurface& m : moved)
    for (const BoundingSurface& l : levels) pairs.insert({m, l});
  for (const Candidates* here : {&left, &right})
    if (here->wood) add_pairs_of_forms(surface, *here, levels, moved, pairs);
  for (const Candidates* here : {&left, &right}) {
    if (!here->wood || !here->trough) continue;
    for (const BoundingSurface& wall : {*here->trough, vault_over(*here->trough)})
      for (const auto* others : {&levels, &moved})
        for (const BoundingSurface& other : *others) pairs.insert({wall, other});
  }
  return pairs;
}

}  // namespace sagitta
