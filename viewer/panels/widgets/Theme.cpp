#include "widgets/Theme.hpp"

#include <imgui_freetype.h>

#include <cmath>
#include <string>

#include "font/Font.hpp"

namespace sagitta::viewer {

namespace {

constexpr float regular_height = 15.5f, small_height = 13.0f;

ImVec4 colour(ImU32 packed, float alpha = 1) {
  ImVec4 c = ImGui::ColorConvertU32ToFloat4(packed);
  c.w *= alpha;
  return c;
}

std::array<float, 4> ink(ImU32 packed, float alpha) {
  const ImVec4 c = colour(packed);
  return {c.x, c.y, c.z, alpha};
}

ImFont* load(FontFile file, float height) {
  ImFontConfig config;
  config.FontDataOwnedByAtlas = false;
  config.FontBuilderFlags = ImGuiFreeTypeBuilderFlags_LightHinting;
  config.OversampleH = 1;
  static const ImWchar letters[] = {0x20,   0xff,   0x100,  0x17f,  0x2010, 0x2026, 0x2032, 0x2033, 0x2190,
                                    0x2193, 0x2200, 0x2265, 0x25a0, 0x25ff, 0x2713, 0x2717, 0};
  // The atlas only reads a file that is not its own.
  void* bytes = const_cast<unsigned char*>(file.data());
  return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(bytes, static_cast<int>(file.size()), height, &config, letters);
}

void set_colours(const Theme& theme, ImGuiStyle& style) {
  ImVec4* c = style.Colors;
  const ImVec4 clear(0, 0, 0, 0);
  for (int i = 0; i < ImGuiCol_COUNT; ++i) c[i] = colour(theme.text, 0.1f);
  c[ImGuiCol_Text] = colour(theme.text);
  c[ImGuiCol_TextDisabled] = colour(theme.quiet);
  c[ImGuiCol_WindowBg] = c[ImGuiCol_ChildBg] = colour(theme.panel);
  c[ImGuiCol_ChildBg] = clear;
  c[ImGuiCol_PopupBg] = colour(theme.paper);
  c[ImGuiCol_Border] = c[ImGuiCol_Separator] = colour(theme.line);
  c[ImGuiCol_BorderShadow] = clear;
  c[ImGuiCol_FrameBg] = colour(theme.field);
  c[ImGuiCol_FrameBgHovered] = colour(theme.line);
  c[ImGuiCol_FrameBgActive] = colour(theme.line);
  c[ImGuiCol_TitleBg] = c[ImGuiCol_TitleBgActive] = c[ImGuiCol_TitleBgCollapsed] = colour(theme.panel);
  c[ImGuiCol_ScrollbarBg] = clear;
  c[ImGuiCol_ScrollbarGrab] = colour(theme.rim);
  c[ImGuiCol_ScrollbarGrabHovered] = c[ImGuiCol_ScrollbarGrabActive] = colour(theme.quiet);
  c[ImGuiCol_CheckMark] = colour(theme.accent);
  c[ImGuiCol_SliderGrab] = c[ImGuiCol_SliderGrabActive] = colour(theme.accent);
  c[ImGuiCol_Button] = colour(theme.field);
  c[ImGuiCol_ButtonHovered] = colour(theme.line);
  c[ImGuiCol_ButtonActive] = colour(theme.accent_soft);
  c[ImGuiCol_Header] = colour(theme.accent_soft);
  c[ImGuiCol_HeaderHovered] = colour(theme.line);
  c[ImGuiCol_HeaderActive] = colour(theme.accent_soft);
  c[ImGuiCol_TextSelectedBg] = colour(theme.accent, 0.30f);
  c[ImGuiCol_NavHighlight] = colour(theme.accent);
  c[ImGuiCol_NavWindowingHighlight] = colour(theme.accent);
  c[ImGuiCol_ModalWindowDimBg] = ImVec4(0, 0, 0, theme.dark ? 0.5f : 0.25f);
  c[ImGuiCol_PlotHistogram] = colour(theme.accent);
}

}  // namespace

Theme light_theme() {
  Theme t;
  t.accent = IM_COL32(163, 74, 20, 255), t.accent_soft = IM_COL32(240, 216, 198, 255);
  t.text = IM_COL32(38, 36, 33, 255), t.quiet = IM_COL32(104, 99, 92, 255);
  t.line = IM_COL32(221, 217, 210, 255), t.panel = IM_COL32(247, 245, 241, 255);
  t.canvas = IM_COL32(232, 229, 223, 255), t.field = IM_COL32(236, 233, 227, 255);
  t.paper = IM_COL32(253, 252, 250, 255);
  t.rim = IM_COL32(128, 122, 113, 255), t.look = IM_COL32(40, 96, 120, 255);
  t.ink.bench = {0.835f, 0.820f, 0.790f}, t.ink.far = {0.910f, 0.900f, 0.880f};
  t.ink.edge = {0.03f, 0.025f, 0.02f, 0.62f}, t.ink.accent = ink(t.accent, 1), t.ink.shadow = 0.50f;
  return t;
}

Theme dark_theme() {
  Theme t;
  t.dark = true;
  t.accent = IM_COL32(238, 155, 98, 255), t.accent_soft = IM_COL32(84, 56, 38, 255);
  t.text = IM_COL32(232, 229, 223, 255), t.quiet = IM_COL32(160, 154, 146, 255);
  t.line = IM_COL32(64, 61, 57, 255), t.panel = IM_COL32(33, 32, 30, 255);
  t.canvas = IM_COL32(24, 23, 22, 255), t.field = IM_COL32(46, 44, 41, 255);
  t.paper = IM_COL32(41, 39, 37, 255);
  t.rim = IM_COL32(132, 126, 118, 255), t.look = IM_COL32(130, 190, 210, 255);
  t.ink.bench = {0.300f, 0.290f, 0.275f}, t.ink.far = {0.150f, 0.145f, 0.138f};
  t.ink.edge = {0.01f, 0.01f, 0.01f, 0.75f}, t.ink.accent = ink(t.accent, 1), t.ink.shadow = 0.62f;
  return t;
}

Letters load_letters(float scale) {
  ImGuiIO& io = ImGui::GetIO();
  io.Fonts->Clear();
  Letters letters;
  letters.regular = load(regular_font(), regular_height * scale);
  letters.heading = load(semi_bold_font(), regular_height * scale);
  letters.small = load(regular_font(), small_height * scale);
  io.FontDefault = letters.regular;
  io.Fonts->Build();
  return letters;
}

void apply(const Theme& theme, float scale) {
  ImGuiStyle style;
  style.WindowPadding = ImVec2(14, 12), style.FramePadding = ImVec2(8, 5), style.ItemSpacing = ImVec2(8, 7);
  style.ItemInnerSpacing = ImVec2(6, 4), style.CellPadding = ImVec2(4, 3);
  style.WindowRounding = 0, style.FrameRounding = 4, style.PopupRounding = 6, style.ChildRounding = 4;
  style.WindowBorderSize = 0, style.FrameBorderSize = 0, style.PopupBorderSize = 1, style.ChildBorderSize = 0;
  style.ScrollbarSize = 12, style.ScrollbarRounding = 6, style.GrabRounding = 4, style.IndentSpacing = 14;
  style.WindowTitleAlign = ImVec2(0, 0.5f), style.ButtonTextAlign = ImVec2(0.5f, 0.5f);
  style.WindowMenuButtonPosition = ImGuiDir_None;
  style.ScaleAllSizes(scale);
  style.PopupBorderSize = 1;
  set_colours(theme, style);
  ImGui::GetStyle() = style;
}

}  // namespace sagitta::viewer
