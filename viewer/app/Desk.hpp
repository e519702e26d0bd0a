#pragma once

/// Everything that the window holds between frames but for what lies on the graphics card. Only the app sees all of
/// it: each panel is handed what it needs and returns what was asked of it.

#include <filesystem>
#include <functional>
#include <optional>
#include <string>

#include "app/LiveDrawings.hpp"
#include "decisions/DrawerMenu.hpp"
#include "dialogs/CommandList.hpp"
#include "dialogs/FileDialog.hpp"
#include "dialogs/FretPage.hpp"
#include "dialogs/SendingPage.hpp"
#include "dialogs/StartPage.hpp"
#include "document/Document.hpp"
#include "document/OtherVersions.hpp"
#include "document/Settings.hpp"
#include "jobs/Comparing.hpp"
#include "jobs/FileChooser.hpp"
#include "jobs/Paperwork.hpp"
#include "jobs/Printing.hpp"
#include "jobs/Results.hpp"
#include "jobs/Sending.hpp"
#include "jobs/WaysOut.hpp"
#include "overlay/BoardHand.hpp"
#include "requests/Request.hpp"
#include "view/View.hpp"
#include "widgets/FieldRow.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// What is half done in the panels: half typed, held by a hand, ticked and not yet sent.
struct Forms {
  FieldRows rows;
  DrawerForm drawer;
  BoardHand hand;
  SendingForm sending;
  StartForm start;
  Browsing browsing;
  Dialog asked_desktop = Dialog::none;  ///< the dialog for files that the desktop was last asked for
  Dialog desktop_for = Dialog::none;    ///< what its answer is for
  Measuring measuring;
  CommandSearch commands;
  int placing = 0;  ///< index of the inlay that a drawing is chosen for; one past the last: a new one
};

struct Desk {
  // Document: all that is saved, and its file.
  Document document;
  Settings settings;
  OtherVersions versions;
  LiveDrawings drawings;

  // View: how it is looked at.
  View view;
  Ui ui;
  Forms forms;

  // Jobs: what the background makes of it.
  Results results;
  Sending sending;
  Paperwork paperwork;
  WaysOut rescue;
  Comparing comparing;
  Printing printing;
  FileChooser chooser;
  std::optional<std::filesystem::path> picture_wanted;  ///< the board's picture goes into this file
  bool stop_work = false;                               ///< the background should stop what it is at
  bool go_on = false;                                   ///< and take it up again
  std::function<void()> wake;                           ///< ends the window's sleep; callable from any thread

  // What was asked for in this frame, and what is to follow once unsaved changes are settled.
  Requests asked;
  std::optional<Request> after_settling;
  std::filesystem::path state;  ///< where what outlives a session is kept; empty: the user's own folder for that
  bool quit = false;

  Manner manner() const {
    Manner manner = manner_of(settings.display, document.board());
    manner.comma = shows_comma(settings);
    return manner;
  }
  void ask(const std::string& command) { asked.push_back(asked::Run{command}); }
};

}  // namespace sagitta::viewer
