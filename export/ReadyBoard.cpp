#include "export/ReadyBoard.hpp"

#include "plan/Plan.hpp"

namespace sagitta {

std::variant<DrawnBoard, Problems> draw(const std::string& path) {
  BoardFile file = read_board(path);
  if (!file.problems.empty()) return file.problems;
  auto layout = lay_out(file.board);
  if (const auto* faults = std::get_if<Faults>(&layout)) return locate(file, *faults);
  return DrawnBoard{std::move(file), std::move(std::get<Layout>(layout))};
}

std::variant<ReadyBoard, Problems> prepare(const std::string& path) {
  auto drawn = draw(path);
  if (auto* problems = std::get_if<Problems>(&drawn)) return std::move(*problems);
  auto& [file, layout] = std::get<DrawnBoard>(drawn);
  const Surface surface = surface_of(file.board, layout);
  Faults faults = surface_faults(file.board, layout, surface);
  if (!faults.empty()) return locate(file, faults);
  for (const Stage stage : stages_of(file.board)) {
    const auto plan = make_plan(file.board, layout, surface, stage);
    if (const auto* wrong = std::get_if<Faults>(&plan)) return locate(file, *wrong);
  }
  return ReadyBoard{std::move(file), std::move(layout), surface};
}

Problems problems_of(const std::variant<ReadyBoard, Problems>& prepared) {
  const auto* problems = std::get_if<Problems>(&prepared);
  return problems ? *problems : Problems{};
}

}  // namespace sagitta
