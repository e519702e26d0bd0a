#include "jobs/Building.hpp"

#include <algorithm>

#include "findings/Findings.hpp"
#include "jobs/Dressing.hpp"
#include "mesh/Mesh.hpp"
#include "prepared/HeelDrawing.hpp"
#include "solid/Failure.hpp"

namespace sagitta::viewer {

namespace {

bool same_neck_file(const Board& a, const Board& b) {
  return a.neck && b.neck && !a.neck->file.empty() && a.neck->file == b.neck->file && a.folder == b.folder;
}

}  // namespace

std::optional<Model> begin_model(const Order& order, const Model* before, InlayFitter& fitter, const Cancel& cancel,
                                 const ProgressCounter& progress) {
  const Board& board = order.board;
  Model model;
  if (before && before->prepared && before->board == board && before->reading == order.reading) {
    model = *before;
    model.generation = order.generation;
    model.settled = false;
    model.trouble.clear();  // what could not be made is tried again
    return model;
  }
  model.generation = order.generation;
  model.reading = order.reading;
  model.board = board;
  auto drawn = draw(board, fitter.outside());
  if (auto* faults = std::get_if<Faults>(&drawn)) {
    model.faults = std::move(*faults);
    return model;
  }
  model.faults = surface_faults(std::get<Drawn>(drawn));
  if (!model.faults.empty()) return model;
  model.fitted = fitter.fit(std::get<Drawn>(drawn), cancel, progress);
  if (!model.fitted) return std::nullopt;
  model.faults = model.fitted->faults;
  if (!model.faults.empty()) return model;
  model.prepared.emplace(std::get<Drawn>(std::move(drawn)), model.fitted, fitter.outside());
  const bool same_neck = before && same_neck_file(before->board, board);
  take_neck(model, same_neck ? before->neck : nullptr, same_neck ? before->neck_wood : nullptr);
  return model;
}

void take_neck(Model& model, std::shared_ptr<const NeckReading> neck, std::shared_ptr<const NeckWood> wood) {
  if (!model.fittings || neck != model.neck) model.findings = findings_of(*model.prepared, neck.get());
  model.neck = std::move(neck);
  model.neck_wood = std::move(wood);
  model.fittings =
      std::make_shared<const Fittings>(dress_fittings(*model.prepared, model.neck.get(), model.neck_wood.get()));
}

void take_release(Model& model) {
  model.release.reset();
  const auto next = next_cut(model.board);
  if (!next) return;
  if (model.faults.empty() && model.prepared)
    model.release = release_before(*model.prepared, model.findings, *next);
  else if (!model.faults.empty())
    model.release = Release{Release::Answer::refused, *next, model.faults.front().message, {}, {}, {}};
}

std::shared_ptr<const StageModel> make_stage(const PreparedBoard& board, Stage stage, double deviation,
                                             const Cancel& cancel, std::string& trouble, Faults& faults) {
  if (const auto* found = std::get_if<Faults>(&board.planned(stage))) {
    for (const Fault& fault : *found)
      if (std::find(faults.begin(), faults.end(), fault) == faults.end()) faults.push_back(fault);
    return nullptr;
  }
  auto made = std::make_shared<StageModel>();
  made->stage = stage;
  made->deviation = deviation;
  const auto wrong = failure_of([&] {
    made->shell = board.kept_shell(stage);
    made->mesh = make_mesh(*made->shell, deviation, cancel);
  });
  if (wrong) {
    trouble = "Stage " + std::string(name(stage)) + " cannot be shown: " + *wrong;
    return nullptr;
  }
  if (cancel.wanted()) return nullptr;
  made->body = dress_body(board, *made->shell, made->mesh);
  made->pieces = dress_pieces(board, stage);
  dress_trim(board, stage, made->pieces);
  return made;
}

}  // namespace sagitta::viewer
