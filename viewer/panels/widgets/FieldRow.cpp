#include "widgets/FieldRow.hpp"

#include <imgui_internal.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>

#include "board/Practice.hpp"

namespace sagitta::viewer {

namespace {

constexpr float label_share = 0.46f;
constexpr float label_gap = 6;
constexpr float drag_threshold = 3;

std::optional<double> number_of(const Value& value) {
  if (const auto* d = std::get_if<double>(&value)) return *d;
  if (const auto* i = std::get_if<int>(&value)) return *i;
  return std::nullopt;
}

bool takes_drag(const Field& field) {
  return field.kind == Kind::length || field.kind == Kind::number || field.kind == Kind::angle ||
         field.kind == Kind::integer || field.kind == Kind::speed || field.kind == Kind::pair ||
         field.kind == Kind::depth;
}

/// What builders usually take, and why.
std::string practice_words(const Field& field, const Practice& practice, const Manner& manner) {
  const auto word = [&](double value) {
    return shown_value(field, field.kind == Kind::integer ? Value(static_cast<int>(value)) : Value(value), manner);
  };
  const std::string range =
      practice.least == practice.most ? "" : "Usual: " + word(practice.least) + " to " + word(practice.most) + ". ";
  return range + std::string(practice.reason);
}

bool required(const Field& field) {
  return field.need == Need::yes || field.need == Need::form || !field.use.needed.empty();
}

/// Words on a slip of paper below the last widget, over the rows there: nothing moves while a hand types or drags.
void say_below(Ui& ui, const std::string& words, ImU32 ink) {
  const ImVec2 item = ImGui::GetItemRectMin(), end = ImGui::GetItemRectMax(), pad(ui.px(8), ui.px(4));
  const std::string text = wrapped(words, std::max(end.x - item.x, ui.px(180)) - 2 * pad.x);
  const ImVec2 size = ImGui::CalcTextSize(text.c_str()) + pad * 2;
  ImVec2 low(std::max(end.x - size.x, ui.px(2)), end.y + ui.px(2));
  if (low.y + size.y > ImGui::GetIO().DisplaySize.y) low.y = item.y - size.y - ui.px(2);
  ImDrawList* paint = ImGui::GetForegroundDrawList();
  paint->AddRectFilled(low, low + size, ui.theme.paper, ui.px(4));
  paint->AddRect(low, low + size, ui.theme.rim, ui.px(4));
  paint->AddText(low + pad, ink, text.c_str());
  ui.note_area("typed", low, low + size, words);
}

}  // namespace

DragStep drag_step(const Field& field, double value, const Manner& manner) {
  if (field.kind == Kind::integer) return {0.125, 1};
  if (field.kind == Kind::angle) return {0.25, 0.5};
  const double size = std::abs(value);
  if (!field.is_length()) return {std::max(size, 1.0) / 200, size < 10 ? 0.01 : 1};
  if (manner.units == Units::inch && manner.fractions) return {size < 100 ? 0.1 : 0.4, mm_per_inch / 64};
  const double unit = mm_per(manner.units);
  const double inch = manner.units == Units::inch ? 0.1 : 1;
  if (size < 10) return {0.01, 0.01 * unit * inch};
  if (size < 100) return {0.05, 0.05 * unit * inch};
  if (size < 1000) return {0.5, 0.5 * unit * inch};
  return {size / 400, 5 * unit * inch};
}

float row_label(Ui& ui, const std::string& words, const std::string& help) {
  const float room = ImGui::GetContentRegionAvail().x, start = ImGui::GetCursorPosX();
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(wrapped(words, room * label_share).c_str());
  ui.help(help);
  ImGui::SameLine();
  ImGui::SetCursorPosX(start + room * label_share + ui.px(label_gap));
  return room * (1 - label_share) - ui.px(label_gap);
}

std::string FieldRows::help_of(const Field& field) const {
  const auto in_window = [&](std::string words) { return in_words ? in_words(std::move(words)) : words; };
  std::string text(field.help);
  if (!text.empty()) text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  text += ".";
  if (const Practice* practice = practice_of(field.dotted()))
    text += "\n" + practice_words(field, *practice, manner);
  else if (takes_drag(field) && field.range.least != field.range.most)
    text += "\nAllowed: " + shown_range(field, manner) + ".";
  if (field.is_length())
    text += "\nUnit: " + std::string(unit_name(manner.units)) +
            "; others may be typed (\u201c25 1/2 in\u201d, \u201c648/2\u201d).";
  else if (field.kind == Kind::angle)
    text += "\nUnit: degrees.";
  else if (!field.unit.empty())
    text += "\nUnit: " + std::string(field.unit) + ".";
  if (!field.fallback.empty()) text += "\nWhere none is given: " + in_window(std::string(field.fallback)) + ".";
  return text;
}

void FieldRows::forget() {
  typing_.clear(), text_.clear(), refused_text_.clear(), refused_why_.clear();
  dragging_.clear();
}

Edit FieldRows::draw(Ui& ui, const Field& field, const std::string& key, const std::string& words, const Row& row,
                     std::optional<double> usual) {
  ImGui::PushID(key.c_str());
  const float room = row_label(ui, words, help_of(field));
  const bool given = !std::holds_alternative<std::monostate>(field.access.get(reading(row)));
  const bool clearable =
      given && !required(field) && std::holds_alternative<std::monostate>(default_value(field)) && takes_drag(field);
  const float clear_width = clearable ? ImGui::GetFrameHeight() : 0;
  const Cell cell{ui, field, key, row, usual, room - (clearable ? clear_width + ui.px(2) : 0)};
  Edit edit = Edit::none;
  if (field.kind == Kind::choice)
    edit = choice(cell);
  else if (field.kind == Kind::yes_no)
    edit = yes_no(cell);
  else
    edit = text_cell(cell);
  if (clearable && edit == Edit::none) {
    ImGui::SameLine(0, ui.px(2));
    if (ImGui::Button("\u00d7", ImVec2(clear_width, 0))) field.access.set(row, Value()), edit = Edit::done;
    ui.note(key + " clear");
    ui.help("Back to the usual value.");
  }
  if (const auto why = refused_why_.find(key); why != refused_why_.end()) {
    if (dragging_ == key)
      say_below(ui, why->second, ui.theme.accent);
    else
      ui.warning(why->second);
  }
  if (edit != Edit::none) in_hand_ = taken_ = key;
  ImGui::PopID();
  return edit;
}

Edit FieldRows::text_cell(const Cell& cell) {
  if (to_next_ || back_to_ == cell.key) {
    to_next_ = false;
    back_to_.clear();
    begin_typing(cell);
  }
  const Edit edit = typing_ == cell.key ? typed(cell) : number(cell);
  previous_ = cell.key;
  return edit;
}

std::string FieldRows::face(const Cell& cell) const {
  if (const auto text = refused_text_.find(cell.key); text != refused_text_.end()) return text->second;
  const std::string now = shown_value(cell.field, cell.field.access.get(reading(cell.row)), manner);
  if (!now.empty()) return now;
  if (cell.usual) return shown_value(cell.field, Value(*cell.usual), manner);
  return "";
}

bool FieldRows::paint_number(const Cell& cell, const std::string& text, const ImVec2& low, const ImVec2& size,
                             bool lit) const {
  Ui& ui = cell.ui;
  const ImRect box(low, ImVec2(low.x + size.x, low.y + size.y));
  const bool given = !std::holds_alternative<std::monostate>(cell.field.access.get(reading(cell.row)));
  const bool refused = refused_text_.count(cell.key) > 0;
  ImGui::RenderNavHighlight(box, ImGui::GetItemID());
  ImGui::RenderFrame(box.Min, box.Max, ImGui::GetColorU32(lit ? ImGuiCol_FrameBgHovered : ImGuiCol_FrameBg), false,
                     ui.px(4));
  ImGui::GetWindowDrawList()->AddRect(box.Min, box.Max, ui.theme.rim, ui.px(4));
  // The keyboard's own frame is enough where it is drawn.
  const bool framed = ImGui::GetItemID() == GImGui->NavId && !GImGui->NavDisableHighlight;
  if (refused || (!framed && ui.led_to() == ui.panel() + "/" + cell.key))
    ImGui::GetWindowDrawList()->AddRect(box.Min, box.Max, ui.theme.accent, ui.px(4), 0, ui.px(1.5f));
  const ImVec2 pad = ImGui::GetStyle().FramePadding;
  const std::string shown_text = fitted(text.empty() ? "not given" : text, size.x - 2 * pad.x);
  const ImU32 ink = refused ? ui.theme.accent : given ? ui.theme.text : ui.theme.quiet;
  ImGui::GetWindowDrawList()->AddText(ImVec2(low.x + pad.x, low.y + pad.y), ink, shown_text.c_str());
  return !text.empty() && shown_text != text;
}

std::optional<float> FieldRows::dragged(const Cell& cell, bool active) {
  if (!takes_drag(cell.field) || (!active && dragging_ != cell.key)) return std::nullopt;
  const float moved = ImGui::GetIO().MousePos.x - drag_x_;
  if (!moved_ && active && ImGui::GetIO().MouseDown[0] && std::abs(moved) > drag_threshold) {
    moved_ = true;
    dragging_ = cell.key;
    drag_start_ =
        number_of(cell.field.access.get(reading(cell.row))).value_or(cell.usual.value_or(cell.field.range.least));
  }
  return moved_ ? std::optional(moved) : std::nullopt;
}

Edit FieldRows::number(const Cell& cell) {
  Ui& ui = cell.ui;
  const std::string text = face(cell);
  const bool lead = ui.arrives(cell.key);
  const ImVec2 size(std::max(cell.width, 8.0f), ImGui::GetFrameHeight());
  const ImVec2 low = ImGui::GetCursorScreenPos();
  const bool clicked = ImGui::InvisibleButton("value", size);
  const bool hovered = ImGui::IsItemHovered(), active = ImGui::IsItemActive(), focused = ImGui::IsItemFocused();
  const bool cut_short = paint_number(cell, text, low, size, hovered || active);
  ui.note(cell.key, text);
  ui.help((cut_short ? text + "\n" : "") + help_of(cell.field));
  if (hovered && takes_drag(cell.field)) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeEW);
  if (hovered || focused) in_hand_ = hovered || in_hand_.empty() ? cell.key : in_hand_;
  if (ImGui::IsItemActivated()) drag_x_ = ImGui::GetIO().MousePos.x, moved_ = false, ui.forget_led();
  if (const auto moved = dragged(cell, active)) return drag(cell, *moved);
  if (clicked || lead) begin_typing(cell);
  return Edit::none;
}

Edit FieldRows::drag(const Cell& cell, float moved) {
  if (!ImGui::GetIO().MouseDown[0]) {
    dragging_.clear();
    moved_ = false;
    return Edit::done;
  }
  if (ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false)) {
    dragging_.clear();
    moved_ = false;
    ImGui::ClearActiveID();
    return Edit::given_up;
  }
  const DragStep step = drag_step(cell.field, drag_start_, manner);
  const double fine = ImGui::GetIO().KeyShift ? 0.1 : 1;
  const double wanted =
      std::round((drag_start_ + static_cast<double>(moved / cell.ui.scale) * step.pixel * fine) / step.grid) *
      step.grid;
  const double kept = std::clamp(wanted, cell.field.range.least, cell.field.range.most);
  refused_text_.erase(cell.key);
  if (kept != wanted)
    refused_why_[cell.key] = "Stops here: " + shown_range(cell.field, manner) + ".";
  else
    refused_why_.erase(cell.key);
  const Value value = cell.field.kind == Kind::integer ? Value(static_cast<int>(std::lround(kept))) : Value(kept);
  if (value == cell.field.access.get(reading(cell.row))) return Edit::none;
  cell.field.access.set(cell.row, value);
  return Edit::moving;
}

void FieldRows::begin_typing(const Cell& cell) {
  typing_ = cell.key;
  text_ = initial_ = face(cell);
  fresh_ = true;
  in_hand_ = taken_ = cell.key;
}

Edit FieldRows::typed(const Cell& cell) {
  if (fresh_) ImGui::SetKeyboardFocusHere();
  ImGui::SetNextItemWidth(cell.width);
  const RimmedFields rim(cell.ui.theme);
  ImGui::InputText("##typed", &text_, ImGuiInputTextFlags_AutoSelectAll);
  cell.ui.note(cell.key, text_);
  const bool ended = !fresh_ && (ImGui::IsItemDeactivated() || !ImGui::IsItemActive());
  if (fresh_ && ImGui::IsItemActive()) fresh_ = false;
  if (ended) return take(cell);
  if (!fresh_ && ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Tab), false)) {
    ImGui::ClearActiveID();
    if (ImGui::GetIO().KeyShift)
      back_to_ = previous_;
    else
      to_next_ = true;
    return take(cell);
  }
  in_hand_ = cell.key;
  if (text_ == initial_ || !takes_drag(cell.field)) return Edit::none;
  const Theme& theme = cell.ui.theme;
  const auto value = typed_value(cell.field, text_, manner);
  if (const auto* why = std::get_if<std::string>(&value))
    say_below(cell.ui, *why, theme.quiet);
  else if (const std::string no = refusal(cell.field, std::get<Value>(value), manner); !no.empty())
    say_below(cell.ui, no, theme.accent);
  else
    say_below(cell.ui, "= " + shown_value(cell.field, std::get<Value>(value), manner), theme.quiet);
  return Edit::none;
}

Edit FieldRows::take(const Cell& cell) {
  typing_.clear();
  const bool as_before = text_ == initial_;
  if (as_before) return Edit::none;
  refused_text_.erase(cell.key), refused_why_.erase(cell.key);
  const auto value = typed_value(cell.field, text_, manner);
  std::string why;
  if (const auto* words = std::get_if<std::string>(&value))
    why = *words;
  else
    why = refusal(cell.field, std::get<Value>(value), manner);
  if (!why.empty()) {
    refused_text_[cell.key] = text_, refused_why_[cell.key] = why;
    return Edit::none;
  }
  if (std::get<Value>(value) == cell.field.access.get(reading(cell.row))) return Edit::none;
  cell.field.access.set(cell.row, std::get<Value>(value));
  return Edit::done;
}

Edit FieldRows::choice(const Cell& cell) {
  std::vector<std::string> options;
  for (const Choice& c : cell.field.choices) options.emplace_back(c.name);
  const Value now = cell.field.access.get(reading(cell.row));
  int chosen = std::holds_alternative<int>(now) ? std::get<int>(now) : -1;
  ImGui::SetNextItemWidth(cell.width);
  const bool changed = cell.ui.choice(cell.key, options, chosen);
  cell.ui.help(help_of(cell.field));
  if (ImGui::IsItemHovered()) in_hand_ = cell.key;
  if (!changed) return Edit::none;
  cell.field.access.set(cell.row, Value(chosen));
  return Edit::done;
}

Edit FieldRows::yes_no(const Cell& cell) {
  const Value now = cell.field.access.get(reading(cell.row));
  bool value = std::holds_alternative<bool>(now) && std::get<bool>(now);
  if (cell.ui.arrives(cell.key)) ImGui::SetKeyboardFocusHere();
  const bool changed = cell.ui.checkbox("##tick", value);
  cell.ui.note(cell.key, value ? "yes" : "no");
  cell.ui.help(help_of(cell.field));
  if (ImGui::IsItemHovered()) in_hand_ = cell.key;
  if (!changed) return Edit::none;
  cell.field.access.set(cell.row, Value(value));
  return Edit::done;
}

}  // namespace sagitta::viewer
