#pragma once

/// OpenGL 3.3 core as libepoxy loads it, and what the viewer asks of the context that is current.

#include <epoxy/gl.h>

#include <string>

namespace sagitta::viewer::gl {

/// The current context is OpenGL 3.3 or newer. To be asked before any function of OpenGL is called: libepoxy ends the
/// program where one is missing.
bool new_enough();

/// Switches on the debug output of a debug context; messages of type error are counted. No effect where the context has
/// no debug output.
void watch_errors();
/// Errors reported so far by the debug output and by glGetError.
int errors();
/// What the debug output said of the last one.
const std::string& latest_error();

/// Asks the driver whether the context is still whole; null where a driver has no such question, and before
/// new_enough().
extern PFNGLGETGRAPHICSRESETSTATUSARBPROC reset_status;
/// The driver was reset and everything on the graphics card is gone.
bool lost();
/// True when drawing is done by the processor: the picture is then kept cheaper while hands are moving.
bool software_rendering();

}  // namespace sagitta::viewer::gl
