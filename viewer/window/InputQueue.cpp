#include "window/InputQueue.hpp"

#include <GLFW/glfw3.h>
#include <imgui.h>

#include <cfloat>
#include <set>

namespace sagitta::viewer {

namespace {

struct Batch {
  std::set<int> keys, buttons;
  bool moved = false;

  bool must_wait(const InputEvent& event) const {
    switch (event.kind) {
      case InputEvent::Kind::move:
        return !buttons.empty();
      case InputEvent::Kind::button:
        return moved || buttons.count(event.code) > 0;
      case InputEvent::Kind::key:
        return keys.count(event.code) > 0;
      default:
        return false;
    }
  }
  void add(const InputEvent& event) {
    if (event.kind == InputEvent::Kind::move) moved = true;
    if (event.kind == InputEvent::Kind::button) buttons.insert(event.code);
    if (event.kind == InputEvent::Kind::key) keys.insert(event.code);
  }
};

void set_modifiers(ImGuiIO& io, int mods) {
  io.KeyCtrl = (mods & GLFW_MOD_CONTROL) != 0;
  io.KeyShift = (mods & GLFW_MOD_SHIFT) != 0;
  io.KeyAlt = (mods & GLFW_MOD_ALT) != 0;
  io.KeySuper = (mods & GLFW_MOD_SUPER) != 0;
}

/// GLFW reports the modifiers without the key that is being pressed when that key is itself one.
int own_modifier(int key) {
  switch (key) {
    case GLFW_KEY_LEFT_CONTROL:
    case GLFW_KEY_RIGHT_CONTROL:
      return GLFW_MOD_CONTROL;
    case GLFW_KEY_LEFT_SHIFT:
    case GLFW_KEY_RIGHT_SHIFT:
      return GLFW_MOD_SHIFT;
    case GLFW_KEY_LEFT_ALT:
    case GLFW_KEY_RIGHT_ALT:
      return GLFW_MOD_ALT;
    case GLFW_KEY_LEFT_SUPER:
    case GLFW_KEY_RIGHT_SUPER:
      return GLFW_MOD_SUPER;
    default:
      return 0;
  }
}

void take_key(ImGuiIO& io, const InputEvent& event, Drained& drained) {
  const int own = own_modifier(event.code);
  set_modifiers(io, event.down ? event.mods | own : event.mods & ~own);
  if (event.code < 0 || event.code >= IM_ARRAYSIZE(io.KeysDown)) return;
  io.KeysDown[event.code] = event.down;
  if (event.down && !own) drained.pressed.push_back({event.code, event.mods & 0xf});
}

void take(ImGuiIO& io, const InputEvent& event, Drained& drained) {
  switch (event.kind) {
    case InputEvent::Kind::move:
      io.MousePos = ImVec2(event.x, event.y);
      break;
    case InputEvent::Kind::leave:
      io.MousePos = ImVec2(-FLT_MAX, -FLT_MAX);
      break;
    case InputEvent::Kind::button:
      if (event.code >= 0 && event.code < IM_ARRAYSIZE(io.MouseDown)) io.MouseDown[event.code] = event.down;
      set_modifiers(io, event.mods);
      break;
    case InputEvent::Kind::wheel:
      io.MouseWheel += event.y, io.MouseWheelH += event.x;
      break;
    case InputEvent::Kind::key:
      take_key(io, event, drained);
      break;
    case InputEvent::Kind::letter:
      io.AddInputCharacter(static_cast<unsigned>(event.code));
      break;
    case InputEvent::Kind::drop:
      drained.dropped.push_back(event.path);
      break;
    case InputEvent::Kind::close:
      drained.close = true;
      break;
    case InputEvent::Kind::wake:
      drained.uncovered = true;
      break;
  }
}

}  // namespace

Drained InputQueue::drain() {
  ImGuiIO& io = ImGui::GetIO();
  Drained drained;
  Batch batch;
  while (!events_.empty() && !batch.must_wait(events_.front())) {
    const InputEvent event = std::move(events_.front());
    events_.pop_front();
    batch.add(event);
    take(io, event, drained);
    ++drained.events;
  }
  return drained;
}

}  // namespace sagitta::viewer
