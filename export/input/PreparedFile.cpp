#include "input/PreparedFile.hpp"

#include <utility>

#include "prepared/HeelDrawing.hpp"
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

}  // namespace

std::variant<Drawn, Problems> draw(const BoardFile& file, Outside outside) {
  if (!file.problems.empty()) return file.problems;
  auto drawn = draw(file.board, outside);
  if (const auto* faults = std::get_if<Faults>(&drawn)) return locate(file, *faults);
  return std::get<Drawn>(std::move(drawn));
}

std::variant<PreparedBoard, Problems> prepare(const BoardFile& file, Outside outside) {
  auto drawn = draw(file, outside);
  if (auto* problems = std::get_if<Problems>(&drawn)) return std::move(*problems);
  if (Faults neck = neck_place_faults(file.board, outside); !neck.empty()) {
    Faults faults = surface_faults(std::get<Drawn>(drawn));
    faults.insert(faults.end(), neck.begin(), neck.end());
    return locate(file, faults);
  }
  auto prepared = prepare(std::get<Drawn>(std::move(drawn)), outside);
  if (const auto* faults = std::get_if<Faults>(&prepared)) return locate(file, *faults);
  if (const Faults faults = std::get<PreparedBoard>(prepared).stage_faults(); !faults.empty())
    return locate(file, faults);
  return std::get<PreparedBoard>(std::move(prepared));
}

std::variant<PreparedBoard, Problems> prepare(const std::string& path, Outside outside) {
  return prepare(read_board(path, outside), outside);
}

Problems problems_of(const std::variant<PreparedBoard, Problems>& prepared) {
  const auto* problems = std::get_if<Problems>(&prepared);
  return problems ? *problems : Problems{};
}

}  // namespace sagitta
