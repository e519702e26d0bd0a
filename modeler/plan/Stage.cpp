#include "plan/Stage.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "layout/Layout.hpp"

namespace sagitta {
namespace {

constexpr std::array<std::pair<Stage, std::string_view>, stage_count> names{{{Stage::blank, "blank"},
                                                                             {Stage::thicknessed, "thicknessed"},
                                                                             {Stage::pocketed, "pocketed"},
                                                                             {Stage::radiused, "radiused"},
                                                                             {Stage::slotted, "slotted"},
                                                                             {Stage::board, "board"},
                                                                             {Stage::finished, "finished"}}};

}  // namespace

std::string_view name(Stage stage) {
  return std::find_if(names.begin(), names.end(), [&](const auto& entry) { return entry.first == stage; })->second;
}

std::optional<Stage> stage_named(std::string_view text) {
  for (const auto& [stage, word] : names)
    if (word == text) return stage;
  return std::nullopt;
}

bool works_edges(const Board& board) { return board.edges && (board.edges->roll > 0 || board.edges->bevel > 0); }

std::vector<Stage> stages_of(const Board& board) {
  std::vector<Stage> stages{Stage::blank};
  if (has_thickness(board)) stages.push_back(Stage::thicknessed);
  stages.insert(stages.end(), {Stage::pocketed, Stage::radiused, Stage::slotted, Stage::board});
  if (board.sanding > 0 || (works_edges(board) && board.edges->stage == EdgeStage::hand))
    stages.push_back(Stage::finished);
  return stages;
}

}  // namespace sagitta
