#pragma once

/// The page on which a new board starts: the boards worked at last and the presets, each as a drawing with its figures.

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "board/BoardFile.hpp"
#include "document/Settings.hpp"
#include "layout/Layout.hpp"
#include "requests/Request.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// A board as the page shows it.
struct StartCard {
  std::string id, title, words;          ///< words: strings, scale, frets and surface
  std::shared_ptr<const Board> board;    ///< null where it cannot be read
  std::shared_ptr<const Layout> layout;  ///< null where it cannot be laid out
  std::filesystem::path file;            ///< of a board worked at last; "" for a preset
};

StartCard card_of(std::string id, std::string title, BoardFile file);
/// Its plan, as large as it goes into the rectangle; nothing where it has none.
void draw_card_plan(const Ui& ui, const StartCard& card, ImVec2 low, ImVec2 high);

/// Made when the page opens.
struct StartForm {
  bool made = false;
  std::vector<StartCard> last, presets;
};

Requests draw_start(Ui& ui, StartForm& form, const Settings& settings);

/// "6 strings, 648 mm, 22 frets, compound 254 to 406 mm".
std::string figures_of(const Board& board);

}  // namespace sagitta::viewer
