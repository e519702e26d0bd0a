#include "window/Window.hpp"

#include <GLFW/glfw3.h>
#include <imgui.h>

#include <array>

#include "widgets/Pointers.hpp"

namespace sagitta::viewer {

namespace {

InputQueue& queue_of(GLFWwindow* window) { return *static_cast<InputQueue*>(glfwGetWindowUserPointer(window)); }

InputEvent of(InputEvent::Kind kind) {
  InputEvent event;
  event.kind = kind;
  return event;
}

/// Window coordinates and pixels differ on some screens.
float pixels_per_unit(GLFWwindow* window) {
  int units = 0, pixels = 0, unused = 0;
  glfwGetWindowSize(window, &units, &unused);
  glfwGetFramebufferSize(window, &pixels, &unused);
  return units > 0 ? static_cast<float>(pixels) / static_cast<float>(units) : 1.0f;
}

void on_move(GLFWwindow* window, double x, double y) {
  const float scale = pixels_per_unit(window);
  InputEvent event = of(InputEvent::Kind::move);
  event.x = static_cast<float>(x) * scale, event.y = static_cast<float>(y) * scale;
  queue_of(window).push(event);
}
void on_enter(GLFWwindow* window, int entered) {
  if (!entered) queue_of(window).push(of(InputEvent::Kind::leave));
}
void on_button(GLFWwindow* window, int button, int action, int mods) {
  InputEvent event = of(InputEvent::Kind::button);
  event.code = button, event.down = action == GLFW_PRESS, event.mods = mods;
  queue_of(window).push(event);
}
void on_wheel(GLFWwindow* window, double x, double y) {
  InputEvent event = of(InputEvent::Kind::wheel);
  event.x = static_cast<float>(x), event.y = static_cast<float>(y);
  queue_of(window).push(event);
}
void on_key(GLFWwindow* window, int key, int, int action, int mods) {
  InputEvent event = of(InputEvent::Kind::key);
  event.code = key, event.mods = mods, event.down = action != GLFW_RELEASE;
  queue_of(window).push(event);
}
void on_letter(GLFWwindow* window, unsigned letter) {
  InputEvent event = of(InputEvent::Kind::letter);
  event.code = static_cast<int>(letter);
  queue_of(window).push(event);
}
void on_drop(GLFWwindow* window, int count, const char** paths) {
  for (int i = 0; i < count; ++i) {
    InputEvent event = of(InputEvent::Kind::drop);
    event.path = paths[i];
    queue_of(window).push(event);
  }
}
void on_close(GLFWwindow* window) {
  glfwSetWindowShouldClose(window, GLFW_FALSE);
  queue_of(window).push(of(InputEvent::Kind::close));
}
void on_change(GLFWwindow* window) { queue_of(window).push({}); }
void on_resize(GLFWwindow* window, int, int) { on_change(window); }

void listen(GLFWwindow* window, InputQueue& queue) {
  glfwSetWindowUserPointer(window, &queue);
  glfwSetCursorPosCallback(window, on_move);
  glfwSetCursorEnterCallback(window, on_enter);
  glfwSetMouseButtonCallback(window, on_button);
  glfwSetScrollCallback(window, on_wheel);
  glfwSetKeyCallback(window, on_key);
  glfwSetCharCallback(window, on_letter);
  glfwSetDropCallback(window, on_drop);
  glfwSetWindowCloseCallback(window, on_close);
  glfwSetWindowRefreshCallback(window, on_change);
  glfwSetFramebufferSizeCallback(window, on_resize);
}

void set_hints(const WindowSpec& spec) {
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
  glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
  glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
  glfwWindowHint(GLFW_OPENGL_DEBUG_CONTEXT, spec.debug ? GLFW_TRUE : GLFW_FALSE);
  glfwWindowHint(GLFW_VISIBLE, spec.visible ? GLFW_TRUE : GLFW_FALSE);
  glfwWindowHint(GLFW_SCALE_TO_MONITOR, GLFW_TRUE);
  glfwWindowHint(GLFW_CONTEXT_ROBUSTNESS, GLFW_LOSE_CONTEXT_ON_RESET);
}

/// A context that tells of a reset of the driver, or at least a context.
GLFWwindow* make_window(const WindowSpec& spec) {
  set_hints(spec);
  if (GLFWwindow* made = glfwCreateWindow(spec.width, spec.height, "Sagitta", nullptr, nullptr)) return made;
  glfwWindowHint(GLFW_CONTEXT_ROBUSTNESS, GLFW_NO_ROBUSTNESS);
  return glfwCreateWindow(spec.width, spec.height, "Sagitta", nullptr, nullptr);
}

int standard_shape(int shape) {
  switch (shape) {
    case ImGuiMouseCursor_TextInput:
      return GLFW_IBEAM_CURSOR;
    case ImGuiMouseCursor_ResizeEW:
      return GLFW_HRESIZE_CURSOR;
    case ImGuiMouseCursor_ResizeNS:
      return GLFW_VRESIZE_CURSOR;
    case ImGuiMouseCursor_ResizeAll:
      return GLFW_CROSSHAIR_CURSOR;
    case ImGuiMouseCursor_Hand:
      return GLFW_HAND_CURSOR;
    default:
      return GLFW_ARROW_CURSOR;
  }
}

GLFWcursor* made_cursor(int shape, float scale) {
  auto picture = pointer_picture(shape, scale);
  if (!picture) return glfwCreateStandardCursor(standard_shape(shape));
  const GLFWimage image{picture->side, picture->side, picture->pixels.data()};
  return glfwCreateCursor(&image, picture->side / 2, picture->side / 2);
}

constexpr const char* no_opengl =
    "this display offers no OpenGL 3.3.\n"
    "Update the graphics driver, or draw with the processor: LIBGL_ALWAYS_SOFTWARE=1 sagitta-viewer";

}  // namespace

Window::Window(const WindowSpec& spec, InputQueue& queue) {
  if (!glfwInit())
    throw DisplayError(
        "there is no display to open a window on.\n"
        "Start it from a desktop session, or set DISPLAY. For a picture without a window: "
        "sagitta-viewer BOARD --shot FILE.png");
  handle_ = make_window(spec);
  if (!handle_) {
    glfwTerminate();
    throw DisplayError(no_opengl);
  }
  glfwMakeContextCurrent(handle_);
  glfwSwapInterval(1);
  if (!gl::new_enough()) throw DisplayError(no_opengl);
  if (spec.debug) gl::watch_errors();
  glfwSetWindowSizeLimits(handle_, 640, 480, GLFW_DONT_CARE, GLFW_DONT_CARE);
  listen(handle_, queue);
}

Window::~Window() {
  glfwDestroyWindow(handle_);
  glfwTerminate();
}

void Window::wait(double seconds) {
  if (seconds <= 0)
    glfwPollEvents();
  else
    glfwWaitEventsTimeout(seconds);
}
void Window::wake() { glfwPostEmptyEvent(); }
void Window::swap() { glfwSwapBuffers(handle_); }
void Window::resize(int width, int height) { glfwSetWindowSize(handle_, width, height); }
void Window::set_title(const std::string& title) { glfwSetWindowTitle(handle_, title.c_str()); }

void Window::set_pointer(int shape) {
  if (shape == pointer_) return;
  pointer_ = shape;
  if (shape < 0 || shape >= static_cast<int>(pointers_.size())) return;
  GLFWcursor*& cursor = pointers_[static_cast<std::size_t>(shape)];
  if (!cursor) cursor = made_cursor(shape, content_scale());
  glfwSetCursor(handle_, cursor);
}

int Window::width() const {
  int w = 0, h = 0;
  glfwGetFramebufferSize(handle_, &w, &h);
  return w;
}
int Window::height() const {
  int w = 0, h = 0;
  glfwGetFramebufferSize(handle_, &w, &h);
  return h;
}

float Window::content_scale() const {
  float x = 1, y = 1;
  glfwGetWindowContentScale(handle_, &x, &y);
  return x > 0 ? x : 1;
}

}  // namespace sagitta::viewer
