#pragma once

/// The window and its OpenGL 3.3 core context, or a context without any window for pictures made by scripts.

#include <array>
#include <stdexcept>
#include <string>

#include "gpu/Gl.hpp"
#include "window/InputQueue.hpp"

struct GLFWwindow;
struct GLFWcursor;

namespace sagitta::viewer {

/// No display, or one without OpenGL 3.3. what() says so in a builder's words and what to do.
struct DisplayError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

struct WindowSpec {
  int width = 1280, height = 800;
  bool visible = true;
  bool debug = false;  ///< ask for a context that reports errors
};

class Window {
 public:
  /// Opens it and loads OpenGL. Throws DisplayError. Events go to `queue`, which must outlive the window.
  Window(const WindowSpec& spec, InputQueue& queue);
  ~Window();
  Window(const Window&) = delete;
  Window& operator=(const Window&) = delete;

  /// Sleeps until something happens or the seconds have passed; returns at once for 0.
  void wait(double seconds);
  /// Ends another thread's wait.
  static void wake();
  void swap();
  void resize(int width, int height);
  void set_title(const std::string& title);
  /// The pointer's shape, by ImGui's numbers.
  void set_pointer(int shape);
  int width() const;  ///< in pixels
  int height() const;
  float content_scale() const;
  GLFWwindow* handle() const { return handle_; }

 private:
  GLFWwindow* handle_ = nullptr;
  std::array<GLFWcursor*, 16> pointers_{};  ///< by shape, made when first shown; they go with the window
  int pointer_ = -2;
};

/// A context that needs no display at all (EGL without a surface).
class HiddenContext {
 public:
  /// Throws DisplayError.
  HiddenContext();
  ~HiddenContext();
  HiddenContext(const HiddenContext&) = delete;
  HiddenContext& operator=(const HiddenContext&) = delete;

 private:
  void* display_ = nullptr;
  void* context_ = nullptr;
};

}  // namespace sagitta::viewer
