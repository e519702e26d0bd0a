#pragma once

/// The small pictures of the stages.

#include <array>

#include "board/Board.hpp"
#include "scene/StageModel.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// Small pictures of the stock after each cut, by stage; null where none is drawn yet.
using StagePictures = std::array<ImTextureID, stage_count>;

/// Size of one small picture when this many share the strip's width, pixels.
ImVec2 stage_picture_size(const Ui& ui, float width, std::size_t count);
float stage_strip_height(const Ui& ui);
/// Below the board: the stock after each cut, grouped by set-up; a click on one makes it the stage
/// shown.
void draw_stage_strip(Ui& ui, const Board& board, Stage& shown, ImVec2 low, ImVec2 size, const StagePictures& pictures);

/// Stages under the set-up that they come from: its name, then its stages.
struct StageGroup {
  std::string title;
  std::vector<Stage> stages;
};
std::vector<StageGroup> stage_groups(const Board& board);

}  // namespace sagitta::viewer
