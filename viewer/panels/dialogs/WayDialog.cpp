#include <algorithm>

#include "dialogs/Dialogs.hpp"
#include "jobs/FileChooser.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

void step(Ui& ui, const char* title, const std::string& text) {
  ImGui::PushFont(ui.letters.heading);
  ImGui::TextUnformatted(title);
  ImGui::PopFont();
  ui.quiet(text);
}

}  // namespace

Requests draw_way(Ui& ui, Settings& settings, const Offer& offer) {
  const auto key = [&](const char* command) { return offered(offer, command).keys; };
  ImGui::BeginChild("steps", ImVec2(0, -ImGui::GetFrameHeightWithSpacing() - ui.px(6)));
  step(ui, "1  Decide, from top to bottom",
       "The left column holds the decisions in the order a shop makes them. Drag a value, or click it and type: "
       "\u201c25 1/2 in\u201d, \u201c648/2\u201d, \u201c1-11/16\u201d. " +
           key("undo") + " takes a step back.");
  step(ui, "2  Look",
       "Drag the board to turn it, Shift-drag to move it, turn the wheel to come nearer. A click names what is under "
       "the pointer and shows its row; Enter types over it. An inlay then has a frame: drag the inlay to move it, a "
       "corner to size it, the round grip to turn it. Shift lets go of the snaps, Escape gives it back. " +
           key("cutting plane") + " cuts the board across, " + key("measure") + " measures.");
  step(ui, "3  See what goes wrong before wood is cut",
       "The right column lists what is wrong, the costliest first. A click goes to the place on the board, " +
           key("next finding") +
           " to the next one; many remedies are one button. Below the board stands the stock after each cut: click one "
           "to see it large.");
  step(ui, "4  Hand it on",
       key("save") + " keeps the board file, " + key("export") +
           " writes the folder for machine and bench: solids, outlines, template, tables. " + key("commands") +
           " finds any command by name.");
  ImGui::EndChild();
  Requests asked;
  const auto leave = [&](Dialog next) { settings.way_shown = true, asked.push_back(asked::Show{next}); };
  dialog_foot(ui, button_width(ui, "Open a board") + button_width(ui, "Choose a preset") +
                      button_width(ui, "Start with this one") + ui.px(16));
  if (ui.button("Open a board")) leave(Dialog::open);
  ImGui::SameLine();
  if (ui.button("Choose a preset")) leave(Dialog::start);
  ImGui::SameLine();
  if (ui.primary("Start with this one")) leave(Dialog::none);
  return asked;
}

Requests draw_comfort(Ui& ui, Settings& s, Camera& camera) {
  const float column = ui.px(150);
  const auto label = [&](const char* text) {
    ImGui::AlignTextToFramePadding();
    ImGui::TextUnformatted(text);
    ImGui::SameLine(column);
    ImGui::SetNextItemWidth(-1);
  };
  const double sizes[] = {0.75, 1, 1.25, 1.5, 2, 2.5};
  int size = 1;
  for (int i = 0; i < 6; ++i)
    if (s.text_size >= sizes[i] - 1e-3) size = i;
  label("Text size");
  if (ui.choice("text size", {"75 %", "100 %", "125 %", "150 %", "200 %", "250 %"}, size)) s.text_size = sizes[size];
  int colours = s.dark ? 1 : 0;
  label("Colours");
  if (ui.choice("colours", {"light", "dark"}, colours)) s.dark = colours == 1;
  int display = static_cast<int>(s.display);
  label("Lengths shown");
  if (ui.choice("lengths", {"as in the file", "millimetres", "inches, decimal", "inches, fractions"}, display))
    s.display = static_cast<Display>(display);
  int decimal = static_cast<int>(s.decimal);
  label("Decimals");
  if (ui.choice("decimals", {"as the system writes them", "point: 6.35", "comma: 6,35"}, decimal))
    s.decimal = static_cast<Decimal>(decimal);
  int projection = camera.parallel ? 1 : 0;
  label("Projection");
  if (ui.choice("projection", {"perspective", "parallel"}, projection)) s.parallel = camera.parallel = projection == 1;
  if (FileChooser::available()) {
    label("Files");
    ui.tick("in the desktop's own dialog", s.desktop_dialogs);
  }
  ui.quiet("Files keep their own units whatever is shown here.");
  dialog_foot(ui, button_width(ui, "Done"));
  if (ui.primary("Done")) return {asked::Show{Dialog::none}};
  return {};
}

}  // namespace sagitta::viewer
