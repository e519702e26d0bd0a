#include "overlay/BoardPanel.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "overlay/BoardMarks.hpp"
#include "overlay/BoardMenu.hpp"
#include "overlay/ChosenInlay.hpp"
#include "overlay/InlayGrips.hpp"
#include "overlay/InlayHand.hpp"
#include "overlay/InlayMarks.hpp"
#include "overlay/Legends.hpp"
#include "overlay/LengthwisePanel.hpp"
#include "overlay/NeckLift.hpp"
#include "overlay/Notices.hpp"
#include "overlay/OtherBoard.hpp"
#include "overlay/Overlays.hpp"
#include "overlay/PieceOfItsOwn.hpp"
#include "overlay/PlanStrip.hpp"
#include "overlay/Selecting.hpp"
#include "overlay/SlicePanel.hpp"
#include "widgets/Buttons.hpp"
#include "widgets/Veil.hpp"

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

void draw_views(Ui& ui, float width, Requests& asked) {
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
  if (view >= 0) asked.push_back(asked::Run{"view " + std::string(name(standard_views[view]))});
}

/// What is shown; and the switches that found no room in the bar.
void draw_show(Ui& ui, View& view, std::span<const Switch> rest, Requests& asked) {
  if (!ImGui::BeginPopup("show")) return;
  ui.tick("Fret wire", view.frets);
  ui.tick("Strings and nut", view.strings);
  ui.tick("Inlays in place", view.pieces);
  ui.tick("Neck", view.neck);
  if (view.neck) {
    float apart = view.apart;
    ImGui::SetNextItemWidth(ui.px(120));
    if (ImGui::SliderFloat("Board lifted off it", &apart, 0, highest_apart, "%.0f mm")) view.lift_off(apart);
    ui.note("Board lifted off it", shown_number(static_cast<double>(view.apart), 1));
  }
  ui.tick("Board against the neck", view.fit_to_neck);
  ui.tick("Hump under each string", view.humps);
  ui.tick("Edges", view.edges);
  ui.tick("Plan above the picture", view.plan);
  bool parallel = view.camera.parallel;
  if (ui.tick("Parallel projection", parallel)) asked.push_back(asked::Run{"parallel"});
  if (ui.tick("What cutters cannot reach", view.lost)) view.pieces = true;
  bool remaining = view.shade == Shade::remaining;
  if (ui.tick("What is left of each piece", remaining)) asked.push_back(asked::Run{"remaining shade"});
  constexpr float highest = 20;
  ImGui::SetNextItemWidth(ui.px(120));
  ImGui::SliderFloat("Pieces lifted", &view.lift, 0, highest, "%.0f mm");
  ui.note("Pieces lifted", shown_number(static_cast<double>(view.lift), 1));
  for (const Switch& s : rest) {
    bool now = s.on;
    if (ui.tick(s.label, now)) asked.push_back(asked::Run{s.command});
  }
  ImGui::EndPopup();
}

/// What opens the drawing along the board, or closes the one that is open.
const char* along_command(const View& view) {
  if (view.lengthwise == Lengthwise::bass_edge) return "bass edge";
  return view.lengthwise == Lengthwise::treble_edge ? "treble edge" : "side view";
}

void draw_bar(Ui& ui, View& view, float right, Requests& asked) {
  const float gap = ImGui::GetStyle().ItemSpacing.x, room = right - ImGui::GetCursorScreenPos().x;
  const float others = button_width(ui, "Fit") + button_width(ui, "Show") + 2 * gap;
  draw_views(ui, std::clamp(room - others, ui.px(60), ui.px(116)), asked);
  ImGui::SameLine();
  if (ui.button("Fit")) asked.push_back(asked::Run{"fit"});
  ImGui::SameLine();
  if (ui.button("Show")) ImGui::OpenPopup("show");
  const Switch switches[] = {{"Height", view.shade == Shade::height, "height shade"},
                             {"Cut across", view.cutting, "cutting plane"},
                             {"Side view", view.lengthwise != Lengthwise::none, along_command(view)},
                             {"Measure", view.measuring, "measure"}};
  std::size_t shown = 0;
  float end = ImGui::GetItemRectMax().x;
  for (const Switch& s : switches) {
    end += gap + button_width(ui, s.label);
    if (end > right) break;
    ImGui::SameLine();
    bool now = s.on;
    if (ui.toggle(s.label, now)) asked.push_back(asked::Run{s.command});
    ++shown;
  }
  draw_show(ui, view, std::span(switches).subspan(shown), asked);
}

void pick(const HandState& state, ImVec2 at, Keyboard keyboard) {
  const StageModel* stage = state.shown();
  if (!stage) return;
  const Camera& camera = state.view.camera;
  const auto cut = state.view.cutting ? std::optional(static_cast<float>(state.view.cut)) : std::nullopt;
  const auto hit = cast(stage->mesh, camera.ray({at.x - state.low.x, at.y - state.low.y}), cut);
  if (!hit) {
    select_nothing(state.view, state.rows);
    state.view.say("");
    return;
  }
  const FeatureId feature = feature_at(*stage->shell, *hit);
  if (state.view.measuring) {
    state.view.named = feature;
    if (state.view.picks.size() >= 2) state.view.picks.clear();
    state.view.picks.push_back(snapped(*stage->shell, stage->mesh, state.results.good->prepared->layout(), *hit, camera,
                                       state.ui.px(pick_reach)));
    const Snap snap = state.view.picks.back().snap;
    const char* const words[] = {"on", "corner of", "edge of", "slot centre at"};
    state.view.say(std::string(words[static_cast<int>(snap)]) + " " + state.view.picks.back().name +
                   (state.view.picks.size() < 2 ? "; pick the second point" : ""));
    return;
  }
  state.view.say(name_at(*stage->shell, *hit));
  select_feature(state, feature, Point{static_cast<double>(hit->place.x), static_cast<double>(hit->place.y)}, keyboard);
}

/// The menu for what lies under the pointer.
void open_menu(const HandState& state) {
  if (!state.view.measuring) pick(state, state.hand.start, Keyboard::stays);
  ImGui::OpenPopup(board_menu_name);
}

/// Moves the plane by what the pointer moved along the picture of the board's x direction.
void drag_plane(const HandState& state, ImVec2 now) {
  const Camera& camera = state.view.camera;
  const Vec here{static_cast<float>(state.hand.start_cut), 0, 0};
  const auto a = camera.project(here), b = camera.project(here + Vec{1, 0, 0});
  if (!a || !b) return;
  const float dx = b->x - a->x, dy = b->y - a->y, l = dx * dx + dy * dy;
  if (l < 1e-6f) return;
  const ImVec2 moved = now - state.hand.start;
  const double x = state.hand.start_cut + static_cast<double>((moved.x * dx + moved.y * dy) / l);
  const Layout& layout = state.results.good->prepared->layout();
  state.view.cut = std::clamp(x, layout.nut_end + 0.01, layout.heel_end - 0.01);
}

void begin_hand(const HandState& state) {
  const ImGuiIO& io = ImGui::GetIO();
  state.hand.start = state.hand.last = io.MousePos;
  state.hand.menu = io.MouseDown[1] && !io.MouseDown[0];
  state.view.flight.reset();
  const auto near = [&](const std::optional<ImVec2>& grip) {
    return grip && std::hypot(grip->x - io.MousePos.x, grip->y - io.MousePos.y) < state.ui.px(14);
  };
  if (io.MouseDown[0] && near(plane_grip(state.seen())))
    state.hand.what = What::plane, state.hand.start_cut = state.view.cut;
  else if (io.MouseDown[0] && near(lift_grip(state.seen())))
    state.hand.what = What::lift, state.hand.start_apart = state.view.apart;
  else if (io.MouseDown[0] && takes_grip(state))
    state.hand.what = What::grip;
  else if (io.MouseDown[0] && !io.KeyShift)
    state.hand.what = What::click, state.hand.inlay = takes_inlay(state) ? state.hand.inlay : -1;
  else
    state.hand.what = What::pan;
}

/// Escape while an inlay is moved, turned or sized, or the board lifted: it is again as it was.
bool gives_back(const HandState& state) {
  const bool lifts = state.hand.what == What::lift;
  if (!lifts && state.hand.what != What::inlay && state.hand.what != What::grip) return false;
  if (!ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false)) return false;
  if (lifts)
    state.view.lift_off(state.hand.start_apart);
  else
    state.document.take({}, Edit::given_up, "");
  state.view.say("As it was before.");
  return true;
}

void move_hand(const HandState& state) {
  const ImGuiIO& io = ImGui::GetIO();
  if (gives_back(state)) {
    state.hand.what = What::none;
    return;
  }
  const ImVec2 moved = io.MousePos - state.hand.last;
  const ImVec2 from_start = io.MousePos - state.hand.start;
  const bool wandered = std::hypot(from_start.x, from_start.y) > state.ui.px(click_slack);
  if (wandered) state.hand.menu = false;
  if (state.hand.what == What::click && wandered) state.hand.what = state.hand.inlay >= 0 ? What::inlay : What::orbit;
  if (state.hand.what == What::orbit) state.view.camera = state.view.camera.orbited(moved.x, moved.y);
  if (state.hand.what == What::pan) state.view.camera = state.view.camera.panned(moved.x, moved.y);
  if (state.hand.what == What::plane) drag_plane(state, io.MousePos);
  if (state.hand.what == What::lift) drag_lift(state, io.MousePos);
  if (state.hand.what == What::inlay && (moved.x != 0 || moved.y != 0)) drag_inlay(state, Edit::moving);
  if (state.hand.what == What::grip && (moved.x != 0 || moved.y != 0)) drag_grip(state, Edit::moving);
  state.hand.last = io.MousePos;
  if (io.MouseDown[0] || io.MouseDown[1] || io.MouseDown[2]) return;
  if (state.hand.what == What::inlay) drag_inlay(state, Edit::done);
  if (state.hand.what == What::grip) drag_grip(state, Edit::done);
  if (state.hand.what == What::click) pick(state, state.hand.start, Keyboard::to_row);
  if (state.hand.menu) open_menu(state);
  state.hand.menu = false;
  state.hand.what = What::none;
}

/// Why there is no board to be seen.
void draw_reason(const HandState& state, ImVec2 size) {
  const Ui& ui = state.ui;
  const std::string words = wrapped("The board cannot be built as it stands: Check says why.", size.x - ui.px(40));
  const ImVec2 room = ImGui::CalcTextSize(words.c_str());
  ImGui::GetWindowDrawList()->AddText(state.low + (size - room) * 0.5f, ui.theme.quiet, words.c_str());
}

/// Words about the board stand beside it, where the picture has room for them there.
void keep_off_board(const PictureState& state, float height, Labels& labels) {
  if (!state.results.laid_out()) return;
  const Layout& layout = state.results.good->prepared->layout();
  const auto top = static_cast<float>(state.results.good->prepared->surface().thickness);
  std::array<ImVec2, 4> shape;
  std::size_t i = 0;
  for (const double x : {layout.nut_end, layout.heel_end})
    for (const int side : {0, 1}) {
      const double y = ((side == 0) == (x == layout.nut_end) ? -1 : 1) *
                       layout.edge((side == 0) == (x == layout.nut_end) ? 0 : 1, x);
      const auto at = in_window(state.view.camera, {static_cast<float>(x), static_cast<float>(y), top}, state.low);
      if (!at) return;
      shape[i++] = *at;
    }
  float area = 0;
  for (std::size_t k = 0; k < 4; ++k)
    area += (shape[k].x * shape[(k + 1) % 4].y - shape[(k + 1) % 4].x * shape[k].y) / 2;
  constexpr float crowded = 0.4f;  // of the picture: nearer than that, words lie on the board
  if (std::abs(area) < crowded * state.view.camera.width * height) labels.keep_off(shape);
}

void draw_marks(const PictureState& state, const std::string& key, float height) {
  Labels labels(state.ui, ImGui::GetWindowDrawList());
  draw_cutting_plane(state);
  if (const Seen* choice = state.ui.find("Board/pieces together")) labels.keep_clear(choice->low, choice->high);
  draw_legends(state, height, labels);
  draw_lift(state, labels);
  draw_fit_to_neck(state, labels);
  draw_humps(state, labels);
  draw_other_board(state);
  draw_lost(state);
  const bool over = ImGui::IsItemHovered() || state.hand.what == What::grip;
  const bool framed = draw_inlay_frame(state, labels, over && state.hand.what == What::none);
  if (ImGui::IsItemHovered()) draw_piece_reading(state, labels);
  draw_measurement(state, labels);
  keep_off_board(state, height, labels);
  draw_marked_finding(state, labels);
  if (!(framed && over)) draw_dimensions(state, key, labels);  // a hand at the frame needs the room
}

void draw_picture(const HandState& state, const BoardPicture& picture) {
  const ImVec2 low = state.low, size(picture.width, picture.height);
  ImGui::SetCursorScreenPos(low);
  ImGui::InvisibleButton("picture", size,
                         ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight |
                             ImGuiButtonFlags_MouseButtonMiddle | ImGuiButtonFlags_AllowItemOverlap);
  ImDrawList* paint = ImGui::GetWindowDrawList();
  paint->AddImage(picture.texture, low, low + size, ImVec2(0, 1), ImVec2(1, 0));
  ImGui::SetItemAllowOverlap();
  state.ui.note("picture");
  choose_from_rows(state.rows, state.view, state.document.board(), state.results);
  if (!state.results.good && !state.sound) draw_reason(state, size);
  if (ImGui::IsItemActivated()) begin_hand(state);
  if (state.hand.what != What::none) move_hand(state);
  const ImGuiIO& io = ImGui::GetIO();
  if (ImGui::IsItemHovered() && io.MouseWheel != 0) state.view.flight.reset();
  if (ImGui::IsItemHovered() && io.MouseWheel != 0)
    state.view.camera =
        state.view.camera.zoomed(std::pow(wheel_step, io.MouseWheel), {io.MousePos.x - low.x, io.MousePos.y - low.y});
  paint->PushClipRect(low, low + size, true);
  draw_marks(state.seen(), state.rows.in_hand(), picture.height);
  paint->PopClipRect();
  if (state.results.behind.picture) draw_veil(low, low + size, state.ui.theme.canvas);
  draw_piece_choice(state);
}

}  // namespace

float board_bar_height(const Ui& ui) { return ui.px(15.5f + 10) + ui.px(16); }

Requests draw_board(HandState state, ImVec2 low, ImVec2 size, const BoardPicture& picture) {
  Requests asked;
  Ui& ui = state.ui;
  if (ui.begin_panel("Board", low, size, ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse, true)) {
    ImGui::SetCursorScreenPos(low + ImVec2(ui.px(12), ui.px(8)));
    ImGui::BeginGroup();
    draw_bar(ui, state.view, low.x + size.x - ui.px(12), asked);
    ImGui::EndGroup();
    const float bar = board_bar_height(ui), plan = picture.plan;
    if (plan > 0) draw_plan_strip(state, ImVec2(low.x, low.y + bar), ImVec2(size.x, plan));
    state.low = ImVec2(low.x, low.y + bar + plan);
    draw_picture(state, picture);
    for (Request& request :
         draw_notices(ui, state.view, state.results.behind, state.low, ImVec2(picture.width, picture.height)))
      asked.push_back(std::move(request));
    for (Request& request : draw_board_menu(state)) asked.push_back(std::move(request));
    if (state.view.drawn_below()) {
      const float top = state.low.y + picture.height;
      const auto draw_below = state.view.cutting ? draw_slice : draw_lengthwise;
      const Requests more = draw_below(ui, state.view, state.results, state.manner, ImVec2(low.x, top),
                                       ImVec2(size.x, low.y + size.y - top));
      asked.insert(asked.end(), more.begin(), more.end());
    }
  }
  ui.end_panel();
  return asked;
}

}  // namespace sagitta::viewer
