#pragma once

/// The menu that the right button opens on the board: what can be done with what lies under the pointer.

#include "overlay/PictureState.hpp"
#include "requests/Request.hpp"

namespace sagitta::viewer {

/// For the feature that is selected; opened by ImGui::OpenPopup(board_menu_name) in the same window.
Requests draw_board_menu(const HandState& state);
inline constexpr const char* board_menu_name = "board menu";

}  // namespace sagitta::viewer
