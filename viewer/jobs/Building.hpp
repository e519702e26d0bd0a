#pragma once

/// The steps that build a model in the background.

#include "jobs/Model.hpp"
#include "jobs/Order.hpp"
#include "plane/Cancel.hpp"

namespace sagitta::viewer {

/// Deviations of the picture's meshes, mm: while a hand moves, and at rest.
inline constexpr double moving_deviation = 0.05, resting_deviation = 0.01;

/// The board prepared, its faults, findings and fittings; stages are left as they are in `before` where the board is
/// equal and no drawing was changed. Nothing when it was cancelled. Steps of fitting the drawings are counted.
std::optional<Model> begin_model(const Order& order, const Model* before, InlayFitter& fitter, const Cancel& cancel,
                                 const ProgressCounter& progress);
/// The findings and fittings that the neck's file has a say in; what was read and its wood may be null.
void take_neck(Model& model, std::shared_ptr<const NeckReading> neck, std::shared_ptr<const NeckWood> wood);
/// Whether the next cut may be made; the model's faults and findings must be complete.
void take_release(Model& model);
/// One stage meshed within `deviation`; null when cancelled or when it cannot be built: then `faults` gets what the
/// builder can change, `trouble` what went wrong otherwise.
std::shared_ptr<const StageModel> make_stage(const PreparedBoard& board, Stage stage, double deviation,
                                             const Cancel& cancel, std::string& trouble, Faults& faults);
/// The exact solid's figures of a stage.
std::optional<Exact> make_exact(const StageModel& stage, std::string& trouble);

}  // namespace sagitta::viewer
