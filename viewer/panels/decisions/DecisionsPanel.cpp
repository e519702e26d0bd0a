#include "decisions/DecisionsPanel.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <set>

#include "board/Fields.hpp"
#include "decisions/ArtworkRows.hpp"
#include "decisions/DecisionForms.hpp"
#include "decisions/Decisions.hpp"

namespace sagitta::viewer {

namespace {

struct Drawing {
  const DecisionState& state;
  Board draft;
  Edit edit = Edit::none;
  std::string what;
  Requests asked = {};

  void done(const std::string& name) { edit = Edit::done, what = name; }
};

/// The value in force where the board gives none, as far as it is known.
std::optional<double> usual_value(const Results& results, const Board& board, const std::string& plain,
                                  std::size_t index) {
  if (plain == "slots.depth") return slot_depth(board);
  if (plain == "board.behind_nut") return behind_nut(board);
  if (plain == "scale.steps_per_octave") return 12;
  if (index < board.inlays.size() && plain == "inlays.piece_thickness") return piece_thickness(board.inlays[index]);
  if (index < board.cutters.size() && plain == "cutters.measured_cut")
    return board.cutters[index].diameter + board.cutters[index].runout;
  if (!results.laid_out()) return std::nullopt;
  const Layout& layout = results.good->prepared->layout();
  if (plain == "blank.length") return layout.blank.high.x - layout.blank.low.x;
  if (plain == "blank.width") return layout.blank.high.y - layout.blank.low.y;
  if (plain == "blank.thickness") return layout.blank_thickness;
  return std::nullopt;
}

std::string key_in_row(const std::string& row, const Field& field) {
  return (row.empty() ? "" : row + ".") + std::string(field.key);
}

void draw_lines(Drawing& d, const DecisionBlock& block, const Table& table, std::size_t index) {
  const std::string row_name = row_key(d.draft, table, index);
  for (const DecisionLine& line : block.lines) {
    const Field* field = find_field(line.key);
    if (!field || !shows(d.draft, line.key)) continue;
    const Row target = row(d.draft, table, index);
    if (!is_used(*field, d.draft, reading(target))) continue;
    const std::string key = key_in_row(row_name, *field);
    const Edit edit = d.state.rows.draw(d.state.ui, *field, key, std::string(line.label), target,
                                        usual_value(d.state.results, d.draft, std::string(line.key), index));
    if (edit != Edit::none) d.edit = edit, d.what = std::string(line.label);
  }
}

void block_title(Ui& ui, const std::string& title) {
  ImGui::Dummy(ImVec2(0, ui.px(2)));
  ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
  ImGui::TextUnformatted(title.c_str());
  ImGui::PopStyleColor();
}

std::string entry_title(const Drawing& d, const DecisionBlock& block, std::size_t i) {
  std::string title = std::string(block.title) + " " + std::to_string(i + 1);
  if (block.table == "cutters" && !d.draft.cutters[i].name.empty()) title += ": " + d.draft.cutters[i].name;
  if (block.table == "setups" && !d.draft.setups[i].name.empty()) title += ": " + d.draft.setups[i].name;
  return title;
}

/// What a new entry starts as: something that can be built.
void fill_new_entry(Board& board, std::string_view table) {
  if (table == "inlays") {
    Inlay& inlay = board.inlays.back();
    inlay.depth = 1.5;
    const int fret = board.scale.frets >= 12 ? 12 : 1;
    inlay.frets = {fret};
  } else if (table == "cutters") {
    Cutter& cutter = board.cutters.back();
    cutter.name = "cutter " + std::to_string(board.cutters.size());
    cutter.use = {CutterUse::pocket_clear};
    cutter.diameter = 3.175, cutter.cutting_length = 12;
  } else if (table == "cuts") {
    Cut& cut = board.cuts.back();
    cut.name = "cut " + std::to_string(board.cuts.size());
    cut.shape = CutShape::block;
    cut.along = 20, cut.across = 8, cut.depth = 1.5;
    cut.at = {board.scale.length.value_or(650) / 4, 0};
  } else if (table == "sheets") {
    Sheet& sheet = board.sheets.back();
    sheet.material = "shell", sheet.length = 40, sheet.width = 25, sheet.thickness = 1.5;
  } else if (table == "notes") {
    board.notes.back().text = "Note " + std::to_string(board.notes.size());
  } else if (table == "setups") {
    board.setups.back().name = "set-up " + std::to_string(board.setups.size());
    board.setups.back().operations = board.order;
  }
}

std::string lower(std::string text) {
  if (!text.empty()) text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
  return text;
}

/// Takes one row out of a list of tables; the rows after it move up.
void remove_row(Board& board, const Table& table, std::size_t index) {
  const std::size_t count = row_count(board, table);
  for (std::size_t i = index; i + 1 < count; ++i)
    for (const Field& field : fields_of(table.name))
      field.access.set(row(board, table, i), field.access.get(reading(row(board, table, i + 1))));
  set_row_count(board, table, count - 1);
}

/// The button of the shop's drawer; what is taken out of it is one step.
void open_drawer(Drawing& d, Drawer drawer, std::size_t row) {
  if (draw_drawer(d.state.ui, d.state.drawer, drawer, d.draft, row) == Edit::done) d.done("Out of the drawer");
}

/// The same at the end of a block's title.
void drawer_after_title(Drawing& d, Drawer drawer, std::size_t row) {
  ImGui::SameLine(ImGui::GetContentRegionMax().x - drawer_button_width(d.state.ui));
  open_drawer(d, drawer, row);
}

void draw_list(Drawing& d, const DecisionBlock& block, const Table& table) {
  const std::string title(block.title);
  const auto drawer = drawer_of(block.table);
  for (std::size_t i = 0; i < row_count(d.draft, table); ++i) {
    ImGui::PushID(static_cast<int>(i));
    block_title(d.state.ui, entry_title(d, block, i));
    const float button = ImGui::CalcTextSize("Remove").x + 2 * ImGui::GetStyle().FramePadding.x;
    if (drawer) {
      ImGui::SameLine(ImGui::GetContentRegionMax().x - button - drawer_button_width(d.state.ui) - d.state.ui.px(8));
      open_drawer(d, *drawer, i);
    }
    ImGui::SameLine(ImGui::GetContentRegionMax().x - button);
    const bool removed = ImGui::SmallButton("Remove");
    d.state.ui.note(title + " " + std::to_string(i + 1) + " remove");
    if (!removed) draw_lines(d, block, table, i);
    if (!removed && block.table == "inlays")
      if (const Edit edit = draw_artwork_rows(d.state.ui, d.state.results, d.draft, i, d.asked); edit != Edit::none)
        d.edit = edit, d.what = "Material";
    ImGui::PopID();
    if (!removed) continue;
    remove_row(d.draft, table, i);
    d.done("Remove " + lower(title) + " " + std::to_string(i + 1));
    return;
  }
  if (block.table == "inlays") {
    if (d.state.ui.button("Add a drawing")) d.asked.push_back(asked::Run{"drawing"});
    ImGui::SameLine();
  }
  if (d.state.ui.button("Add " + lower(title))) {
    set_row_count(d.draft, table, row_count(d.draft, table) + 1);
    fill_new_entry(d.draft, block.table);
    d.done("Add " + lower(title));
  }
  if (!drawer) return;
  ImGui::SameLine();
  ImGui::AlignTextToFramePadding();
  open_drawer(d, *drawer, row_count(d.draft, table));
}

/// A new tongue: half of the strings, the heel end beside it straight and short of the tongue's first slot.
void begin_tongue(Board& board) {
  constexpr double short_end = 3;
  const int courses = board.strings.count / board.strings.course;
  board.tongue->frets = 2;
  board.tongue->strings = board.strings.course * std::max(1, courses / 2);
  board.board.past_last_fret = std::min(board.board.past_last_fret, short_end);
  const Heel heel = board.board.heel;
  if (heel == Heel::arc || heel == Heel::hollow || heel == Heel::drawn) board.board.heel = Heel::square;
}

void draw_extra(Drawing& d, const DecisionBlock& block, const Table& table) {
  bool there = row_count(d.draft, table) > 0;
  ImGui::Dummy(ImVec2(0, d.state.ui.px(2)));
  row_label(d.state.ui, std::string(block.title));
  if (d.state.ui.tick("##" + std::string(block.title), there)) {
    set_row_count(d.draft, table, there ? 1 : 0);
    if (there && block.table == "binding") d.draft.binding->width = 1.5;
    if (there && block.table == "edges") d.draft.edges->roll = 1.5;
    if (there && block.table == "scallop") {
      d.draft.scallop->to_fret = d.draft.scale.frets;
      d.draft.scallop->from_fret = std::min(12, d.draft.scale.frets - 1);
      d.draft.scallop->depth = 1;
    }
    if (there && block.table == "tongue") begin_tongue(d.draft);
    if (there && block.table == "side_dots" && d.draft.side_dots->frets.empty()) {
      for (const int fret : {3, 5, 7, 9, 12})
        if (fret <= d.draft.scale.frets) d.draft.side_dots->frets.push_back(fret);
    }
    d.done(std::string(block.title));
    return;
  }
  if (there) draw_lines(d, block, table, 0);
}

/// Every material that the board is made of.
std::set<std::string> materials_of(const Board& board) {
  std::set<std::string> names{board.blank.material, board.slots.line_material};
  for (const Inlay& inlay : board.inlays) {
    names.insert(inlay.material);
    for (const auto& [colour, name] : inlay.colours) names.insert(name);
  }
  for (const Sheet& sheet : board.sheets) names.insert(sheet.material);
  if (board.binding) names.insert(board.binding->line_materials.begin(), board.binding->line_materials.end());
  return names;
}

/// Materials of the board's own, each under its name; a button for each other one that it is made of.
void draw_named(Drawing& d, const DecisionBlock& block, const Table& table) {
  for (std::size_t i = 0; i < row_count(d.draft, table); ++i) {
    const std::string name = std::next(d.draft.materials.begin(), static_cast<std::ptrdiff_t>(i))->first;
    ImGui::PushID(name.c_str());
    block_title(d.state.ui, std::string(block.title) + " \u201c" + name + "\u201d");
    drawer_after_title(d, Drawer::materials, i);
    if (d.edit == Edit::done) return ImGui::PopID();
    draw_lines(d, block, table, i);
    ImGui::PopID();
  }
  for (const std::string& name : materials_of(d.draft))
    if (!name.empty() && !d.draft.materials.contains(name) && d.state.ui.button("Describe " + name)) {
      d.draft.materials[name] = {};
      return d.done("Describe " + name);
    }
  ImGui::Dummy(ImVec2(0, d.state.ui.px(2)));
  open_drawer(d, Drawer::materials, row_count(d.draft, table));
}

void draw_single_title(Drawing& d, const DecisionBlock& block) {
  const auto drawer = drawer_of(block.table);
  if (!block.title.empty() || drawer) block_title(d.state.ui, block.title.empty() ? " " : std::string(block.title));
  if (drawer) drawer_after_title(d, *drawer, 0);
}

void draw_block(Drawing& d, const DecisionBlock& block) {
  const Table* table = find_table(block.table);
  if (!table) return;
  ImGui::PushID(block.title.empty() ? "first" : std::string(block.title).c_str());
  switch (table->form) {
    case TableForm::many:
      draw_list(d, block, *table);
      break;
    case TableForm::extra:
      draw_extra(d, block, *table);
      break;
    case TableForm::named:
      draw_named(d, block, *table);
      break;
    default:
      draw_single_title(d, block);
      draw_forms(d.state.ui, d.state.results, d.draft, block.table, d.edit, d.what);
      draw_lines(d, block, *table, 0);
  }
  ImGui::PopID();
}

bool draw_group_title(Ui& ui, View& view, int index, const DecisionGroup& group) {
  const bool open = view.decision == index;
  const ImVec2 low = ImGui::GetCursorScreenPos();
  const float width = ImGui::GetContentRegionAvail().x, height = ImGui::GetFrameHeight();
  ImGui::PushID(index);
  const bool pressed = ImGui::InvisibleButton("title", ImVec2(width, height));
  ImGui::RenderNavHighlight(ImRect(low, ImVec2(low.x + width, low.y + height)), ImGui::GetItemID());
  ImGui::PopID();
  ImDrawList* paint = ImGui::GetWindowDrawList();
  if (ImGui::IsItemHovered())
    paint->AddRectFilled(low, ImVec2(low.x + width, low.y + height), ui.theme.field, ui.px(4));
  const float y = low.y + (height - ImGui::GetFontSize()) / 2;
  const std::string number = std::to_string(index + 1);
  paint->AddText(ui.letters.heading, ImGui::GetFontSize(), ImVec2(low.x + ui.px(4), y),
                 open ? ui.theme.accent : ui.theme.quiet, number.c_str());
  paint->AddText(ui.letters.heading, ImGui::GetFontSize(), ImVec2(low.x + ui.px(24), y), ui.theme.text,
                 std::string(group.title).c_str());
  paint->AddLine(ImVec2(low.x, low.y + height), ImVec2(low.x + width, low.y + height),
                 open ? ui.theme.accent : ui.theme.line);
  ui.note(std::string(group.title), open ? "open" : "closed");
  if (pressed) view.decision = open ? -1 : index;
  return view.decision == index;
}

}  // namespace

Requests draw_decisions(const DecisionState& state, ImVec2 low, ImVec2 size) {
  Requests asked;
  if (state.ui.begin_panel("Decisions", low, size)) {
    Drawing d{state, state.document.board(), Edit::none, ""};
    const auto groups = decision_groups();
    for (int i = 0; i < static_cast<int>(groups.size()); ++i) {
      if (!draw_group_title(state.ui, state.view, i, groups[static_cast<std::size_t>(i)])) continue;
      ImGui::PushID(i);
      ImGui::Dummy(ImVec2(0, state.ui.px(1)));
      for (const DecisionBlock& block : groups[static_cast<std::size_t>(i)].blocks) draw_block(d, block);
      ImGui::Dummy(ImVec2(0, state.ui.px(6)));
      ImGui::PopID();
    }
    state.document.take(d.edit == Edit::done ? tidy(std::move(d.draft)) : std::move(d.draft), d.edit, d.what);
    asked = std::move(d.asked);
  }
  state.ui.end_panel();
  return asked;
}

namespace {

/// The row of a key in its open group; "" for a key without one.
std::string opened(View& view, FieldRows& rows, const std::string& key) {
  const std::string shown = key_to_show(key);
  if (shown.empty()) return "";
  view.decision = group_of_key(shown);
  view.narrow_shows_checks = false;
  rows.take_in_hand(shown);
  return "Decisions/" + shown;
}

}  // namespace

void lead_to_key(Ui& ui, View& view, FieldRows& rows, const std::string& key) {
  if (const std::string row = opened(view, rows, key); !row.empty()) ui.lead_to(row);
}

void show_key(Ui& ui, View& view, FieldRows& rows, const std::string& key) {
  if (const std::string row = opened(view, rows, key); !row.empty()) ui.focus_on(row);
}

void reveal_key(Ui& ui, View& view, FieldRows& rows, const std::string& key) {
  if (const std::string row = opened(view, rows, key); !row.empty()) ui.reveal(row);
}

}  // namespace sagitta::viewer
