#include "export/ReadyBoard.hpp"

#include <algorithm>
#include <stdexcept>

namespace sagitta {
namespace {

/// Whether the neck's file may be read from where it lies; what it holds is judged later.
Faults neck_place_faults(const Board& board, Outside outside) {
  if (!board.neck || board.neck->file.empty()) return {};
  auto place = input_path({"neck's file", board.folder, board.neck->file, board.folder}, outside);
  auto* fault = std::get_if<Fault>(&place);
  if (!fault) return {};
  fault->key = "neck.file";
  return {std::move(*fault)};
}

std::variant<DrawnBoard, Problems> draw(BoardFile file) {
  if (!file.problems.empty()) return file.problems;
  auto layout = lay_out(file.board);
  if (const auto* faults = std::get_if<Faults>(&layout)) return locate(file, *faults);
  return DrawnBoard{std::move(file), std::move(std::get<Layout>(layout))};
}

}  // namespace

const Plan& ReadyBoard::plan(Stage stage) const {
  const auto found = std::find_if(plans.begin(), plans.end(), [&](const Plan& plan) { return plan.stage == stage; });
  if (found == plans.end()) throw std::logic_error("the board has no stage " + std::string(name(stage)));
  return *found;
}

std::variant<DrawnBoard, Problems> draw(const std::string& path, Outside outside) {
  return draw(read_board(path, outside));
}

std::variant<ReadyBoard, Problems> prepare(DrawnBoard drawn, Outside outside) {
  const Surface surface = surface_of(drawn.file.board, drawn.layout);
  Faults faults = surface_faults(drawn.file.board, drawn.layout, surface);
  for (Fault& fault : neck_place_faults(drawn.file.board, outside)) faults.push_back(std::move(fault));
  if (!faults.empty()) return locate(drawn.file, faults);
  ReadyBoard ready{std::move(drawn.file), std::move(drawn.layout), surface, {}, {}, outside};
  auto inlays = fit_inlays(ready.board(), ready.layout, outside);
  if (const auto* wrong = std::get_if<Faults>(&inlays)) return locate(ready.file, *wrong);
  ready.inlays = std::get<Inlays>(std::move(inlays));
  for (const Stage stage : stages_of(ready.board())) {
    auto plan = make_plan(ready.board(), ready.layout, surface, ready.inlays, stage);
    if (const auto* wrong = std::get_if<Faults>(&plan)) return locate(ready.file, *wrong);
    ready.plans.push_back(std::get<Plan>(std::move(plan)));
  }
  return ready;
}

std::variant<ReadyBoard, Problems> prepare(BoardFile file, Outside outside) {
  auto drawn = draw(std::move(file));
  if (auto* problems = std::get_if<Problems>(&drawn)) return std::move(*problems);
  return prepare(std::get<DrawnBoard>(std::move(drawn)), outside);
}

std::variant<ReadyBoard, Problems> prepare(const std::string& path, Outside outside) {
  return prepare(read_board(path, outside), outside);
}

Problems problems_of(const std::variant<ReadyBoard, Problems>& prepared) {
  const auto* problems = std::get_if<Problems>(&prepared);
  return problems ? *problems : Problems{};
}

}  // namespace sagitta
