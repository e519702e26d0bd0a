#include <dlfcn.h>
#include <epoxy/egl.h>

#include "window/Window.hpp"

namespace sagitta::viewer {

namespace {

constexpr const char* no_egl = "no picture can be drawn: EGL is missing. Install libegl1, libgl1 and libgl1-mesa-dri.";

EGLDisplay surfaceless_display() {
  const auto get = reinterpret_cast<PFNEGLGETPLATFORMDISPLAYEXTPROC>(eglGetProcAddress("eglGetPlatformDisplayEXT"));
  if (!get) return EGL_NO_DISPLAY;
  return get(EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, nullptr);
}

EGLContext core_context(EGLDisplay display) {
  const EGLint wanted[] = {EGL_SURFACE_TYPE, 0, EGL_RENDERABLE_TYPE, EGL_OPENGL_BIT, EGL_NONE};
  EGLConfig config = nullptr;
  EGLint found = 0;
  if (!eglChooseConfig(display, wanted, &config, 1, &found) || found < 1) return EGL_NO_CONTEXT;
  const EGLint version[] = {
      EGL_CONTEXT_MAJOR_VERSION,           3,       EGL_CONTEXT_MINOR_VERSION, 3, EGL_CONTEXT_OPENGL_PROFILE_MASK,
      EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT, EGL_NONE};
  return eglCreateContext(display, config, EGL_NO_CONTEXT, version);
}

}  // namespace

HiddenContext::HiddenContext() {
  // libepoxy ends the program where this library is missing.
  if (!dlopen("libEGL.so.1", RTLD_LAZY)) throw DisplayError(no_egl);
  display_ = surfaceless_display();
  if (display_ == EGL_NO_DISPLAY || !eglInitialize(display_, nullptr, nullptr) || !eglBindAPI(EGL_OPENGL_API))
    throw DisplayError(no_egl);
  context_ = core_context(display_);
  if (context_ == EGL_NO_CONTEXT || !eglMakeCurrent(display_, EGL_NO_SURFACE, EGL_NO_SURFACE, context_))
    throw DisplayError("no picture can be drawn: there is no OpenGL 3.3. Install libgl1-mesa-dri.");
  if (!gl::new_enough())
    throw DisplayError("no picture can be drawn: there is no OpenGL 3.3. Install libgl1-mesa-dri.");
}

HiddenContext::~HiddenContext() {
  eglMakeCurrent(display_, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
  eglDestroyContext(display_, context_);
  eglTerminate(display_);
}

}  // namespace sagitta::viewer
