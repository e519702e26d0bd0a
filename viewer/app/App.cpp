#include "app/App.hpp"

#include <GLFW/glfw3.h>

#include <algorithm>
#include <chrono>

#include "app/CarryOut.hpp"
#include "app/ChangedElsewhere.hpp"
#include "app/Commands.hpp"
#include "app/DesktopDialog.hpp"
#include "app/Dropped.hpp"
#include "app/Files.hpp"
#include "app/OpenDialog.hpp"
#include "decisions/ChecksPanel.hpp"
#include "decisions/DecisionsPanel.hpp"
#include "dialogs/TopBar.hpp"
#include "input/Presets.hpp"
#include "overlay/BoardPanel.hpp"
#include "overlay/PlanStrip.hpp"
#include "overlay/Selecting.hpp"
#include "overlay/StageStrip.hpp"
#include "window/Window.hpp"

namespace sagitta::viewer {

namespace {

constexpr double moving_for = 0.30;  ///< seconds after the last input that the picture stays the cheaper one
constexpr double copy_after = 1.0;   ///< seconds from a change to its recovery copy; 2 are promised
constexpr double forever = 3600;
constexpr double work_tick = 0.1;  ///< seconds between pictures of the work's bar

double now() {
  using namespace std::chrono;
  return duration<double>(steady_clock::now().time_since_epoch()).count();
}

bool key_of_text(const Chord& key) {
  const bool editing =
      key.mods == GLFW_MOD_CONTROL && (key.key == GLFW_KEY_Z || key.key == GLFW_KEY_Y || key.key == GLFW_KEY_A ||
                                       key.key == GLFW_KEY_X || key.key == GLFW_KEY_C || key.key == GLFW_KEY_V);
  const bool function = key.key >= GLFW_KEY_F1 && key.key <= GLFW_KEY_F12;
  return editing || (!function && !(key.mods & (GLFW_MOD_CONTROL | GLFW_MOD_ALT)));
}

}  // namespace

void open_first_preset(Desk& desk) {
  if (!presets().empty()) open_preset(desk, std::string(presets().front().name));
}

/// Rectangles of the panels.
struct App::Places {
  ImVec2 bar, bar_size, left, left_size, tabs, tabs_size, board, board_size, strip, strip_size, right, right_size,
      status, status_size;
  bool narrow = false;
  float picture_height = 0, plan_height = 0;
};

App::App(const AppSpec& spec, Window* window, InputQueue& queue)
    : spec_(spec),
      window_(window),
      queue_(queue),
      interface_(window),
      recovery_(spec.state),
      worker_([] { Window::wake(); }),
      other_worker_([] { Window::wake(); }) {
  if (!spec_.plain) {
    LoadedSettings loaded = load_settings(spec_.settings);
    desk_.settings = stored_ = loaded.settings;
    if (!spec_.settings.empty()) desk_.forms.drawer.drawers = Drawers(spec_.settings / "drawers");
    if (!loaded.message.empty()) desk_.view.fail(loaded.message);
  } else {
    desk_.settings.way_shown = true;
    desk_.settings.desktop_dialogs = false;
  }
  desk_.wake = [] { Window::wake(); };
  desk_.state = spec_.state;
  desk_.view.camera = desk_.view.camera.facing(StandardView::bench);
  desk_.view.camera.parallel = desk_.settings.parallel;
  const auto failure = desk_.view.failure;
  open_first_preset(desk_);
  if (!spec_.board.empty()) open_board(desk_, spec_.board);
  if (!desk_.view.failure) desk_.view.failure = failure;
  if (!spec_.plain) desk_.versions.left_over = recovery_.find_left();
  if (desk_.versions.left_over)
    desk_.view.dialog = Dialog::left_over;
  else if (!desk_.settings.way_shown)
    desk_.view.dialog = Dialog::way;
}

App::~App() {
  keep_settings();
  if (!spec_.plain && !lost_) recovery_.drop();
}

int App::width() const { return window_ ? window_->width() : spec_.width; }
int App::height() const { return window_ ? window_->height() : spec_.height; }

App::Places App::places() const {
  const Ui& ui = desk_.ui;
  const auto w = static_cast<float>(width()), h = static_cast<float>(height());
  Places p;
  p.narrow = w < ui.px(1040);
  p.bar = {0, 0}, p.bar_size = {w, top_bar_height(ui)};
  p.status_size = {w, status_height(ui)}, p.status = {0, h - p.status_size.y};
  const float top = p.bar_size.y, middle = std::max(h - top - p.status_size.y, 1.0f);
  const float left = p.narrow ? std::min(ui.px(310), w * 0.46f) : ui.px(330), right = p.narrow ? 0 : ui.px(286);
  const float tabs = p.narrow ? ui.px(42) : 0;
  p.tabs = {0, top}, p.tabs_size = {left, tabs};
  p.left = {0, top + tabs}, p.left_size = {left, middle - tabs};
  p.right = {w - right, top}, p.right_size = {right, middle};
  const float strip = std::min(stage_strip_height(ui), middle * 0.4f);
  p.board = {left, top}, p.board_size = {std::max(w - left - right, 1.0f), middle - strip};
  p.strip = {left, top + middle - strip}, p.strip_size = {p.board_size.x, strip};
  const float below_bar = p.board_size.y - board_bar_height(ui);
  const float share = desk_.view.cutting ? 0.5f : 0.6f;  // of the height: a drawing with rows of figures needs more
  const float slice =
      desk_.view.drawn_below() ? std::clamp(below_bar * share, std::min(ui.px(236), below_bar * 0.6f), below_bar) : 0;
  p.plan_height = desk_.view.plan && !whole_picture_ ? plan_strip_height(ui, below_bar - slice) : 0;
  p.picture_height = std::max(below_bar - slice - p.plan_height, 1.0f);
  if (whole_picture_) p.board_size.x = w, p.picture_height = h;
  return p;
}

void App::take_input() {
  const Drained drained = queue_.drain();
  if (drained.events > 0) frames_owed_ = 3;
  const ImGuiIO& io = ImGui::GetIO();
  if (drained.events > 0) last_input_ = now();
  for (const std::string& path : drained.dropped) take_dropped(desk_, path);
  if (drained.close) desk_.ask("quit");
  if (drained.uncovered) uncovered_ = true;
  const bool typing = io.WantTextInput || desk_.forms.rows.typing();
  for (const Chord& key : drained.pressed) {
    const bool menu = ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopupId | ImGuiPopupFlags_AnyPopupLevel);
    if (desk_.view.dialog != Dialog::none || menu) continue;
    if (key.key == GLFW_KEY_ESCAPE && !typing) {
      desk_.view.picks.clear();
      desk_.view.marked.reset();
      if (desk_.forms.hand.what == BoardHand::What::none) select_nothing(desk_.view, desk_.forms.rows);
      desk_.ui.forget_led();
      if (!desk_.forms.rows.dragging()) desk_.forms.rows.forget();
    }
    if (typing && key_of_text(key)) continue;
    if (const Command* command = command_on(key)) desk_.ask(command->name);
  }
}

void App::collect() {
  desk_.results.working = worker_.progress();
  if (const ModelPtr model = worker_.take()) {
    desk_.results.model = model;
    if (model->prepared) desk_.results.good = model;
    frames_owed_ = std::max(frames_owed_, 2);
  }
  if (const ModelPtr model = other_worker_.take(); model && desk_.results.comparison) {
    desk_.results.comparison->model = model->prepared ? model : nullptr;
    frames_owed_ = std::max(frames_owed_, 2);
  }
  const bool was = desk_.results.behind.picture;
  desk_.results.behind = lag_.judged(desk_.document, desk_.view, desk_.results, worker_.idle(), now());
  if (desk_.results.behind.picture != was) frames_owed_ = std::max(frames_owed_, 2);
}

/// Brings the sheet of paper that the export's page shows to the graphics card.
void App::show_page() {
  const auto printed = desk_.paperwork.pages();
  SendingForm& form = desk_.forms.sending;
  if (!printed || printed->pages.empty()) {
    form.picture = nullptr;
    return;
  }
  form.page = std::min(form.page, printed->pages.size() - 1);
  const sagitta::Picture& picture = printed->pages[form.page].picture;
  if (printed != paged_ || form.page != page_number_) {
    page_.load(picture.width, picture.height, picture.pixels);
    paged_ = printed, page_number_ = form.page;
    ++page_changes_;
    frames_owed_ = std::max(frames_owed_, 2);
  }
  form.picture = reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(page_.texture()));
  form.shape = static_cast<float>(picture.width) / static_cast<float>(picture.height);
}

void App::draw_panels() {
  const Places p = places();
  if (desk_.view.flight) {
    desk_.view.camera = desk_.view.flight->at(desk_.ui.now());
    if (desk_.view.flight->over(desk_.ui.now())) desk_.view.flight.reset();
    frames_owed_ = std::max(frames_owed_, 2);
  }
  desk_.view.camera.width = p.board_size.x, desk_.view.camera.height = p.picture_height;
  const bool moving = now() - last_input_ < moving_for || desk_.document.previewing() || desk_.view.flight;
  resting_drawn_ = !moving;
  picture_.resize(static_cast<int>(p.board_size.x), static_cast<int>(p.picture_height), moving);
  const auto id = [](GLuint texture) { return reinterpret_cast<ImTextureID>(static_cast<std::intptr_t>(texture)); };
  draw_columns(p, {id(picture_.texture()), p.board_size.x, p.picture_height, p.plan_height});
  const ImVec2 small = stage_picture_size(desk_.ui, p.strip_size.x, stages_of(desk_.document.board()).size());
  picture_.resize_stages(static_cast<int>(small.x), static_cast<int>(small.y));
  StagePictures stages{};
  for (std::size_t i = 0; i < stage_count; ++i) stages[i] = id(picture_.stage_texture(static_cast<Stage>(i)));
  take(draw_stage_strip({desk_.ui, desk_.document, desk_.results, desk_.manner(), desk_.view.stage}, p.strip,
                        p.strip_size, stages));
  take(
      draw_status(desk_.ui, desk_.view.message, desk_.results.working, desk_.sending.state(), p.status, p.status_size));
  take(draw_open_dialog(desk_, offer_));
}

/// The bar, the decisions, the board and the checks.
void App::draw_columns(const Places& p, const BoardPicture& picture) {
  Ui& ui = desk_.ui;
  View& view = desk_.view;
  FieldRows& rows = desk_.forms.rows;
  const Results& results = desk_.results;
  Unopened& unopened = desk_.versions.unopened;
  const Manner manner = rows.manner = desk_.manner();
  update(offer_, desk_);
  take(draw_top_bar(ui, desk_.document, offer_, p.bar, p.bar_size));
  if (p.narrow && ui.begin_panel("Tabs", p.tabs, p.tabs_size, ImGuiWindowFlags_NoScrollbar)) {
    bool decisions = !view.narrow_shows_checks, checks = view.narrow_shows_checks;
    if (ui.toggle("Decisions", decisions)) view.narrow_shows_checks = false;
    ImGui::SameLine();
    if (ui.toggle("Check", checks, check_count(unopened, results))) view.narrow_shows_checks = true;
  }
  if (p.narrow) ui.end_panel();
  if (!p.narrow || !view.narrow_shows_checks)
    take(draw_decisions({ui, desk_.document, view, rows, results, desk_.forms.drawer}, p.left, p.left_size));
  const bool sound = problems_of(unopened, results).empty();
  take(draw_board({ui, desk_.document, view, rows, desk_.forms.hand, results, manner, sound}, p.board, p.board_size,
                  picture));
  const CheckState checks{ui, desk_.document, view, rows, unopened, results, manner};
  if (!p.narrow)
    take(draw_checks(checks, p.right, p.right_size));
  else if (view.narrow_shows_checks)
    take(draw_checks(checks, p.left, p.left_size));
}

void App::take(Requests asked) {
  desk_.asked.insert(desk_.asked.end(), std::make_move_iterator(asked.begin()), std::make_move_iterator(asked.end()));
}

void App::order_work() {
  if (desk_.view.fit_wanted && desk_.results.at(desk_.view.stage) &&
      desk_.results.good->board == desk_.document.board()) {
    const RenderMesh& body = desk_.results.at(desk_.view.stage)->body;
    Vec low = body.low;
    if (desk_.view.neck) low.z -= desk_.view.apart;
    desk_.view.camera = desk_.view.camera.fitted(low, body.high);
    desk_.view.fit_wanted = false;
    desk_.view.flight.reset();
    frames_owed_ = std::max(frames_owed_, 1);
  }
  const std::uint64_t revision = desk_.document.revision();
  const bool moving = desk_.document.previewing();
  const bool ordered =
      anything_ordered_ && changed_ == revision && ordered_.stage == desk_.view.stage && ordered_.moving == moving;
  if (!ordered) {
    if (changed_ != revision) changed_at_ = now();
    changed_ = revision;
    anything_ordered_ = true;
    ordered_ = {++generation_, desk_.document.board(), desk_.view.stage, moving};
    worker_.submit(ordered_);
  }
  if (desk_.results.comparison && !desk_.results.comparison->model && other_worker_.idle())
    other_worker_.submit({++generation_, desk_.results.comparison->board, desk_.view.stage, false});
}

void App::keep_copy() {
  if (spec_.plain) return;
  if (!desk_.document.dirty()) {
    if (copy_kept_) recovery_.drop();
    copy_kept_ = false;
    copied_ = desk_.document.revision();
    return;
  }
  if (copied_ == desk_.document.revision() || now() - changed_at_ < copy_after) {
    if (copied_ == desk_.document.revision()) return;
    if (!desk_.document.previewing()) return;
  }
  if (const std::string why = recovery_.keep(text_to_save(desk_.document), desk_.document.path(),
                                             desk_.document.board().folder, desk_.document.checksum());
      !why.empty())
    desk_.view.fail(why, "Save", "save");
  copied_ = desk_.document.revision();
  copy_kept_ = true;
}

void App::keep_settings() {
  if (spec_.plain || desk_.settings == stored_) return;
  if (const std::string why = save_settings(spec_.settings, desk_.settings); !why.empty()) desk_.view.fail(why);
  stored_ = desk_.settings;
}

void App::draw_into(bool read) {
  const int w = width(), h = height();
  if (!window_) {
    screen_.resize(w, h, 0);
    screen_.bind();
  } else {
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
  }
  interface_.draw(static_cast<float>(w), static_cast<float>(h), desk_.ui.theme.canvas);
  if (read) snapshot_ = read_pixels(w, h);
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
}

void App::frame() {
  const double start = now();
  desk_.ui.new_frame(start);
  interface_.dress(desk_.ui, static_cast<float>(desk_.settings.text_size) * (window_ ? window_->content_scale() : 1),
                   desk_.settings.dark);
  if (frames_owed_ > 0) --frames_owed_;
  take_input();
  collect();
  if (!spec_.plain) watch_file(desk_);
  interface_.begin(static_cast<float>(width()), static_cast<float>(height()), start);
  desk_.ui.follow_tab(desk_.forms.rows.typing());
  if (desk_.ui.stepping()) frames_owed_ = std::max(frames_owed_, 3);
  show_page();
  draw_panels();
  if (carry_out_asked(desk_)) frames_owed_ = 3;
  follow_desktop_dialog(desk_);
  if (std::exchange(desk_.stop_work, false)) worker_.cancel();
  if (std::exchange(desk_.go_on, false)) anything_ordered_ = false;
  order_work();
  const Look look{desk_.settings.dark, desk_.ui.theme.ink};
  picture_.refresh(desk_.view, desk_.results, look);
  const std::uint64_t small_pictures = picture_.changes();
  stages_wanting_ = !resting_drawn_ ? stages_wanting_ : picture_.refresh_stages(desk_.view, desk_.results, look);
  // The strip was laid out before its new picture was drawn.
  if (picture_.changes() != small_pictures) frames_owed_ = std::max(frames_owed_, 1);
  const bool other =
      interface_.lay_out(static_cast<float>(width()), static_cast<float>(height()), picture_.changes() + page_changes_);
  const bool draw = other || std::exchange(uncovered_, false);
  if (draw) draw_into(false);
  keep_copy();
  keep_settings();
  const std::string title = desk_.document.title() + (desk_.document.dirty() ? " (changed)" : "") + " - Sagitta";
  if (window_ && title != title_) window_->set_title(title_ = title);
  if (window_) window_->set_pointer(ImGui::GetMouseCursor());
  frame_time_ = 1000 * (now() - start);
  if (window_ && draw) window_->swap();
  if (gl::lost()) give_up();
}

void App::give_up() {
  lost_ = true;
  const bool kept = desk_.document.dirty() && !spec_.plain &&
                    recovery_
                        .keep(text_to_save(desk_.document), desk_.document.path(), desk_.document.board().folder,
                              desk_.document.checksum())
                        .empty();
  throw DisplayError(std::string("the graphics driver was reset, and this window cannot go on.\n") +
                     (kept ? "Start sagitta-viewer again: it offers the board as you left it."
                           : "Start sagitta-viewer again; nothing of the board is lost."));
}

double App::rest() const {
  if (frames_owed_ > 0 || !queue_.empty() || stages_wanting_) return 0;
  double seconds = forever;
  if (!resting_drawn_) seconds = std::max(last_input_ + moving_for - now(), 0.0) + 1e-3;
  if (desk_.document.dirty() && copied_ != desk_.document.revision())
    seconds = std::min(seconds, std::max(changed_at_ + copy_after - now(), 0.0) + 1e-3);
  if (const auto due = lag_.due(now())) seconds = std::min(seconds, *due + 1e-3);
  if (!worker_.idle() || desk_.sending.state().running) seconds = std::min(seconds, work_tick);
  return seconds;
}

bool App::settled() const {
  return queue_.empty() && frames_owed_ == 0 && !desk_.view.flight && worker_.idle() && other_worker_.idle() &&
         !stages_wanting_ && resting_drawn_ && !desk_.paperwork.busy() && !desk_.rescue.busy() &&
         worker_.finished() == ordered_.generation;
}

const std::vector<std::uint8_t>& App::snapshot() {
  if (!window_) {
    snapshot_ = screen_.pixels();
    return snapshot_;
  }
  draw_into(true);
  return snapshot_;
}

}  // namespace sagitta::viewer
