#include "app/Commands.hpp"

#include <GLFW/glfw3.h>

#include <algorithm>

#include "app/Files.hpp"
#include "decisions/Decisions.hpp"
#include "decisions/FindingMarks.hpp"
#include "scene/Slice.hpp"

namespace sagitta::viewer {

namespace {

constexpr int ctrl = GLFW_MOD_CONTROL, shift = GLFW_MOD_SHIFT, alt = GLFW_MOD_ALT;

Command dialog(std::string name, std::string title, std::string group, Chord key, Dialog which) {
  return {std::move(name), std::move(title), std::move(group), key, [which](Desk& d) { d.view.dialog = which; },
          nullptr};
}

Command flip(std::string name, std::string title, Chord key, bool View::*what) {
  return {std::move(name), std::move(title), "Look", key, [what](Desk& d) { d.view.*what = !(d.view.*what); }, nullptr};
}

void add_file_commands(std::vector<Command>& all) {
  all.push_back({"new", "New from a preset", "File", {GLFW_KEY_N, ctrl}, [](Desk& d) {
                   when_settled(d, asked::Show{Dialog::start});
                 }});
  all.push_back({"open", "Open a board", "File", {GLFW_KEY_O, ctrl}, [](Desk& d) {
                   when_settled(d, asked::Show{Dialog::open});
                 }});
  all.push_back({"save", "Save", "File", {GLFW_KEY_S, ctrl}, [](Desk& d) { save_board(d); }});
  all.push_back(dialog("save as", "Save as", "File", {GLFW_KEY_S, ctrl | shift}, Dialog::save_as));
  all.push_back({"revert",
                 "Revert to the saved board",
                 "File",
                 {GLFW_KEY_R, ctrl | shift},
                 [](Desk& d) { d.forms.rows.forget(), d.document.revert(); },
                 [](const Desk& d) { return d.document.dirty(); }});
  all.push_back(dialog("export", "Export the hand-off folder", "File", {GLFW_KEY_E, ctrl}, Dialog::send_out));
  all.push_back({"compare saved", "Compare with the saved board", "File", {GLFW_KEY_D, ctrl}, [](Desk& d) {
                   compare_with_saved(d);
                 }});
  all.push_back(
      dialog("compare", "Compare with another board", "File", {GLFW_KEY_D, ctrl | shift}, Dialog::compare_with));
  all.push_back({"two boards",
                 "See both boards with what differs",
                 "File",
                 {GLFW_KEY_B, ctrl},
                 [](Desk& d) { d.view.dialog = Dialog::compared; },
                 [](const Desk& d) { return d.results.comparison.has_value(); }});
  all.push_back({"other lines",
                 "Show the lines of the other board",
                 "Look",
                 {GLFW_KEY_B, 0},
                 [](Desk& d) { d.view.other = !d.view.other; },
                 [](const Desk& d) { return d.results.comparison.has_value(); }});
  all.push_back(dialog("save picture", "Save the picture", "File", {GLFW_KEY_P, ctrl | shift}, Dialog::save_picture));
  all.push_back({"stop comparing",
                 "Stop comparing",
                 "File",
                 {GLFW_KEY_D, ctrl | alt},
                 [](Desk& d) {
                   d.results.comparison.reset(),
                       d.view.shade = d.view.shade == Shade::change ? Shade::materials : d.view.shade;
                 },
                 [](const Desk& d) { return d.results.comparison.has_value(); }});
  all.push_back({"quit", "Quit", "File", {GLFW_KEY_Q, ctrl}, [](Desk& d) { when_settled(d, asked::Quit{}); }});
}

void add_edit_commands(std::vector<Command>& all) {
  const auto undo = [](Desk& d) { d.forms.rows.forget(), d.document.undo(); };
  const auto redo = [](Desk& d) { d.forms.rows.forget(), d.document.redo(); };
  all.push_back(
      {"undo", "Undo", "Edit", {GLFW_KEY_Z, ctrl}, undo, [](const Desk& d) { return d.document.can_undo(); }});
  all.push_back(
      {"redo", "Redo", "Edit", {GLFW_KEY_Z, ctrl | shift}, redo, [](const Desk& d) { return d.document.can_redo(); }});
  for (int i = 0; i < static_cast<int>(decision_groups().size()); ++i) {
    const std::string title(decision_groups()[static_cast<std::size_t>(i)].title);
    all.push_back({"decisions " + std::to_string(i + 1),
                   "Decisions: " + title,
                   "Edit",
                   {GLFW_KEY_1 + i, ctrl},
                   [i, title](Desk& d) {
                     d.view.decision = i, d.view.narrow_shows_checks = false;
                     d.ui.reveal("Decisions/" + title);
                   }});
  }
}

void move_cut(Desk& d, int direction) {
  if (!d.results.laid_out()) return;
  const std::vector<double> places = slot_places(d.results.good->prepared->layout());
  d.view.cut_across(true);
  constexpr double here = 1e-6;
  if (direction > 0) {
    const auto next = std::find_if(places.begin(), places.end(), [&](double x) { return x > d.view.cut + here; });
    if (next != places.end()) d.view.cut = *next;
  } else {
    const auto before = std::find_if(places.rbegin(), places.rend(), [&](double x) { return x < d.view.cut - here; });
    if (before != places.rend()) d.view.cut = *before;
  }
}

void move_stage(Desk& d, int direction) {
  const auto stages = stages_of(d.document.board());
  const auto now = std::find(stages.begin(), stages.end(), d.view.stage);
  const auto i = std::clamp<std::ptrdiff_t>((now == stages.end() ? 0 : now - stages.begin()) + direction, 0,
                                            static_cast<std::ptrdiff_t>(stages.size()) - 1);
  d.view.stage = stages[static_cast<std::size_t>(i)];
}

void add_camera_commands(std::vector<Command>& all) {
  const char* const titles[] = {"View on the bench",       "View from above",     "View of the bass edge",
                                "View of the treble edge", "View of the nut end", "View of the heel end",
                                "View from below"};
  for (int i = 0; i < 7; ++i) {
    const StandardView view = standard_views[i];
    all.push_back({"view " + std::string(name(view)), titles[i], "Look", {GLFW_KEY_1 + i, 0}, [view](Desk& d) {
                     d.view.camera = d.view.camera.facing(view);
                     d.view.fit_wanted = true;
                   }});
  }
  all.push_back(
      {"fit", "Fit the board to the picture", "Look", {GLFW_KEY_F, 0}, [](Desk& d) { d.view.fit_wanted = true; }});
  all.push_back({"parallel", "Parallel or perspective", "Look", {GLFW_KEY_P, 0}, [](Desk& d) {
                   d.view.camera.parallel = d.settings.parallel = !d.view.camera.parallel;
                 }});
  const auto zoom = [](float by) {
    return [by](Desk& d) {
      d.view.camera = d.view.camera.zoomed(by, {d.view.camera.width / 2, d.view.camera.height / 2});
    };
  };
  all.push_back({"nearer", "Nearer", "Look", {GLFW_KEY_EQUAL, 0}, zoom(0.8f)});
  all.push_back({"farther", "Farther", "Look", {GLFW_KEY_MINUS, 0}, zoom(1.25f)});
  const auto orbit = [](float x, float y) { return [x, y](Desk& d) { d.view.camera = d.view.camera.orbited(x, y); }; };
  all.push_back({"turn left", "Turn left", "Look", {GLFW_KEY_LEFT, alt}, orbit(-40, 0)});
  all.push_back({"turn right", "Turn right", "Look", {GLFW_KEY_RIGHT, alt}, orbit(40, 0)});
  all.push_back({"turn up", "Look from higher", "Look", {GLFW_KEY_UP, alt}, orbit(0, 30)});
  all.push_back({"turn down", "Look from lower", "Look", {GLFW_KEY_DOWN, alt}, orbit(0, -30)});
  const auto pan = [](float x, float y) { return [x, y](Desk& d) { d.view.camera = d.view.camera.panned(x, y); }; };
  all.push_back({"pan left", "Move the picture left", "Look", {GLFW_KEY_LEFT, alt | shift}, pan(-40, 0)});
  all.push_back({"pan right", "Move the picture right", "Look", {GLFW_KEY_RIGHT, alt | shift}, pan(40, 0)});
  all.push_back({"pan up", "Move the picture up", "Look", {GLFW_KEY_UP, alt | shift}, pan(0, -40)});
  all.push_back({"pan down", "Move the picture down", "Look", {GLFW_KEY_DOWN, alt | shift}, pan(0, 40)});
}

void add_shown_commands(std::vector<Command>& all) {
  all.push_back(flip("frets", "Show the fret wire", {GLFW_KEY_R, 0}, &View::frets));
  all.push_back(flip("strings", "Show the strings and the nut", {GLFW_KEY_T, 0}, &View::strings));
  all.push_back(flip("inlays", "Show the inlays in place", {GLFW_KEY_I, 0}, &View::pieces));
  all.push_back(flip("neck", "Show the neck", {GLFW_KEY_N, 0}, &View::neck));
  all.push_back({"lift board", "Lift the board off its neck", "Look", {GLFW_KEY_N, shift}, [](Desk& d) {
                   constexpr float clear = 30;  // mm, above any board's thickness
                   d.view.lift_off(d.view.neck && d.view.apart > 0 ? 0 : clear);
                   d.view.neck = true;
                 }});
  all.push_back(flip("edges", "Show the edges", {GLFW_KEY_E, 0}, &View::edges));
}

void add_shade_commands(std::vector<Command>& all) {
  all.push_back({"height shade", "Shade by height", "Look", {GLFW_KEY_H, 0}, [](Desk& d) {
                   d.view.shade = d.view.shade == Shade::height ? Shade::materials : Shade::height;
                 }});
  all.push_back({"remaining shade", "Shade what is left of each piece", "Look", {GLFW_KEY_Q, 0}, [](Desk& d) {
                   d.view.shade = d.view.shade == Shade::remaining ? Shade::materials : Shade::remaining;
                 }});
  all.push_back({"lift pieces", "Lift the pieces out of their pockets", "Look", {GLFW_KEY_O, 0}, [](Desk& d) {
                   constexpr float clear = 8;  // mm, above any pocket
                   d.view.lift = d.view.lift > 0 ? 0 : clear;
                 }});
  all.push_back(flip("lost corners", "Show what the cutters cannot reach", {GLFW_KEY_W, 0}, &View::lost));
  all.push_back({"change shade",
                 "Shade by what differs",
                 "Look",
                 {GLFW_KEY_D, 0},
                 [](Desk& d) { d.view.shade = d.view.shade == Shade::change ? Shade::materials : Shade::change; },
                 [](const Desk& d) { return d.results.comparison.has_value(); }});
}

void add_section_commands(std::vector<Command>& all) {
  all.push_back({"cutting plane", "Cut the board across", "Look", {GLFW_KEY_X, 0}, [](Desk& d) {
                   d.view.cut_across(!d.view.cutting);
                 }});
  all.push_back({"slot before", "Cutting plane to the slot before", "Look", {GLFW_KEY_LEFT_BRACKET, 0}, [](Desk& d) {
                   move_cut(d, -1);
                 }});
  all.push_back({"slot after", "Cutting plane to the next slot", "Look", {GLFW_KEY_RIGHT_BRACKET, 0}, [](Desk& d) {
                   move_cut(d, 1);
                 }});
  all.push_back(flip("magnify", "Enlarge heights in the section", {GLFW_KEY_G, 0}, &View::magnified));
  const auto along = [](Lengthwise what) { return [what](Desk& d) { d.view.draw_along(what); }; };
  all.push_back(
      {"side view", "Side view: strings, action and relief", "Look", {GLFW_KEY_V, 0}, along(Lengthwise::side)});
  all.push_back(
      {"bass edge", "The bass edge, its heights stretched", "Look", {GLFW_KEY_3, shift}, along(Lengthwise::bass_edge)});
  all.push_back({"treble edge",
                 "The treble edge, its heights stretched",
                 "Look",
                 {GLFW_KEY_4, shift},
                 along(Lengthwise::treble_edge)});
  all.push_back({"measure", "Measure between two points", "Look", {GLFW_KEY_M, 0}, [](Desk& d) {
                   d.view.measuring = !d.view.measuring, d.view.picks.clear();
                 }});
}

void add_finding_commands(std::vector<Command>& all) {
  all.push_back({"next finding", "Go to the next finding", "Look", {GLFW_KEY_F8, 0}, [](Desk& d) {
                   step_finding(d.view, d.results, 1, d.ui.now());
                 }});
  all.push_back({"finding before", "Go to the finding before", "Look", {GLFW_KEY_F8, shift}, [](Desk& d) {
                   step_finding(d.view, d.results, -1, d.ui.now());
                 }});
  all.push_back(flip("humps", "Show the hump under each string", {GLFW_KEY_J, 0}, &View::humps));
  all.push_back(flip("fit to neck", "Show the board against the neck", {GLFW_KEY_K, 0}, &View::fit_to_neck));
}

void add_stage_commands(std::vector<Command>& all) {
  all.push_back(
      {"stage before", "The stage before", "Look", {GLFW_KEY_PAGE_UP, 0}, [](Desk& d) { move_stage(d, -1); }});
  all.push_back({"stage after", "The next stage", "Look", {GLFW_KEY_PAGE_DOWN, 0}, [](Desk& d) { move_stage(d, 1); }});
}

void open_fret_page(Desk& d, FretPage page) {
  d.forms.measuring.page = page;
  d.view.dialog = Dialog::frets;
}

void resize_text(Desk& d, double by) {
  d.settings.text_size = std::clamp(by > 0 ? d.settings.text_size * by : 1.0, least_text, most_text);
}

void add_window_commands(std::vector<Command>& all) {
  all.push_back(dialog("commands", "Find a command", "Window", {GLFW_KEY_K, ctrl}, Dialog::commands));
  all.push_back(dialog("way", "Show the way", "Window", {GLFW_KEY_F1, 0}, Dialog::way));
  const auto frets = [](FretPage page) { return [page](Desk& d) { open_fret_page(d, page); }; };
  all.push_back(
      {"slot places", "Places of the slots, and cents for 0.1 mm", "Look", {GLFW_KEY_L, 0}, frets(FretPage::places)});
  all.push_back({"wire list", "Fret wire to cut", "Look", {GLFW_KEY_L, shift}, frets(FretPage::wire)});
  all.push_back(dialog("sheets", "Sheets with their pieces", "Look", {GLFW_KEY_S, 0}, Dialog::sheets));
  all.push_back({"drawing", "Add a drawing as an inlay", "Edit", {GLFW_KEY_O, ctrl | shift}, [](Desk& d) {
                   d.forms.placing = static_cast<int>(d.document.board().inlays.size()),
                   d.view.dialog = Dialog::drawing;
                 }});
  all.push_back({"drawing colours",
                 "Go to the drawing whose colours changed",
                 "Edit",
                 {GLFW_KEY_F8, ctrl},
                 [](Desk& d) { lead_to_colours(d); },
                 [](const Desk& d) { return inlay_to_reconcile(d).has_value(); }});
  all.push_back(
      {"replace drawing", "Another drawing for one that cannot be read", "Edit", {GLFW_KEY_O, ctrl | alt}, [](Desk& d) {
         replace_unreadable(d);
       }});
  all.push_back({"measured slots", "Type in measured slots", "Edit", {GLFW_KEY_L, ctrl}, frets(FretPage::measured)});
  all.push_back(dialog("rescue", "Ways out of what was measured", "Edit", {GLFW_KEY_M, ctrl}, Dialog::rescue));
  all.push_back(dialog("comfort", "Text size, colours and units", "Window", {GLFW_KEY_COMMA, ctrl}, Dialog::comfort));
  all.push_back({"larger text", "Larger text", "Window", {GLFW_KEY_EQUAL, ctrl}, [](Desk& d) { resize_text(d, 1.1); }});
  all.push_back(
      {"smaller text", "Smaller text", "Window", {GLFW_KEY_MINUS, ctrl}, [](Desk& d) { resize_text(d, 1 / 1.1); }});
  all.push_back({"usual text", "Usual text size", "Window", {GLFW_KEY_0, ctrl}, [](Desk& d) { resize_text(d, 0); }});
  all.push_back(
      {"dark", "Light or dark", "Window", {GLFW_KEY_F9, 0}, [](Desk& d) { d.settings.dark = !d.settings.dark; }});
  all.push_back(
      {"units", "Next way of showing lengths", "Window", {GLFW_KEY_U, 0}, [](Desk& d) {
         d.settings.display = static_cast<Display>((static_cast<int>(d.settings.display) + 1) % 4);
         const char* const words[] = {"as in the file", "millimetres", "inches, decimal", "inches, fractions"};
         d.view.say(std::string("Lengths: ") + words[static_cast<int>(d.settings.display)]);
       }});
  all.push_back({"checks", "Decisions or checks in a narrow window", "Window", {GLFW_KEY_F6, 0}, [](Desk& d) {
                   d.view.narrow_shows_checks = !d.view.narrow_shows_checks;
                 }});
  all.push_back({"cancel", "Stop the work in the background", "Window", {GLFW_KEY_PERIOD, ctrl}, [](Desk& d) {
                   d.sending.cancel(), d.stop_work = true;
                 }});
  all.push_back({"go on",
                 "Go on with the work that was stopped",
                 "Window",
                 {GLFW_KEY_PERIOD, ctrl | shift},
                 [](Desk& d) { d.go_on = true; },
                 [](const Desk& d) { return d.results.behind.stopped; }});
}

}  // namespace

const std::vector<Command>& commands() {
  static const std::vector<Command> all = [] {
    std::vector<Command> made;
    for (const auto add :
         {add_file_commands, add_edit_commands, add_camera_commands, add_shown_commands, add_shade_commands,
          add_section_commands, add_finding_commands, add_stage_commands, add_window_commands})
      add(made);
    return made;
  }();
  return all;
}

const Command* command_named(const std::string& name) {
  for (const Command& c : commands())
    if (c.name == name) return &c;
  return nullptr;
}

const Command* command_on(const Chord& key) {
  constexpr Chord second_redo{GLFW_KEY_Y, ctrl};
  if (key == second_redo) return command_named("redo");
  for (const Command& c : commands())
    if (c.key == key) return &c;
  return nullptr;
}

std::string key_words(const Chord& chord) {
  std::string words;
  if (chord.mods & ctrl) words += "Ctrl+";
  if (chord.mods & alt) words += "Alt+";
  if (chord.mods & shift) words += "Shift+";
  if (chord.key >= GLFW_KEY_F1 && chord.key <= GLFW_KEY_F12)
    return words + "F" + std::to_string(chord.key - GLFW_KEY_F1 + 1);
  switch (chord.key) {
    case GLFW_KEY_LEFT:
      return words + "Left";
    case GLFW_KEY_RIGHT:
      return words + "Right";
    case GLFW_KEY_UP:
      return words + "Up";
    case GLFW_KEY_DOWN:
      return words + "Down";
    case GLFW_KEY_PAGE_UP:
      return words + "Page up";
    case GLFW_KEY_PAGE_DOWN:
      return words + "Page down";
    case GLFW_KEY_EQUAL:
      return words + "=";
    case GLFW_KEY_MINUS:
      return words + "-";
    default:
      return words + static_cast<char>(chord.key);
  }
}

Offer offer() {
  Offer all;
  for (const Command& c : commands()) all.push_back({c.name, c.title, c.group, key_words(c.key)});
  return all;
}

void update(Offer& offer, const Desk& desk) {
  for (std::size_t i = 0; i < offer.size(); ++i) offer[i].can = !commands()[i].can || commands()[i].can(desk);
}

}  // namespace sagitta::viewer
