#include "gpu/Gl.hpp"

namespace sagitta::viewer::gl {

#define SAGITTA_GL_DEFINE(NAME, TYPE) PFNGL##TYPE##PROC NAME = nullptr;
SAGITTA_GL_FUNCTIONS(SAGITTA_GL_DEFINE)
#undef SAGITTA_GL_DEFINE
PFNGLGETGRAPHICSRESETSTATUSPROC ResetStatus = nullptr;

namespace {
int reported = 0;
std::string latest;

void APIENTRY note(GLenum, GLenum type, GLuint, GLenum, GLsizei, const GLchar* words, const void*) {
  if (type != GL_DEBUG_TYPE_ERROR) return;
  ++reported;
  latest = words ? words : "";
}
}  // namespace

std::string load(Address (*address)(const char*)) {
#define SAGITTA_GL_LOAD(NAME, TYPE)                                \
  NAME = reinterpret_cast<PFNGL##TYPE##PROC>(address("gl" #NAME)); \
  if (!NAME) return "gl" #NAME;
  SAGITTA_GL_FUNCTIONS(SAGITTA_GL_LOAD)
#undef SAGITTA_GL_LOAD
  ResetStatus = reinterpret_cast<PFNGLGETGRAPHICSRESETSTATUSPROC>(address("glGetGraphicsResetStatusARB"));
  return "";
}

void watch_errors(Address (*address)(const char*)) {
  const auto callback = reinterpret_cast<PFNGLDEBUGMESSAGECALLBACKPROC>(address("glDebugMessageCallback"));
  if (!callback) return;
  Enable(GL_DEBUG_OUTPUT);
  Enable(GL_DEBUG_OUTPUT_SYNCHRONOUS);
  callback(note, nullptr);
}

const std::string& latest_error() { return latest; }

bool lost() { return ResetStatus && ResetStatus() != GL_NO_ERROR; }

bool software_rendering() {
  const auto* text = reinterpret_cast<const char*>(GetString(GL_RENDERER));
  const std::string_view renderer = text ? text : "";
  return renderer.find("llvmpipe") != renderer.npos || renderer.find("softpipe") != renderer.npos ||
         renderer.find("Software") != renderer.npos;
}

int errors() {
  if (!GetError) return reported;
  for (int i = 0; i < 32 && GetError() != GL_NO_ERROR; ++i) ++reported;
  return reported;
}

}  // namespace sagitta::viewer::gl
