#pragma once

/// The viewer: one frame at a time. The window's loop calls frame(); tests do the same with their own input queue.

#include <atomic>
#include <filesystem>
#include <string>

#include "app/Commands.hpp"
#include "app/Desk.hpp"
#include "app/Lag.hpp"
#include "gpu/StillTexture.hpp"
#include "jobs/Worker.hpp"
#include "overlay/BoardPanel.hpp"
#include "picture/Picture.hpp"
#include "window/InputQueue.hpp"
#include "window/Interface.hpp"

namespace sagitta::viewer {

class Window;
struct WindowPlaces;

struct AppSpec {
  std::string board;                      ///< path; "" for a preset
  std::filesystem::path settings, state;  ///< folders
  int width = 1280, height = 800;         ///< of a picture without a window
  bool plain = false;                     ///< no first-run page, nothing remembered: for pictures made by scripts
};

class App {
 public:
  /// `window` may be null: the picture then goes into a texture of the given size. A context must be current.
  App(const AppSpec& spec, Window* window, InputQueue& queue);
  ~App();
  App(const App&) = delete;
  App& operator=(const App&) = delete;

  /// Takes input, lays out the panels, runs commands, orders work, draws; shows it in the window. Throws DisplayError
  /// when the graphics driver was reset; a changed board is then kept for the next start.
  void frame();
  /// When only the time for a look at the disk has come: looks, and says whether that changed nothing, so that no frame
  /// is wanted.
  bool only_looks();
  /// Seconds that may pass without a frame or a look; 0 when one is wanted now.
  double rest() const;
  bool finished() const { return desk_.quit; }
  /// Nothing is going on: input taken, work done, pictures drawn.
  bool settled() const;

  Desk& desk() { return desk_; }
  Picture& picture() { return picture_; }
  /// The whole window as last drawn: RGB rows from the top.
  const std::vector<std::uint8_t>& snapshot();
  int width() const;
  int height() const;
  /// Gives the whole window to the board's picture: for pictures of the board alone.
  void whole_picture(bool whole) { whole_picture_ = whole; }
  /// Milliseconds of the last frame, without waiting.
  double frame_time() const { return frame_time_; }

 private:
  void wake();
  void take_input();
  void collect();
  void show_page();
  void draw_panels();
  void draw_columns(const WindowPlaces& places, const BoardPicture& picture);
  void take(Requests asked);
  void order_work();
  void keep_copy();
  void keep_settings();
  void draw_into(bool read);
  [[noreturn]] void give_up();

  AppSpec spec_;
  Window* window_;
  InputQueue& queue_;
  std::atomic<bool> woken_ = false;  ///< the background has something new
  Interface interface_;
  Desk desk_;
  Offer offer_ = offer();
  Recovery recovery_;
  Settings stored_;
  Picture picture_;
  Image page_;
  std::shared_ptr<const PrintedPages> paged_;  ///< that page_ is one of
  std::size_t page_number_ = 0;
  std::uint64_t page_changes_ = 0;
  Target screen_;
  Worker worker_, other_worker_;
  Lag lag_;
  Order ordered_;
  bool anything_ordered_ = false;
  std::uint64_t generation_ = 0, copied_ = 0, changed_ = 0;
  double changed_at_ = 0, last_input_ = -10, frame_time_ = 0;
  bool uncovered_ = true;  ///< the window must be drawn again although nothing in it changed
  bool lost_ = false;      ///< the graphics driver was reset
  bool copy_kept_ = false, stages_wanting_ = false, resting_drawn_ = false;
  int frames_owed_ = 3;
  bool whole_picture_ = false;
  std::vector<std::uint8_t> snapshot_;
  std::string title_;
};

/// Where Sagitta starts when no board is named: the first preset.
void open_first_preset(Desk& desk);

}  // namespace sagitta::viewer
