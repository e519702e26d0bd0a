#include "dialogs/ComparePage.hpp"

#include <imgui_internal.h>

#include <algorithm>

#include "decisions/Decisions.hpp"
#include "widgets/Block.hpp"
#include "widgets/Buttons.hpp"
#include "widgets/PlanDrawing.hpp"

namespace sagitta::viewer {

namespace {

constexpr float least_strip = 54, strip_pad = 8, gap = 18;  // units
constexpr float plans_share = 0.64f, beside_from = 860;     // of the width; units of it
constexpr float lines_thick = 1.5f;

const PreparedBoard& board_of(const ModelPtr& model) { return *model->prepared; }

const Inlays* inlays_of(const ModelPtr& model) { return model->fitted ? &model->fitted->inlays : nullptr; }

/// Both boards at one scale with the lines that their scales are measured from under each other.
struct Strips {
  float scale = 1;
  double nut_side = 0;  ///< mm that the longer one reaches behind x = 0
  float height = 0;     ///< of one strip, pixels
};

Strips strips_for(const Ui& ui, const Layout& a, const Layout& b, float width, float tallest) {
  const float pad = ui.px(strip_pad);
  Box box;
  for (const Layout* layout : {&a, &b})
    for (const CurveSegment& segment : layout->outline)
      for (const Point p : {bounds(segment).low, bounds(segment).high}) box.add(p);
  const auto long_side = static_cast<float>(std::max(box.high.x - box.low.x, 1.0)),
             short_side = static_cast<float>(std::max(box.high.y - box.low.y, 1.0));
  Strips strips;
  strips.nut_side = -box.low.x;
  strips.scale =
      std::min((width - 2 * pad) / long_side, (std::max(tallest, ui.px(least_strip)) - 2 * pad) / short_side);
  strips.height = short_side * strips.scale + 2 * pad;
  return strips;
}

PlanFrame frame_at(const Ui& ui, const Strips& strips, ImVec2 low, float width) {
  PlanFrame frame;
  frame.low = low, frame.high = ImVec2(low.x + width, low.y + strips.height);
  frame.scale = strips.scale;
  frame.origin = {low.x + ui.px(strip_pad) + static_cast<float>(strips.nut_side) * strips.scale,
                  low.y + strips.height / 2};
  return frame;
}

void draw_lines(ImDrawList* paint, const ModelPtr& model, const PlanFrame& frame, ImU32 ink, float thick) {
  for (const auto& line : telling_lines(board_of(model).layout(), inlays_of(model))) {
    std::vector<ImVec2> pixels;
    for (const Point p : line) pixels.push_back(frame.at(p));
    paint->AddPolyline(pixels.data(), static_cast<int>(pixels.size()), ink, 0, thick);
  }
}

/// A board from above under its name; `over`: the lines of another on it.
void draw_strip(const ComparePage& page, const Strips& strips, const std::string& name, const std::string& words,
                const ModelPtr& model, const ModelPtr& over) {
  page.ui.quiet(words);
  const float width = ImGui::GetContentRegionAvail().x;
  const ImVec2 low = ImGui::GetCursorScreenPos(), high(low.x + width, low.y + strips.height);
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(low, high, page.ui.theme.field, page.ui.px(4));
  const PlanFrame frame = frame_at(page.ui, strips, low, width);
  PlanMarks marks;
  marks.inlays = inlays_of(model);
  if (over) {
    draw_lines(paint, model, frame, page.ui.theme.quiet, lines_thick);
    draw_lines(paint, over, frame, page.ui.theme.accent, lines_thick);
  } else {
    draw_plan(paint, page.ui.theme, model->board, board_of(model).layout(), frame, marks);
  }
  page.ui.note_area(name, low, high, words);
  ImGui::Dummy(ImVec2(width, strips.height));
}

std::string effect_words(const KeyDifference& key, Units units) {
  return key.effect ? effect_text(*key.effect, units) : "cannot be built with this change alone";
}

void draw_found(const ComparePage& page, const Compared& found) {
  Ui& ui = page.ui;
  const Units units = found.from->board.units;  // as the command tells them
  if (!found.trouble.empty()) return ui.warning(found.trouble);
  if (found.keys.empty()) return ui.quiet("The two boards are the same.");
  ui.quiet("What differs, lengths in " + std::string(unit_name(units)));
  for (const KeyDifference& key : found.keys)
    draw_block(ui, {"difference " + key.key, label_of_key(key.key), key.a + " \u2192 " + key.b,
                    "In the wood: " + effect_words(key, units), "", Weight::middle});
  ui.quiet("All together: " + effect_text(found.all, units) + ".");
  ui.note("all together", effect_text(found.all, units));
}

void draw_list(const ComparePage& page, const ModelPtr& here, const ModelPtr& there) {
  const bool of_these = page.found && page.found->from->board == there->board && page.found->to->board == here->board;
  if (of_these)
    draw_found(page, *page.found);
  else
    page.ui.quiet("Working out what each difference does to the wood\u2026");
}

void draw_plans(const ComparePage& page, const ModelPtr& here, const ModelPtr& there, float tallest) {
  const std::string& other = page.results.comparison->name;
  const Strips strips =
      strips_for(page.ui, board_of(here).layout(), board_of(there).layout(), ImGui::GetContentRegionAvail().x, tallest);
  draw_strip(page, strips, "other board", other, there, nullptr);
  draw_strip(page, strips, "this board", page.title, here, nullptr);
  draw_strip(page, strips, "both boards", "Over each other: " + other + " in colour, " + page.title + " in grey", here,
             there);
}

/// The plans, beside them what differs where there is room, else below.
void draw_both(const ComparePage& page, const ModelPtr& here, const ModelPtr& there) {
  const Ui& ui = page.ui;
  const ImVec2 room = ImGui::GetContentRegionAvail();
  const float foot = ImGui::GetFrameHeight() + ui.px(16), caption = ImGui::GetTextLineHeightWithSpacing() + ui.px(12);
  const bool beside = room.x > ui.px(beside_from);
  const float plans = beside ? room.x * plans_share : room.x, high = beside ? room.y - foot : (room.y - foot) * 0.55f;
  ImGui::BeginChild("plans", ImVec2(plans, high));
  draw_plans(page, here, there, high / 3 - caption);
  ImGui::EndChild();
  if (beside) ImGui::SameLine(0, ui.px(gap));
  ImGui::BeginChild("differences", ImVec2(0, beside ? high : -foot));
  draw_list(page, here, there);
  ImGui::EndChild();
}

}  // namespace

Requests draw_compared(const ComparePage& page) {
  Requests asked;
  Ui& ui = page.ui;
  const auto& other = page.results.comparison;
  const ModelPtr here = page.results.good, there = other ? other->model : nullptr;
  if (other && here && there && here->prepared && there->prepared) {
    asked.push_back(asked::CompareInDetail{here, there});
    draw_both(page, here, there);
  } else if (other && !other->trouble.empty()) {
    ui.warning(other->name + " cannot be built: " + other->trouble + ".");
  } else {
    ui.quiet("Making the other board\u2026");
  }
  dialog_foot(ui, button_width(ui, "Done"));
  if (ui.primary("Done")) asked.push_back(asked::Show{Dialog::none});
  return asked;
}

}  // namespace sagitta::viewer
