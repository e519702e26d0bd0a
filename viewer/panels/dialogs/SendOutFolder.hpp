#pragma once

/// The folder on the export's page: the board's own beside its file, what stands there now, and what must be chosen
/// deliberately before it is written.

#include "dialogs/SendingPage.hpp"

namespace sagitta::viewer {

/// The folder of this board: beside its file and named after it.
std::string usual_folder(const Document& document, bool trial);
/// Offers the board's own folder when the page shows another board than before.
void follow_board(const SendingPage& page);
/// The field with the folder, what stands there, and a tick where it is another board's.
void draw_folder(const SendingPage& page);
/// A line left of the buttons: the findings that say stop, with the tick that lets them pass. `room`: its width,
/// pixels.
void draw_stops(const SendingPage& page, float room);
/// Whether nothing keeps the folder from being written: what stands there, and the ticks.
bool may_be_written(const SendingPage& page);
/// Whether a folder that stands there is replaced.
bool replaces(const SendingPage& page);

}  // namespace sagitta::viewer
