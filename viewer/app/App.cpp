#include "app/App.hpp"

#include <GLFW/glfw3.h>

#include <algorithm>
#include <chrono>

#include "app/CarryOut.hpp"
#include "app/Commands.hpp"
#include "app/DesktopDialog.hpp"
#include "app/DiskLook.hpp"
#include "app/Dropped.hpp"
#include "app/Files.hpp"
#include "app/LiveDrawings.hpp"
#include "app/OpenDialog.hpp"
#include "app/SavedPicture.hpp"
#include "app/WindowPlaces.hpp"
#include "decisions/ChecksPanel.hpp"
#include "decisions/Decisions.hpp"
#include "decisions/DecisionsPanel.hpp"
#include "dialogs/TopBar.hpp"
#include "input/Presets.hpp"
#include "overlay/BoardPanel.hpp"
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

App::App(const AppSpec& spec, Window* window, InputQueue& queue)
    : spec_(spec),
      window_(window),
      queue_(queue),
      interface_(window),
      recovery_(spec.state),
      worker_([this] { wake(); }),
      other_worker_([this] { wake(); }) {
  if (!spec_.plain) {
    LoadedSettings loaded = load_settings(spec_.settings);
    desk_.settings = stored_ = loaded.settings;
    if (!spec_.settings.empty()) desk_.forms.drawer.drawers = Drawers(spec_.settings / "drawers");
    if (!loaded.message.empty()) desk_.view.fail(loaded.message);
  } else {
    desk_.settings.way_shown = true;
    desk_.settings.desktop_dialogs = false;
  }
  desk_.wake = [this] { wake(); };
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
  if (spec_.plain || lost_) return;
  recovery_.drop();
  leave_board(desk_);
}

void App::wake() {
  woken_ = true;
  Window::wake();
}

int App::width() const { return window_ ? window_->width() : spec_.width; }
int App::height() const { return window_ ? window_->height() : spec_.height; }

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
    tell_changed_drawings(desk_);
    frames_owed_ = std::max(frames_owed_, 2);
  }
  if (const ModelPtr model = other_worker_.take(); model && desk_.results.comparison) {
    Comparison& other = *desk_.results.comparison;
    other.model = model->prepared ? model : nullptr;
    if (!model->prepared) other.trouble = model->faults.empty() ? model->trouble : model->faults.front().message;
    frames_owed_ = std::max(frames_owed_, 2);
  }
  if (auto printed = desk_.printing.take()) {
    desk_.forms.sending.printed = std::move(*printed);
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
    paged_.reset();
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
  const WindowPlaces p =
      window_places(desk_.ui, desk_.view, static_cast<float>(width()), static_cast<float>(height()), whole_picture_);
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
void App::draw_columns(const WindowPlaces& p, const BoardPicture& picture) {
  Ui& ui = desk_.ui;
  View& view = desk_.view;
  FieldRows& rows = desk_.forms.rows;
  const Results& results = desk_.results;
  Unopened& unopened = desk_.versions.unopened;
  const Manner manner = rows.manner = desk_.manner();
  rows.in_words = with_labels;
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
  const bool ordered = anything_ordered_ && changed_ == revision && ordered_.stage == desk_.view.stage &&
                       ordered_.moving == moving && ordered_.reading == desk_.results.reading;
  if (!ordered) {
    if (changed_ != revision) changed_at_ = now();
    changed_ = revision;
    anything_ordered_ = true;
    ordered_ = {++generation_, desk_.document.board(), desk_.view.stage, moving, desk_.results.reading};
    worker_.submit(ordered_);
  }
  const auto& other = desk_.results.comparison;
  if (other && !other->model && other->trouble.empty() && other_worker_.idle())
    other_worker_.submit({++generation_, desk_.results.comparison->board, desk_.view.stage, false, 0});
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

bool App::only_looks() {
  const bool woken = woken_.exchange(false);
  if (woken || spec_.plain || rest() <= 0 || now() < next_look(desk_) || lag_.due(now())) return false;
  if (desk_.document.dirty() && copied_ != desk_.document.revision()) return false;
  desk_.ui.tick_over(now());
  return !look_at_disk(desk_);
}

void App::frame() {
  const double start = now();
  desk_.ui.new_frame(start);
  interface_.dress(desk_.ui, static_cast<float>(desk_.settings.text_size) * (window_ ? window_->content_scale() : 1),
                   desk_.settings.dark);
  if (frames_owed_ > 0) --frames_owed_;
  take_input();
  collect();
  if (!spec_.plain) look_at_disk(desk_);
  interface_.begin(static_cast<float>(width()), static_cast<float>(height()), start);
  desk_.ui.follow_tab(desk_.forms.rows.typing());
  if (desk_.ui.stepping()) frames_owed_ = std::max(frames_owed_, 3);
  show_page();
  draw_panels();
  if (carry_out_asked(desk_)) frames_owed_ = 3;
  follow_copies(desk_);
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
  if (desk_.picture_wanted && resting_drawn_ && worker_.idle()) save_picture(desk_, picture_), frames_owed_ = 3;
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
  if (!resting_drawn_ && !desk_.document.previewing()) seconds = std::max(last_input_ + moving_for - now(), 0.0) + 1e-3;
  if (desk_.document.dirty() && copied_ != desk_.document.revision())
    seconds = std::min(seconds, std::max(changed_at_ + copy_after - now(), 0.0) + 1e-3);
  if (const auto due = lag_.due(now())) seconds = std::min(seconds, *due + 1e-3);
  if (!worker_.idle() || desk_.sending.state().running) seconds = std::min(seconds, work_tick);
  if (!spec_.plain) seconds = std::min(seconds, std::max(next_look(desk_) - now(), 0.0) + 1e-3);
  return seconds;
}

bool App::settled() const {
  return queue_.empty() && frames_owed_ == 0 && !desk_.view.flight && worker_.idle() && other_worker_.idle() &&
         !stages_wanting_ && resting_drawn_ && !desk_.paperwork.busy() && !desk_.rescue.busy() &&
         !desk_.comparing.busy() && !desk_.printing.busy() && worker_.finished() == ordered_.generation;
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
