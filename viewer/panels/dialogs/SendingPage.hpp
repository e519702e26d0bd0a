#pragma once

/// What the dialog of the export works with.

#include <imgui.h>

#include <memory>
#include <set>
#include <string>
#include <vector>

#include "document/Document.hpp"
#include "document/Settings.hpp"
#include "folder/FolderState.hpp"
#include "jobs/Paperwork.hpp"
#include "jobs/Printing.hpp"
#include "jobs/Results.hpp"
#include "jobs/Sending.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// A file of the written folder, or a folder in it, and how much it holds.
struct WrittenEntry {
  std::string name, holds;
};

/// What the page about the export leaves out, and the sheet of paper that it shows.
struct SendingForm {
  bool trial = false;                 ///< the trial strip instead of the job
  std::set<std::string> left_out;     ///< folders of set-ups without files
  std::size_t page = 0;               ///< index into the printed pages
  ImTextureID picture = nullptr;      ///< of that page; null while there is none
  float shape = 1;                    ///< its width over its height
  std::string folder;                 ///< to be written; offered anew for each board
  std::string of_board;               ///< path or title of the board that it was offered for
  FolderState place;                  ///< what stands there
  std::string looked_at;              ///< folder and board that `place` belongs to
  double look_again = 0;              ///< seconds, of the frame
  bool over_other = false;            ///< chosen: another board's folder may be replaced
  std::string stops;                  ///< names of the findings that said stop when they were shown
  bool despite_stops = false;         ///< chosen: export all the same
  std::vector<WrittenEntry> written;  ///< what the folder holds
  Printed printed;                    ///< how the last paper that was sent to the printer came out
  std::string written_of;             ///< outcome and folder that `written` belongs to
};

/// What the export's page works with.
struct SendingPage {
  Ui& ui;
  const Document& document;
  Settings& settings;
  SendingForm& form;
  const Results& results;
  SendingState sending;                       ///< how far the folder is written
  std::shared_ptr<const PrintedPages> pages;  ///< as they will print; null while they are being made
};

}  // namespace sagitta::viewer
