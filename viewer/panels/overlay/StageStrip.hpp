#pragma once

/// The small pictures of the stages.

#include <array>

#include "document/Document.hpp"
#include "jobs/Results.hpp"
#include "requests/Request.hpp"
#include "scene/StageModel.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// Small pictures of the stock after each cut, by stage; null where none is drawn yet.
using StagePictures = std::array<ImTextureID, stage_count>;

/// Size of one small picture when this many share the strip's width, pixels.
ImVec2 stage_picture_size(const Ui& ui, float width, std::size_t count);
float stage_strip_height(const Ui& ui);
/// What the strip shows and changes.
struct StripState {
  Ui& ui;
  Document& document;
  const Results& results;
  const Manner manner;
  Stage& shown;
};

/// Below the board: whether the next cut may be made, and the stock after each cut, grouped by set-up; a click on one
/// makes it the stage shown.
Requests draw_stage_strip(const StripState& state, ImVec2 low, ImVec2 size, const StagePictures& pictures);

/// Stages under the set-up that they come from: its name, then its stages.
struct StageGroup {
  std::string title;
  std::vector<Stage> stages;
};
std::vector<StageGroup> stage_groups(const Board& board);

}  // namespace sagitta::viewer
