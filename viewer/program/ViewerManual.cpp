#include "program/ViewerManual.hpp"

#include "manual/Manual.hpp"
#include "plan/Stage.hpp"
#include "scene/Camera.hpp"

namespace sagitta::viewer {
namespace {

Offers viewer_offers() {
  Offer stages{Offer::Kind::words, {}}, views{Offer::Kind::words, {}};
  for (std::size_t i = 0; i < stage_count; ++i) stages.words.emplace_back(name(static_cast<Stage>(i)));
  for (const StandardView view : standard_views) views.words.emplace_back(name(view));
  return {{"BOARD", {Offer::Kind::files, {}}},
          {"--shot", {Offer::Kind::files, {}}},
          {"--stage", stages},
          {"--view", views},
          {"--panel", {Offer::Kind::words, {"Decisions", "Board", "Stages", "Checks"}}},
          {"--manual", {Offer::Kind::words, manual_forms()}}};
}

}  // namespace

ProgramTable viewer_table(const CLI::App& line) {
  ProgramTable table = table_of(line, viewer_offers());
  table.version = SAGITTA_VERSION;
  table.date = SAGITTA_DATE;
  table.exits = {{0, "all went well"},
                 {1, "there is no display, or it cannot draw the board"},
                 {2, "wrong usage, or a board that cannot be read or built"},
                 {3, "the picture could not be written"}};
  table.examples = {{"sagitta-viewer my-board.toml", "Opens the window on a board"},
                    {"sagitta-viewer my-board.toml --shot board.png", "Draws a picture of it without a display"}};
  table.see_also = {"sagitta"};
  return table;
}

}  // namespace sagitta::viewer
