#include "gpu/Gl.hpp"

#include <string_view>

namespace sagitta::viewer::gl {

PFNGLGETGRAPHICSRESETSTATUSARBPROC reset_status = nullptr;

namespace {
int reported = 0;
std::string latest;

void APIENTRY note(GLenum, GLenum type, GLuint, GLenum, GLsizei, const GLchar* words, const void*) {
  if (type != GL_DEBUG_TYPE_ERROR) return;
  ++reported;
  latest = words ? words : "";
}

bool in_core(int version) { return epoxy_gl_version() >= version; }
}  // namespace

bool new_enough() {
  if (!in_core(33)) return false;
  // Its own function, as a test puts another in its place: libepoxy's stand-in is not to be kept.
  if (epoxy_has_gl_extension("GL_ARB_robustness")) reset_status = [] { return glGetGraphicsResetStatusARB(); };
  return true;
}

void watch_errors() {
  if (!in_core(43) && !epoxy_has_gl_extension("GL_KHR_debug")) return;
  glEnable(GL_DEBUG_OUTPUT);
  glEnable(GL_DEBUG_OUTPUT_SYNCHRONOUS);
  glDebugMessageCallback(note, nullptr);
}

const std::string& latest_error() { return latest; }

bool lost() { return reset_status && reset_status() != GL_NO_ERROR; }

bool software_rendering() {
  const auto* text = reinterpret_cast<const char*>(glGetString(GL_RENDERER));
  const std::string_view renderer = text ? text : "";
  return renderer.find("llvmpipe") != renderer.npos || renderer.find("softpipe") != renderer.npos ||
         renderer.find("Software") != renderer.npos;
}

int errors() {
  for (int i = 0; i < 32 && glGetError() != GL_NO_ERROR; ++i) ++reported;
  return reported;
}

}  // namespace sagitta::viewer::gl
