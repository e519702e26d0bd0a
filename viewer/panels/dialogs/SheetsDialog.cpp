#include <imgui_internal.h>

#include <algorithm>

#include "dialogs/Dialogs.hpp"
#include "inlay/Flatten.hpp"
#include "inlay/Nesting.hpp"
#include "scene/Slabs.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

constexpr double seen = 0.01;  ///< mm: finer corners are not drawn

void draw_piece(Ui& ui, const NestedPiece& piece, const std::function<ImVec2(Point)>& at) {
  ImDrawList* paint = ImGui::GetWindowDrawList();
  const Region region = thinned(flattened(piece.outline), seen);
  for (const Slab& s : slabs(region)) {
    const ImVec2 corners[] = {at({s.a, s.low_a}), at({s.b, s.low_b}), at({s.b, s.high_b}), at({s.a, s.high_a})};
    paint->AddConvexPolyFilled(corners, 4, ui.theme.accent_soft);
  }
  for (const Polygon& polygon : region)
    for (std::size_t i = 0; i < polygon.size(); ++i)
      paint->AddLine(at(polygon[i]), at(polygon[(i + 1) % polygon.size()]), ui.theme.text, ui.px(1));
  const Box box = bounds(region);
  const std::string number = piece.name.substr(piece.name.rfind('-') + 1);
  const ImVec2 low = at({box.low.x, box.high.y}), high = at({box.high.x, box.low.y}),
               size = ImGui::CalcTextSize(number.c_str());
  const ImVec2 middle = (low + high) * 0.5f;
  if (high.x - low.x > size.x && high.y - low.y > size.y)
    paint->AddText(middle - size * 0.5f, ui.theme.text, number.c_str());
  ui.note_area(piece.name, low, high, shown_number(box.high.x - box.low.x, 2));
}

void draw_sheet(Ui& ui, const NestedSheet& sheet, const Manner& m) {
  ui.quiet(sheet.material + ", " + shown(sheet.length, m, 1) + " by " + shown(sheet.width, m, 1) + ", " +
           shown(sheet.thickness, m, 2) + " thick: " + std::to_string(sheet.pieces.size()) + " pieces, " +
           shown_number(100 * sheet.used / (sheet.length * sheet.width), 0) + " % used");
  ui.note("sheet " + std::to_string(sheet.sheet + 1), std::to_string(sheet.pieces.size()));
  constexpr float tallest = 220;
  const float room = ImGui::GetContentRegionAvail().x - ui.px(4);
  const double scale = std::min(static_cast<double>(room) / sheet.length,
                                static_cast<double>(ui.px(tallest)) / std::max(sheet.width, 1.0));
  const auto pixels = [&](double mm) { return static_cast<float>(mm * scale); };
  const ImVec2 low = ImGui::GetCursorScreenPos(), size(pixels(sheet.length), pixels(sheet.width));
  const auto at = [&](Point p) { return ImVec2(low.x + pixels(p.x), low.y + size.y - pixels(p.y)); };
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddRectFilled(low, low + size, ui.theme.field);
  paint->AddRect(low, low + size, ui.theme.quiet);
  for (const LineSegment& line : {sheet.along, sheet.across}) paint->AddLine(at(line.a), at(line.b), ui.theme.line);
  for (const NestedPiece& piece : sheet.pieces) draw_piece(ui, piece, at);
  ImGui::Dummy(size + ImVec2(0, ui.px(8)));
}

std::string missing(const Board& board, const Nesting& nesting) {
  if (board.sheets.empty()) return "No sheet is named yet: add one under Cutters, with its material and size.";
  std::string names;
  for (const std::string& name : nesting.no_room) names += (names.empty() ? "" : ", ") + name;
  return names.empty() ? "" : "No room for " + names + ": add a sheet of that material, at least as thick.";
}

}  // namespace

Requests draw_sheets(Ui& ui, const Results& results, const Manner& manner) {
  ImGui::BeginChild("sheets", ImVec2(0, -ImGui::GetFrameHeightWithSpacing() - ui.px(10)));
  if (!results.good || !results.good->fitted) {
    ui.quiet("The board cannot be laid out as it stands.");
  } else if (const auto nesting = nest(results.good->prepared->inlays().pieces, results.good->board.sheets,
                                       nest_rules(results.good->board))) {
    for (const NestedSheet& sheet : nesting->sheets) draw_sheet(ui, sheet, manner);
    const std::string words = missing(results.good->board, *nesting);
    if (!words.empty()) ui.warning(words);
    ui.note("missing", words);
  }
  ImGui::EndChild();
  dialog_foot(ui, button_width(ui, "Done"));
  if (ui.primary("Done")) return {asked::Show{Dialog::none}};
  return {};
}

}  // namespace sagitta::viewer
