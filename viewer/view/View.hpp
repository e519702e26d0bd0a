#pragma once

/// How the board is looked at; nothing of it is saved with the board.

#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "plan/Stage.hpp"
#include "scene/Camera.hpp"
#include "scene/Flight.hpp"
#include "scene/Pick.hpp"
#include "scene/Showing.hpp"

namespace sagitta::viewer {

enum class Dialog {
  none,
  start,
  open,
  save_as,
  send_out,
  compare_with,
  commands,
  way,
  comfort,
  unsaved,
  elsewhere,
  left_over,
  frets,
  sheets,
  rescue,
  drawing,
  compared,
  save_picture
};

/// What is drawn below the picture along the whole board, its heights stretched.
enum class Lengthwise { none, side, bass_edge, treble_edge };

inline constexpr float highest_apart = 80;  ///< mm that the board can be lifted off its neck

/// A finding by its name and what it belongs to, so that it is found again in the next board.
struct Marked {
  std::string name;
  FeatureId where;
};

/// One piece of an inlay, taken up to be worked at on the board.
struct ChosenInlay {
  int inlay = 0;
  int fret = 0, in_space = 0;  ///< which of its pieces: the space, and which one of a pair there
  std::size_t of = 0;          ///< inlays on the board then: it is another one's number once they are more or fewer
};

/// Something that failed: it stays on screen until it is read.
struct Failed {
  std::string words;
  std::string label, command;  ///< the button for what to do about it and the command behind it; "" for none
};

struct View {
  Camera camera;
  std::optional<Flight> flight;  ///< while the camera is on its way
  bool fit_wanted = true;
  Stage stage = Stage::board;
  bool frets = true, strings = false, pieces = true, neck = false, edges = true;
  bool plan = true;   ///< the board from above over its picture
  bool other = true;  ///< the lines of the board that this one is compared with, over its picture
  Shade shade = Shade::materials;

  bool cutting = false;
  double cut = 100;  ///< x, mm
  bool magnified = false;
  Lengthwise lengthwise = Lengthwise::none;
  int side_string = 0;  ///< whose heights the side view tells, counted from the bass side

  float lift = 0;     ///< of the pieces above their pockets, mm
  float apart = 0;    ///< of the board above its neck, mm
  bool lost = false;  ///< what the cutters cannot reach is shaded on the drawing

  bool measuring = false;
  std::vector<Picked> picks;
  FeatureId named;               ///< the feature last picked
  std::optional<Marked> marked;  ///< the finding that is pointed at
  std::optional<ChosenInlay> chosen;
  bool notes_open = false;                  ///< findings that are only worth knowing are listed too
  bool humps = false, fit_to_neck = false;  ///< drawn over the board

  int decision = 0;  ///< which group of decisions is open
  Dialog dialog = Dialog::none;
  std::string message;               ///< the status line's
  std::optional<Failed> failure;     ///< the newest that nobody has read
  bool narrow_shows_checks = false;  ///< in a narrow window the left column shows one of the two

  /// Lifts the board this far off its neck. The picture moves along, so that the neck stays where it is on the screen.
  void lift_off(float to) {
    to = std::clamp(to, 0.0f, highest_apart);
    camera.target.z -= to - apart;
    apart = to;
  }
  /// The board is cut across, or drawn along its length; one closes the other.
  bool drawn_below() const { return cutting || lengthwise != Lengthwise::none; }
  void cut_across(bool on) {
    cutting = on;
    if (on) lengthwise = Lengthwise::none;
  }
  void draw_along(Lengthwise what) {
    lengthwise = lengthwise == what ? Lengthwise::none : what;
    if (lengthwise != Lengthwise::none) cutting = false;
  }

  void say(std::string words) { message = std::move(words); }
  void fail(std::string words, std::string label = {}, std::string command = {}) {
    failure = Failed{std::move(words), std::move(label), std::move(command)};
  }
};

}  // namespace sagitta::viewer
