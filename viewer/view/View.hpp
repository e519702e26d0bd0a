#pragma once

/// How the board is looked at; nothing of it is saved with the board.

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

  float lift = 0;     ///< of the pieces above their pockets, mm
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

  void say(std::string words) { message = std::move(words); }
  void fail(std::string words, std::string label = {}, std::string command = {}) {
    failure = Failed{std::move(words), std::move(label), std::move(command)};
  }
};

}  // namespace sagitta::viewer
