#pragma once

/// The dialog that opens and saves files.

#include <string>

#include "dialogs/StartPage.hpp"
#include "document/Document.hpp"
#include "document/Settings.hpp"
#include "requests/Request.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// A list of a folder for the file dialog.
struct Browsing {
  std::string folder, name, message;
  std::string new_folder = {};  ///< name of a folder to be made
  bool naming = false;          ///< it is being typed
  std::string shown = {};       ///< path that `preview` belongs to
  StartCard preview = {};       ///< the board that is chosen
};

/// Lists a folder and takes a name: to open, to save, to compare with, or for a drawing, as `dialog` says.
Requests draw_file_dialog(Ui& ui, Dialog dialog, Browsing& browsing, const Document& document,
                          const Settings& settings);

}  // namespace sagitta::viewer
