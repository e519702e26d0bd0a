#include "dialogs/FretPage.hpp"

#include <algorithm>
#include <utility>

#include "board/Fields.hpp"
#include "board/SlotCut.hpp"
#include "frets/LineList.hpp"
#include "frets/SlotCheck.hpp"
#include "frets/WireList.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

using Cells = std::vector<std::string>;

constexpr ImGuiTableFlags table_look = ImGuiTableFlags_BordersInnerH | ImGuiTableFlags_ScrollY |
                                       ImGuiTableFlags_SizingStretchSame | ImGuiTableFlags_NoSavedSettings;

void cell_right(const std::string& text) {
  if (text.empty()) return ImGui::TextUnformatted(" ");
  const float room = ImGui::GetContentRegionAvail().x, wide = ImGui::CalcTextSize(text.c_str()).x;
  ImGui::SetCursorPosX(ImGui::GetCursorPosX() + std::max(room - wide, 0.0f));
  ImGui::TextUnformatted(text.c_str());
}

/// The frets that have a slot, each once.
std::vector<int> slotted_frets(const Layout& layout) {
  std::vector<int> frets;
  for (const Slot& slot : layout.slots)
    if (slot.part == 0) frets.push_back(slot.fret);
  return frets;
}

/// x of a slot's middle on the centre line.
double place_of(const Layout& layout, int fret) { return layout.frets[static_cast<std::size_t>(fret)].middle.x; }

bool begin_table(Ui& ui, const char* name, const Cells& heads, float foot) {
  if (!ImGui::BeginTable(name, static_cast<int>(heads.size()), table_look, ImVec2(0, -foot))) return false;
  ImGui::TableSetupScrollFreeze(0, 1);
  ImGui::TableNextRow();
  for (const std::string& head : heads) {
    ImGui::TableNextColumn();
    ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
    cell_right(head);
    ImGui::PopStyleColor();
  }
  return true;
}

void draw_cells(Ui& ui, int fret, const char* table, const Cells& cells) {
  std::string all;
  ImGui::TableNextRow();
  for (const std::string& text : cells) {
    ImGui::TableNextColumn();
    cell_right(text);
    all += (all.empty() ? "" : "|") + text;
  }
  ui.note(std::string(table) + " " + std::to_string(fret), all);
}

void draw_places(Ui& ui, const Manner& m, const Layout& layout, float foot) {
  if (!begin_table(ui, "places", {"Slot of fret", "From the nut", "To the next", "Cents for 0.1 mm"}, foot)) return;
  const std::vector<int> frets = slotted_frets(layout);
  for (std::size_t i = 0; i < frets.size(); ++i) {
    const int fret = frets[i];
    const double place = place_of(layout, fret);
    draw_cells(ui, fret, "place",
               {std::to_string(fret), shown_in_column(place, m),
                i + 1 < frets.size() ? shown_in_column(place_of(layout, frets[i + 1]) - place, m) : "",
                fixed_number(cents_per_tenth(layout, fret), 2)});
  }
  ImGui::EndTable();
}

void draw_wire(Ui& ui, const Manner& m, const std::vector<WirePiece>& list, float foot) {
  const bool nips =
      std::any_of(list.begin(), list.end(), [](const WirePiece& p) { return p.nip_bass + p.nip_treble > 0; });
  Cells heads{"Fret", "Cut to", "Bend to radius"};
  if (nips) heads.insert(heads.end(), {"Nip tang, bass", "Nip tang, treble"});
  if (!begin_table(ui, "wire", heads, foot)) return;
  for (const WirePiece& p : list) {
    Cells cells{std::to_string(p.fret), shown_in_column(p.cut, m, 1),
                p.bend_radius ? shown_in_column(*p.bend_radius, m, 0) : "straight"};
    if (nips)
      for (const double nip : {p.nip_bass, p.nip_treble}) cells.push_back(nip > 0 ? shown_in_column(nip, m, 1) : "");
    draw_cells(ui, p.fret, "wire", cells);
  }
  ImGui::EndTable();
}

void draw_lines(Ui& ui, const Manner& m, const std::vector<LinePiece>& list, float foot) {
  if (!begin_table(ui, "lines", {"Line", "Material", "Cut to", "Thickness", "Height at least"}, foot)) return;
  for (const LinePiece& p : list)
    draw_cells(ui, p.fret, "line",
               {std::to_string(p.fret), p.material, shown_in_column(p.length, m, 1), shown_in_column(p.thickness, m),
                shown_in_column(p.height, m)});
  ImGui::EndTable();
}

void keep_measured(Document& document, std::size_t i, const std::optional<double>& value) {
  Board draft = document.board();
  if (!value)
    draft.measured.slots.resize(std::min(i, draft.measured.slots.size()));
  else if (i < draft.measured.slots.size())
    draft.measured.slots[i] = *value;
  else
    draft.measured.slots.push_back(*value);
  document.change(std::move(draft), "Measured slot");
}

/// Takes what is typed into the field of slot i; goes on to the next one when it could be taken.
void take_measured(Document& document, Measuring& m, const Manner& manner, std::size_t i) {
  m.why.clear();
  const std::string text = std::exchange(m.text, "");
  m.row.reset();
  if (text == m.initial) return;
  if (text.empty()) return keep_measured(document, i, std::nullopt);
  const Field& field = *find_field("measured.slots");
  const auto value = typed_value(field, text, manner);
  const auto* list =
      std::holds_alternative<Value>(value) ? std::get_if<std::vector<double>>(&std::get<Value>(value)) : nullptr;
  if (!list || list->size() != 1) {
    m.why = std::holds_alternative<std::string>(value) ? std::get<std::string>(value) : "One length is needed.";
  } else if (const std::string no = refusal(field, std::get<Value>(value), manner); !no.empty()) {
    m.why = no;
  } else {
    keep_measured(document, i, list->front());
    m.next = i + 1;
    return;
  }
  m.refused = i;
}

void draw_measured_field(Ui& ui, Document& document, Measuring& m, const Manner& manner, std::size_t i, int fret,
                         bool open) {
  const auto& all = document.board().measured.slots;
  const std::string face = i < all.size() ? shown_bare(all[i], manner) : "";
  const std::string name = "measured " + std::to_string(fret);
  ImGui::PushID(static_cast<int>(i));
  ImGui::SetNextItemWidth(-1);
  ImGui::BeginDisabled(!open);
  std::string text = m.row == i ? m.text : face;
  if (m.next == i && open) ImGui::SetKeyboardFocusHere(), m.next.reset();
  ui.text_field(name, text, open && text.empty() ? "type it" : "", ImGuiInputTextFlags_AutoSelectAll);
  if (ImGui::IsItemActivated()) m.row = i, m.initial = face;
  if (m.row == i) m.text = text;
  if (ImGui::IsItemDeactivated() && m.row == i) take_measured(document, m, manner, i);
  ImGui::EndDisabled();
  ImGui::PopID();
}

void draw_measured(Ui& ui, Document& document, Measuring& measuring, const Manner& m, const Layout& layout,
                   const std::vector<SlotError>& errors, float foot) {
  if (!begin_table(ui, "measured", {"Slot of fret", "Meant", "Measured", "Off by", "In pitch"}, foot)) return;
  const std::vector<int> frets = slotted_frets(layout);
  for (std::size_t i = 0; i < frets.size(); ++i) {
    const int fret = frets[i];
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::AlignTextToFramePadding();
    cell_right(std::to_string(fret));
    ImGui::TableNextColumn();
    cell_right(shown_in_column(place_of(layout, fret), m));
    ImGui::TableNextColumn();
    draw_measured_field(ui, document, measuring, m, i, fret, i <= document.board().measured.slots.size());
    std::string off, pitch;
    if (i < errors.size()) {
      off = shown_in_column(errors[i].off, m);
      pitch = fixed_number(std::abs(errors[i].cents), 2) + (errors[i].cents < 0 ? " cents flat" : " cents sharp");
    }
    ImGui::TableNextColumn();
    cell_right(off);
    ImGui::TableNextColumn();
    cell_right(pitch);
    ui.note("off " + std::to_string(fret), off + "|" + pitch);
  }
  ImGui::EndTable();
}

std::string strip_summary(const std::vector<LinePiece>& list, const Manner& m) {
  if (list.empty()) return "Nothing is cut at the frets' places.";
  return std::to_string(list.size()) + " lines, " + shown(total_line(list), m, 0) + " of strip.";
}

std::string summary(const Measuring& measuring, const Board& board, const Manner& m, const std::vector<WirePiece>& list,
                    const std::vector<SlotError>& errors) {
  if (measuring.page == FretPage::places)
    return "A place is the slot's middle, from the nut's face along the centre line. A slot that is 0.1 mm off is out "
           "of tune by the cents in the last column.";
  if (measuring.page == FretPage::wire)
    return std::to_string(list.size()) + " frets, " + shown(total_wire(list), m, 0) + " of wire: along the arc, with " +
           shown(board.wire.overhang, m) + " over each edge.";
  if (!measuring.why.empty()) return measuring.why;
  constexpr std::size_t enough = 3;
  constexpr double run = 100;
  if (errors.size() < enough)
    return "Measure each slot's middle from the nut's face, the nearest first. Enter goes to the next.";
  return "The error changes by " + shown(run * slot_drift(errors).per_mm, m) + " over each " + shown(run, m, 1) +
         ". An error that grows steadily is the machine's scale along the board.";
}

}  // namespace

Requests draw_fret_page(Ui& ui, Document& document, Measuring& measuring, const Results& results,
                        const Manner& manner) {
  const char* const titles[] = {"Places", "Wire", "Measured slots"};
  for (int i = 0; i < 3; ++i) {
    bool on = static_cast<int>(measuring.page) == i;
    if (i > 0) ImGui::SameLine();
    if (ui.toggle(titles[i], on)) measuring.page = static_cast<FretPage>(i);
  }
  if (!results.laid_out()) return ui.quiet("The board cannot be laid out as it stands."), Requests();
  const Layout& layout = results.good->prepared->layout();
  const std::vector<WirePiece> list = wire_list(*results.good->prepared);
  const std::vector<SlotError> errors = slot_errors(document.board().measured.slots, layout);
  const bool wired = slot_cut(results.good->board) == SlotCut::all;
  const std::vector<LinePiece> strips = line_list(*results.good->prepared);
  const std::string words = measuring.page == FretPage::wire && !wired
                                ? strip_summary(strips, manner)
                                : summary(measuring, results.good->board, manner, list, errors);
  const float room = ImGui::GetContentRegionAvail().x;
  const float foot = ImGui::CalcTextSize(wrapped(words, room).c_str()).y + ImGui::GetFrameHeight() + ui.px(22);
  if (measuring.page == FretPage::places) draw_places(ui, manner, layout, foot);
  if (measuring.page == FretPage::wire && wired) draw_wire(ui, manner, list, foot);
  if (measuring.page == FretPage::wire && !wired) draw_lines(ui, manner, strips, foot);
  if (measuring.page == FretPage::measured) draw_measured(ui, document, measuring, manner, layout, errors, foot);
  if (measuring.why.empty())
    ui.quiet(words);
  else
    ui.warning(words);
  ui.note("summary", words);
  dialog_foot(ui, button_width(ui, "Done"));
  if (ui.primary("Done")) return {asked::Show{Dialog::none}};
  return {};
}

}  // namespace sagitta::viewer
