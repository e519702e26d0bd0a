#pragma once

/// Named widgets: thin wrappers around ImGui that note where each one stands, so that a problem can lead to its field,
/// a test can find what a hand would find, and labels keep one column. Names are "panel/label".

#include <imgui.h>

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "widgets/Theme.hpp"

namespace sagitta::viewer {

/// A widget as last drawn.
struct Seen {
  ImVec2 low, high;      ///< in pixels of the window
  bool in_view = false;  ///< not scrolled or clipped away, at its middle
  bool enabled = true;
  int frame = -1;
  std::string text;  ///< what it shows
};

class Ui {
 public:
  Theme theme = light_theme();
  Letters letters;
  float scale = 1;  ///< pixels per unit of the drawing, text size included

  float px(float units) const { return units * scale; }
  /// `seconds`: the frame's time, of any clock.
  void new_frame(double seconds) { ++frame_, now_ = seconds; }
  /// Time passes without a frame.
  void tick_over(double seconds) { now_ = seconds; }
  double now() const { return now_; }
  int frame() const { return frame_; }

  /// A panel that fills a fixed rectangle of the window, `bare` without a margin; always followed by end_panel().
  bool begin_panel(const std::string& name, ImVec2 low, ImVec2 size, ImGuiWindowFlags flags = 0, bool bare = false);
  void end_panel();
  /// A dialog in the middle of the window, over everything; always followed by end_dialog().
  bool begin_dialog(const std::string& name, ImVec2 size);
  void end_dialog();
  /// No dialog in this frame: one that stood open until now is closed.
  void no_dialog();
  const std::string& panel() const { return panel_; }

  bool button(const std::string& label, bool enabled = true);
  bool primary(const std::string& label, bool enabled = true);  ///< the one button that goes on, in the accent colour
  bool toggle(const std::string& label, bool& value,
              const std::string& more = {});  ///< `more` is shown behind the label
  /// A bare tick box, not noted.
  bool checkbox(const std::string& label, bool& value) const;
  /// With "##" before it the label is only a name: its words stand elsewhere.
  bool tick(const std::string& label, bool& value);
  bool row(const std::string& label, const std::string& shown, bool chosen);  ///< one line of a list
  bool text_field(const std::string& name, std::string& text, const char* hint = "", ImGuiInputTextFlags flags = 0);
  bool choice(const std::string& name, const std::vector<std::string>& options, int& chosen);
  bool menu_item(const std::string& label, bool enabled = true);  ///< one line of a menu
  void heading(const std::string& text);
  void quiet(const std::string& text);    ///< explanation, wrapped
  void warning(const std::string& text);  ///< what keeps a value from being taken, wrapped
  void help(const std::string& text);     ///< shown while the pointer rests on the last widget

  /// Notes the last ImGui item under the current panel.
  void note(const std::string& label, const std::string& text = "", bool enabled = true);
  void note_area(const std::string& label, ImVec2 low, ImVec2 high, const std::string& text = "");
  /// Scrolls to a widget and gives it the keyboard when it is next drawn.
  void lead_to(const std::string& name) { leading_ = name, leading_frames_ = 8; }
  /// Scrolls to a widget and puts the keyboard's frame on it, without pressing it or typing, when it is next drawn.
  void focus_on(const std::string& name) { focusing_ = name, pointing_ = true; }
  /// Once a frame, before any widget: Tab and Shift+Tab go from widget to widget in the order in which they are drawn,
  /// inside the open dialog or menu where there is one. `typing`: a field takes Tab for itself.
  void follow_tab(bool typing);
  /// A step of Tab is still under way: it needs another frame.
  bool stepping() const { return tab_wait_ > 0 || !focusing_.empty(); }
  /// The widget that has the keyboard, as last drawn; "" for none that Tab reaches.
  std::string focused() const;
  /// Scrolls to it, no more.
  void reveal(const std::string& name) { revealing_ = name; }
  /// True once, for the widget that is being led to: it should take the keyboard.
  bool arrives(const std::string& label);
  /// The widget that a problem led to shows an accent frame for a while.
  const std::string& led_to() const { return led_to_; }
  void forget_led() { led_to_.clear(); }

  const Seen* find(const std::string& name) const;
  const std::map<std::string, Seen>& all() const { return seen_; }

 private:
  bool push_enabled(bool enabled);
  bool begin_list(const std::string& id, const std::string& shown) const;
  void note_stop(const std::string& name, bool enabled);
  /// Gives the keyboard to the last item.
  void take_focus();
  std::string panel_, dialog_;
  std::map<std::string, Seen> seen_;
  /// Something that can have the keyboard, as last drawn.
  struct Stop {
    ImGuiID item = 0, root = 0;  ///< root: of the outermost window that it stands in
    std::string name;
  };
  void step_focus();
  std::vector<Stop> stops_, stops_before_;
  ImGuiID tab_from_ = 0;
  int tab_step_ = 0, tab_wait_ = 0;
  bool pointing_ = false;  ///< the focus that is asked for is shown by the accent frame as well
  std::string leading_, revealing_, focusing_, led_to_;
  int leading_frames_ = 0;
  int frame_ = 0;
  double now_ = 0;
};

/// While it lives, ImGui's widgets that take input have a rim that is seen against every ground.
class RimmedFields {
 public:
  explicit RimmedFields(const Theme& theme) {
    ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 1);
    ImGui::PushStyleColor(ImGuiCol_Border, theme.rim);
  }
  ~RimmedFields() { ImGui::PopStyleColor(), ImGui::PopStyleVar(); }
  RimmedFields(const RimmedFields&) = delete;
  RimmedFields& operator=(const RimmedFields&) = delete;
};

/// Broken into lines at spaces only, so that a number stays whole; for the font in force.
std::string wrapped(const std::string& text, float width);

/// Cut at the end with an ellipsis so that it fits the width, pixels.
std::string fitted(const std::string& text, float width);

}  // namespace sagitta::viewer
