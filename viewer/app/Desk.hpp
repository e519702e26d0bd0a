#pragma once

/// What the panels work on: the document, how it is looked at, what the background has made of it. Panels change the
/// document through edit() and ask for commands by name.

#include <functional>
#include <set>
#include <string>
#include <vector>

#include "app/Comparison.hpp"
#include "app/Elsewhere.hpp"
#include "app/View.hpp"
#include "board/BoardFile.hpp"
#include "document/Document.hpp"
#include "document/Recovery.hpp"
#include "document/Settings.hpp"
#include "export/FolderState.hpp"
#include "jobs/Paperwork.hpp"
#include "jobs/Sending.hpp"
#include "jobs/Worker.hpp"
#include "panels/FieldRow.hpp"
#include "panels/InlayFrame.hpp"
#include "panels/Ui.hpp"

namespace sagitta::viewer {

/// What the page about the export leaves out, and the sheet of paper that it shows.
struct SendingForm {
  bool trial = false;              ///< the trial strip instead of the job
  std::set<std::string> left_out;  ///< folders of set-ups without files
  std::size_t page = 0;            ///< index into the paperwork's pages
  ImTextureID picture = nullptr;   ///< of that page; null while there is none
  float shape = 1;                 ///< its width over its height
  std::string folder;              ///< to be written; offered anew for each board
  std::string of_board;            ///< path or title of the board that it was offered for
  FolderState place;               ///< what stands there
  std::string looked_at;           ///< folder and board that `place` belongs to
  double look_again = 0;           ///< seconds, of the frame
  bool over_other = false;         ///< chosen: another board's folder may be replaced
  std::string stops;               ///< names of the findings that said stop when they were shown
  bool despite_stops = false;      ///< chosen: export all the same
};

/// A list of a folder for the file dialog.
struct Browsing {
  std::string folder, name, message;
};

/// The side of a piece, before it is turned, that its turning grip stands off from.
enum class GripSide { none, up, down, heel, nut };

/// The grip of an inlay's frame that a hand holds, and how everything was when it took hold.
struct GripHold {
  bool turns = false;              ///< else it sizes
  GripSide side = GripSide::none;  ///< of the turning grip, whichever is held
  InlayFrame frame;                ///< as drawn, a little off the piece
  Inlay inlay;
  Region outline;       ///< of the piece, before it is turned
  bool moved = false;   ///< far enough to be meant
  std::string reading;  ///< the figure, in words
};

/// What a hand is doing on the board's picture.
struct BoardHand {
  enum class What { none, orbit, pan, plane, click, inlay, grip } what = What::none;
  ImVec2 start, last;  ///< pointer, pixels of the window
  double start_cut = 0;
  int inlay = -1;     ///< being dragged: index into the board's inlays
  Point start_shift;  ///< its shift along and across when the drag began
  Vec grabbed;        ///< where it, or its frame's grip, was taken hold of, mm
  GripHold grip;
};

/// The page about each fret: what it shows and what is half typed on it.
enum class FretPage { places, wire, measured };
struct Measuring {
  FretPage page = FretPage::places;
  std::optional<std::size_t> row, next, refused;  ///< being typed, to be typed next, not taken
  std::string text, initial, why;
};

struct Desk {
  Ui ui;
  Document document;
  View view;
  Settings settings;
  FieldRows rows;
  BoardHand hand;
  ModelPtr model;  ///< the newest; its board may be a step behind the document's
  ModelPtr good;   ///< the newest that could be built
  std::optional<Comparison> comparison;
  std::vector<Problem> file_problems;  ///< of a file that could not be opened
  std::string file_problems_of;
  Progress working;
  Sending sending;
  SendingForm sending_form;
  Paperwork paperwork;
  Browsing browsing;
  Measuring measuring;
  int placing = 0;  ///< index of the inlay that a drawing is chosen for; one past the last: a new one
  std::optional<Recovered> left_over;
  std::optional<Elsewhere> elsewhere;
  Watch watch;
  std::filesystem::path state;  ///< where what outlives a session is kept; empty: the user's own folder for that
  std::string search;           ///< in the command list
  int chosen_command = 0;
  double now = 0;                            ///< seconds, of the frame
  std::vector<std::string> wanted;           ///< commands asked for in this frame
  std::function<void(Desk&)> after_unsaved;  ///< what to go on with once unsaved changes are settled
  std::function<void()> wake;                ///< ends the window's sleep; callable from any thread
  bool quit = false;
  bool stop_work = false;  ///< the background should stop what it is at

  Manner manner() const { return manner_of(settings.display, document.board()); }
  /// Takes an edited draft: shown at once, one step of undo when the hand is done.
  void edit(Board draft, Edit how, const std::string& what);
  /// The stage shown, as far as it has been made.
  const StageModel* shown() const { return good ? good->at(view.stage) : nullptr; }
  void ask(const std::string& command) { wanted.push_back(command); }
  void say(const std::string& message) { view.message = message; }
};

}  // namespace sagitta::viewer
