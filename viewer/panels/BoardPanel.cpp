#include "panels/BoardPanel.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>
#include <span>

#include "panels/BoardMarks.hpp"
#include "panels/ChecksPanel.hpp"
#include "panels/DecisionsPanel.hpp"
#include "panels/Dialogs.hpp"
#include "panels/InlayGrips.hpp"
#include "panels/InlayHand.hpp"
#include "panels/InlayMarks.hpp"
#include "panels/Overlays.hpp"
#include "panels/SlicePanel.hpp"

namespace sagitta::viewer {

namespace {

constexpr float pick_reach = 9;      // pixels within which a corner or an edge is meant
constexpr float click_slack = 4;     // pixels that a click may wander
constexpr float wheel_step = 0.88f;  // nearer by this for each notch

using What = BoardHand::What;

/// A button of the bar that is on or off, and the command behind it.
struct Switch {
  const char* label;
  bool on;
  const char* command;
};

void draw_views(Desk& desk, float width) {
  Ui& ui = desk.ui;
  int view = -1;
  ImGui::SetNextItemWidth(width);
  static const std::vector<std::string> names = {"On the bench", "From above", "Bass edge", "Treble edge",
                                                 "Nut end",      "Heel end",   "From below"};
  ImGui::PushID("views");
  if (ImGui::BeginCombo("##view", "View from")) {
    for (int i = 0; i < static_cast<int>(names.size()); ++i) {
      if (ImGui::Selectable(names[static_cast<std::size_t>(i)].c_str())) view = i;
      ui.note("View " + names[static_cast<std::size_t>(i)]);
    }
    ImGui::EndCombo();
  } else {
    ui.note("View from");
  }
  ImGui::PopID();
  if (view >= 0) desk.ask("view " + std::string(name(standard_views[view])));
}

/// What is shown; and the switches that found no room in the bar.
void draw_show(Desk& desk, std::span<const Switch> rest) {
  Ui& ui = desk.ui;
  if (!ImGui::BeginPopup("show")) return;
  ui.tick("Fret wire", desk.view.frets);
  ui.tick("Strings and nut", desk.view.strings);
  ui.tick("Inlays in place", desk.view.pieces);
  ui.tick("Neck", desk.view.neck);
  ui.tick("Board against the neck", desk.view.fit_to_neck);
  ui.tick("Hump under each string", desk.view.humps);
  ui.tick("Edges", desk.view.edges);
  if (ui.tick("Parallel projection", desk.view.camera.parallel)) desk.settings.parallel = desk.view.camera.parallel;
  if (ui.tick("What cutters cannot reach", desk.view.lost)) desk.view.pieces = true;
  bool remaining = desk.view.shade == Shade::remaining;
  if (ui.tick("What is left of each piece", remaining)) desk.ask("remaining shade");
  constexpr float highest = 20;
  ImGui::SetNextItemWidth(ui.px(120));
  ImGui::SliderFloat("Pieces lifted", &desk.view.lift, 0, highest, "%.0f mm");
  ui.note("Pieces lifted", shown_number(static_cast<double>(desk.view.lift), 1));
  for (const Switch& s : rest) {
    bool now = s.on;
    if (ui.tick(s.label, now)) desk.ask(s.command);
  }
  ImGui::EndPopup();
}

void draw_bar(Desk& desk, float right) {
  Ui& ui = desk.ui;
  const float gap = ImGui::GetStyle().ItemSpacing.x, room = right - ImGui::GetCursorScreenPos().x;
  const float others = button_width(ui, "Fit") + button_width(ui, "Show") + 2 * gap;
  draw_views(desk, std::clamp(room - others, ui.px(60), ui.px(116)));
  ImGui::SameLine();
  if (ui.button("Fit")) desk.ask("fit");
  ImGui::SameLine();
  if (ui.button("Show")) ImGui::OpenPopup("show");
  const Switch switches[] = {{"Height", desk.view.shade == Shade::height, "height shade"},
                             {"Cut across", desk.view.cutting, "cutting plane"},
                             {"Measure", desk.view.measuring, "measure"}};
  std::size_t shown = 0;
  float end = ImGui::GetItemRectMax().x;
  for (const Switch& s : switches) {
    end += gap + button_width(ui, s.label);
    if (end > right) break;
    ImGui::SameLine();
    bool now = s.on;
    if (ui.toggle(s.label, now)) desk.ask(s.command);
    ++shown;
  }
  draw_show(desk, std::span(switches).subspan(shown));
}

void pick(Desk& desk, ImVec2 at, ImVec2 low) {
  const StageModel* stage = desk.shown();
  if (!stage) return;
  const Camera& camera = desk.view.camera;
  const auto cut = desk.view.cutting ? std::optional(static_cast<float>(desk.view.cut)) : std::nullopt;
  const auto hit = cast(stage->mesh, camera.ray({at.x - low.x, at.y - low.y}), cut);
  if (!hit) {
    desk.view.named.clear();
    desk.view.chosen.reset();
    desk.say("");
    return;
  }
  desk.view.named = feature_at(stage->shell, *hit);
  if (desk.view.measuring) {
    if (desk.view.picks.size() >= 2) desk.view.picks.clear();
    desk.view.picks.push_back(
        snapped(stage->shell, stage->mesh, *desk.good->layout, *hit, camera, desk.ui.px(pick_reach)));
    const Snap snap = desk.view.picks.back().snap;
    const char* const words[] = {"on", "corner of", "edge of", "slot centre at"};
    desk.say(std::string(words[static_cast<int>(snap)]) + " " + desk.view.picks.back().name +
             (desk.view.picks.size() < 2 ? "; pick the second point" : ""));
    return;
  }
  desk.say(desk.view.named);
  desk.view.chosen.reset();
  if (const auto inlay = inlay_of_feature(desk.view.named))
    choose_inlay(desk, *inlay, Point{static_cast<double>(hit->place.x), static_cast<double>(hit->place.y)});
  if (const std::string key = key_of_feature(desk.view.named); !key.empty()) lead_to_key(desk, key);
}

/// Moves the plane by what the pointer moved along the picture of the board's x direction.
void drag_plane(Desk& desk, ImVec2 now) {
  const Camera& camera = desk.view.camera;
  const Vec here{static_cast<float>(desk.hand.start_cut), 0, 0};
  const auto a = camera.project(here), b = camera.project(here + Vec{1, 0, 0});
  if (!a || !b) return;
  const float dx = b->x - a->x, dy = b->y - a->y, l = dx * dx + dy * dy;
  if (l < 1e-6f) return;
  const ImVec2 moved = now - desk.hand.start;
  const double x = desk.hand.start_cut + static_cast<double>((moved.x * dx + moved.y * dy) / l);
  const Layout& layout = *desk.good->layout;
  desk.view.cut = std::clamp(x, layout.nut_end + 0.01, layout.heel_end - 0.01);
}

void begin_hand(Desk& desk, ImVec2 low) {
  const ImGuiIO& io = ImGui::GetIO();
  desk.hand.start = desk.hand.last = io.MousePos;
  desk.view.flight.reset();
  const auto grip = plane_grip(desk, low);
  const float off = grip ? std::hypot(grip->x - io.MousePos.x, grip->y - io.MousePos.y) : 1e9f;
  if (io.MouseDown[0] && off < desk.ui.px(14))
    desk.hand.what = What::plane, desk.hand.start_cut = desk.view.cut;
  else if (io.MouseDown[0] && takes_grip(desk, low))
    desk.hand.what = What::grip;
  else if (io.MouseDown[0] && !io.KeyShift)
    desk.hand.what = What::click, desk.hand.inlay = takes_inlay(desk, low) ? desk.hand.inlay : -1;
  else
    desk.hand.what = What::pan;
}

/// Escape while an inlay is moved, turned or sized: it is again as it was.
bool gives_back(Desk& desk) {
  if (desk.hand.what != What::inlay && desk.hand.what != What::grip) return false;
  if (!ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false)) return false;
  desk.edit({}, Edit::given_up, "");
  desk.say("As it was before.");
  return true;
}

void move_hand(Desk& desk, ImVec2 low) {
  const ImGuiIO& io = ImGui::GetIO();
  if (gives_back(desk)) {
    desk.hand.what = What::none;
    return;
  }
  const ImVec2 moved = io.MousePos - desk.hand.last;
  const ImVec2 from_start = io.MousePos - desk.hand.start;
  if (desk.hand.what == What::click && std::hypot(from_start.x, from_start.y) > desk.ui.px(click_slack))
    desk.hand.what = desk.hand.inlay >= 0 ? What::inlay : What::orbit;
  if (desk.hand.what == What::orbit) desk.view.camera = desk.view.camera.orbited(moved.x, moved.y);
  if (desk.hand.what == What::pan) desk.view.camera = desk.view.camera.panned(moved.x, moved.y);
  if (desk.hand.what == What::plane) drag_plane(desk, io.MousePos);
  if (desk.hand.what == What::inlay && (moved.x != 0 || moved.y != 0)) drag_inlay(desk, low, Edit::moving);
  if (desk.hand.what == What::grip && (moved.x != 0 || moved.y != 0)) drag_grip(desk, low, Edit::moving);
  desk.hand.last = io.MousePos;
  if (io.MouseDown[0] || io.MouseDown[1] || io.MouseDown[2]) return;
  if (desk.hand.what == What::inlay) drag_inlay(desk, low, Edit::done);
  if (desk.hand.what == What::grip) drag_grip(desk, low, Edit::done);
  if (desk.hand.what == What::click) pick(desk, desk.hand.start, low);
  desk.hand.what = What::none;
}

void draw_legends(Desk& desk, ImVec2 low, float height, Labels& labels) {
  const Ui& ui = desk.ui;
  std::vector<std::string> lines = legends_of(desk);
  if (desk.view.shade == Shade::height)
    lines.push_back("Height of the surface: dark is low, light is high; a line every 0.25 mm");
  if (desk.view.shade == Shade::remaining)
    lines.push_back("Of each piece, once the board is sanded: in colour nothing is left, light is its full thickness");
  if (desk.view.shade == Shade::change)
    lines.push_back("Against the other board: in colour it is higher here, dark lower");
  ImDrawList* paint = ImGui::GetWindowDrawList();
  float y = low.y + height - ui.px(12);
  for (const std::string& text : lines) {
    // On a small picture one line is enough: it may not cover the board.
    const float room = desk.view.camera.width - ui.px(28);
    const std::string lines_of_it = wrapped(text, room);
    const bool small = ImGui::CalcTextSize(lines_of_it.c_str()).y > height / 5;
    const std::string kept = small ? fitted(text, room) : lines_of_it;
    const ImVec2 size = ImGui::CalcTextSize(kept.c_str()), pad(ui.px(6), ui.px(3));
    const ImVec2 at(low.x + ui.px(14), y - size.y);
    paint->AddRectFilled(at - pad, at + size + pad, ui.theme.paper, ui.px(3));
    paint->AddText(at, ui.theme.text, kept.c_str());
    labels.keep_clear(at - pad, at + size + pad);
    y = at.y - 2 * pad.y - ui.px(3);
  }
}

/// Why there is no board to be seen.
void draw_reason(Desk& desk, ImVec2 low, ImVec2 size) {
  const Ui& ui = desk.ui;
  const std::string words = wrapped("The board cannot be built as it stands: Check says why.", size.x - ui.px(40));
  const ImVec2 room = ImGui::CalcTextSize(words.c_str());
  ImGui::GetWindowDrawList()->AddText(low + (size - room) * 0.5f, ui.theme.quiet, words.c_str());
}

void draw_picture(Desk& desk, ImVec2 low, const BoardPicture& picture) {
  const ImVec2 size(picture.width, picture.height);
  ImGui::SetCursorScreenPos(low);
  ImGui::InvisibleButton(
      "picture", size,
      ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight | ImGuiButtonFlags_MouseButtonMiddle);
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddImage(picture.texture, low, low + size, ImVec2(0, 1), ImVec2(1, 0));
  desk.ui.note("picture");
  choose_from_rows(desk);
  if (!desk.good && !problems_of(desk).empty()) draw_reason(desk, low, size);
  if (ImGui::IsItemActivated()) begin_hand(desk, low);
  if (desk.hand.what != What::none) move_hand(desk, low);
  const ImGuiIO& io = ImGui::GetIO();
  if (ImGui::IsItemHovered() && io.MouseWheel != 0) desk.view.flight.reset();
  if (ImGui::IsItemHovered() && io.MouseWheel != 0)
    desk.view.camera =
        desk.view.camera.zoomed(std::pow(wheel_step, io.MouseWheel), {io.MousePos.x - low.x, io.MousePos.y - low.y});
  paint->PushClipRect(low, low + size, true);
  {
    Labels labels(desk.ui, paint);
    draw_cutting_plane(desk, low);
    draw_legends(desk, low, picture.height, labels);
    draw_fit_to_neck(desk, low, labels);
    draw_humps(desk, low, labels);
    draw_lost(desk, low);
    const bool over = ImGui::IsItemHovered() || desk.hand.what == What::grip;
    const bool framed = draw_inlay_frame(desk, low, labels, over && desk.hand.what == What::none);
    if (ImGui::IsItemHovered()) draw_piece_reading(desk, low, labels);
    draw_measurement(desk, low, labels);
    draw_marked_finding(desk, low, labels);
    if (!(framed && over)) draw_dimensions(desk, low, labels);  // a hand at the frame needs the room
  }
  paint->PopClipRect();
}

}  // namespace

float board_bar_height(const Ui& ui) { return ui.px(15.5f + 10) + ui.px(16); }

void draw_board(Desk& desk, ImVec2 low, ImVec2 size, const BoardPicture& picture) {
  if (desk.ui.begin_panel("Board", low, size, ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse,
                          true)) {
    ImGui::SetCursorScreenPos(low + ImVec2(desk.ui.px(12), desk.ui.px(8)));
    ImGui::BeginGroup();
    draw_bar(desk, low.x + size.x - desk.ui.px(12));
    ImGui::EndGroup();
    const ImVec2 corner(low.x, low.y + board_bar_height(desk.ui));
    draw_picture(desk, corner, picture);
    if (desk.view.cutting)
      draw_slice(desk, ImVec2(low.x, corner.y + picture.height),
                 ImVec2(size.x, low.y + size.y - corner.y - picture.height));
  }
  desk.ui.end_panel();
}

}  // namespace sagitta::viewer
