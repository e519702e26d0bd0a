#include "window/Interface.hpp"

#include <GLFW/glfw3.h>
#include <backends/imgui_impl_opengl3.h>

#include <algorithm>
#include <cstring>
#include <utility>

#include "window/Window.hpp"

namespace sagitta::viewer {

namespace {

void map_keys(ImGuiIO& io) {
  const std::pair<int, int> keys[] = {{ImGuiKey_Tab, GLFW_KEY_TAB},
                                      {ImGuiKey_LeftArrow, GLFW_KEY_LEFT},
                                      {ImGuiKey_RightArrow, GLFW_KEY_RIGHT},
                                      {ImGuiKey_UpArrow, GLFW_KEY_UP},
                                      {ImGuiKey_DownArrow, GLFW_KEY_DOWN},
                                      {ImGuiKey_PageUp, GLFW_KEY_PAGE_UP},
                                      {ImGuiKey_PageDown, GLFW_KEY_PAGE_DOWN},
                                      {ImGuiKey_Home, GLFW_KEY_HOME},
                                      {ImGuiKey_End, GLFW_KEY_END},
                                      {ImGuiKey_Insert, GLFW_KEY_INSERT},
                                      {ImGuiKey_Delete, GLFW_KEY_DELETE},
                                      {ImGuiKey_Backspace, GLFW_KEY_BACKSPACE},
                                      {ImGuiKey_Space, GLFW_KEY_SPACE},
                                      {ImGuiKey_Enter, GLFW_KEY_ENTER},
                                      {ImGuiKey_Escape, GLFW_KEY_ESCAPE},
                                      {ImGuiKey_KeyPadEnter, GLFW_KEY_KP_ENTER},
                                      {ImGuiKey_A, GLFW_KEY_A},
                                      {ImGuiKey_C, GLFW_KEY_C},
                                      {ImGuiKey_V, GLFW_KEY_V},
                                      {ImGuiKey_X, GLFW_KEY_X},
                                      {ImGuiKey_Y, GLFW_KEY_Y},
                                      {ImGuiKey_Z, GLFW_KEY_Z}};
  for (const auto& [ours, theirs] : keys) io.KeyMap[ours] = theirs;
}

/// FNV-1a over 8 bytes at a time.
std::uint64_t mixed(std::uint64_t sum, const void* data, std::size_t bytes) {
  const auto* from = static_cast<const unsigned char*>(data);
  for (; bytes >= sizeof sum; bytes -= sizeof sum, from += sizeof sum) {
    std::uint64_t word = 0;
    std::memcpy(&word, from, sizeof word);
    sum = (sum ^ word) * 0x100000001b3u;
    sum ^= sum >> 29;
  }
  for (; bytes > 0; --bytes) sum = (sum ^ *from++) * 0x100000001b3u;
  return sum;
}

/// Enter presses what has the keyboard, as Space does: true in the frame in which it goes down, so that an Enter that
/// ended a text presses nothing.
bool enter_goes_down(const ImGuiIO& io) {
  for (const int key : {GLFW_KEY_ENTER, GLFW_KEY_KP_ENTER})
    if (io.KeysDown[key] && io.KeysDownDuration[key] < 0) return true;
  return false;
}

const char* paste(void* window) { return glfwGetClipboardString(static_cast<GLFWwindow*>(window)); }
void copy(void* window, const char* text) { glfwSetClipboardString(static_cast<GLFWwindow*>(window), text); }

}  // namespace

Interface::Interface(Window* window) {
  IMGUI_CHECKVERSION();
  ImGui::CreateContext();
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
  io.BackendFlags |= ImGuiBackendFlags_HasMouseCursors;
  io.BackendPlatformName = "sagitta";
  map_keys(io);
  if (window) {
    io.ClipboardUserData = window->handle();
    io.GetClipboardTextFn = paste;
    io.SetClipboardTextFn = copy;
  }
  ImGui_ImplOpenGL3_Init("#version 330 core");
}

Interface::~Interface() {
  ImGui_ImplOpenGL3_Shutdown();
  ImGui::DestroyContext();
}

void Interface::dress(Ui& ui, float scale, bool dark) {
  if (scale == scale_ && dark == dark_) return;
  ui.theme = dark ? dark_theme() : light_theme();
  ui.scale = scale;
  apply(ui.theme, scale);
  if (scale != scale_) {
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    ui.letters = load_letters(scale);
    ImGui_ImplOpenGL3_CreateFontsTexture();
  }
  scale_ = scale, dark_ = dark;
}

void Interface::begin(float width, float height, double seconds) {
  ImGuiIO& io = ImGui::GetIO();
  io.DisplaySize = ImVec2(width, height);
  io.DeltaTime = static_cast<float>(last_ < 0 ? 1.0 / 60 : std::clamp(seconds - last_, 1e-4, 1.0));
  last_ = seconds;
  if (enter_goes_down(io) && !io.WantTextInput && !ImGui::IsAnyItemActive()) io.NavInputs[ImGuiNavInput_Activate] = 1;
  ImGui_ImplOpenGL3_NewFrame();
  ImGui::NewFrame();
}

bool Interface::lay_out(float width, float height, std::uint64_t pictures) {
  ImGui::Render();
  const ImDrawData& data = *ImGui::GetDrawData();
  std::uint64_t sum = mixed(mixed(pictures, &width, sizeof width), &height, sizeof height);
  for (int i = 0; i < data.CmdListsCount; ++i) {
    const ImDrawList& list = *data.CmdLists[i];
    sum = mixed(sum, list.VtxBuffer.Data, static_cast<std::size_t>(list.VtxBuffer.size_in_bytes()));
    sum = mixed(sum, list.IdxBuffer.Data, static_cast<std::size_t>(list.IdxBuffer.size_in_bytes()));
    for (const ImDrawCmd& command : list.CmdBuffer) {
      sum = mixed(sum, &command.ClipRect, sizeof command.ClipRect);
      sum = mixed(sum, &command.TextureId, sizeof command.TextureId);
    }
  }
  return std::exchange(seen_, sum) != sum;
}

void Interface::draw(float width, float height, ImU32 background) {
  const ImVec4 c = ImGui::ColorConvertU32ToFloat4(background);
  glViewport(0, 0, static_cast<GLsizei>(width), static_cast<GLsizei>(height));
  glClearColor(c.x, c.y, c.z, 1);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}

}  // namespace sagitta::viewer
