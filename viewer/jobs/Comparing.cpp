#include "jobs/Comparing.hpp"

namespace sagitta::viewer {
namespace {

bool same_boards(const ModelPtr& a, const ModelPtr& b) {
  return a && b && a->board == b->board && a->reading == b->reading;
}

}  // namespace

bool operator==(const BoardPair& a, const BoardPair& b) {
  return same_boards(a.from, b.from) && same_boards(a.to, b.to);
}

Comparing::Comparing()
    : NewestJob([](const BoardPair& pair, Compared& found) {
        found.from = pair.from, found.to = pair.to;
        found.keys = differences(*pair.from->prepared, *pair.to->prepared);
        found.all = effect_of(*pair.from->prepared, *pair.to->prepared);
      }) {}

}  // namespace sagitta::viewer
