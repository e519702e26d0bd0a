#include "overlay/NextCut.hpp"

#include <imgui_internal.h>

#include "decisions/Decisions.hpp"
#include "rules/Work.hpp"
#include "widgets/Block.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

constexpr const char* cut_label = "It is cut";
constexpr const char* ways_label = "Ways out";

const char* word_of(Release::Answer answer) {
  return answer == Release::Answer::as_planned ? "Released"
         : answer == Release::Answer::changed  ? "Released, numbers changed"
                                               : "Stopped";
}

/// The numbers that changed, or why the cut must not be made.
std::string more_of(const Release& release, const Manner& manner) {
  if (release.answer == Release::Answer::refused) return capital(with_labels(release.reason)) + ".";
  std::string text;
  const auto words = [&](const std::optional<double>& value) { return value ? shown(*value, manner) : "none"; };
  for (const ChangedNumber& change : release.changes)
    text +=
        (text.empty() ? "" : "; ") + change.what + " " + words(change.measured) + ", planned " + words(change.planned);
  return text.empty() ? "as planned" : text;
}

/// A dot before the word: filled in the accent colour for a stop, a ring for changed numbers, quiet where all is well.
void draw_sign(const Ui& ui, Release::Answer answer) {
  const float radius = ui.px(4.5f);
  const ImVec2 low = ImGui::GetCursorScreenPos(), middle = low + ImVec2(radius, ImGui::GetFrameHeight() / 2);
  ImDrawList* paint = ImGui::GetWindowDrawList();
  if (answer == Release::Answer::refused)
    paint->AddRectFilled(middle - ImVec2(radius, radius), middle + ImVec2(radius, radius), ui.theme.accent);
  else if (answer == Release::Answer::changed)
    paint->AddCircle(middle, radius, ui.theme.accent, 0, ui.px(2));
  else
    paint->AddCircleFilled(middle, radius, ui.theme.quiet);
  ImGui::Dummy(ImVec2(2 * radius, ImGui::GetFrameHeight()));
  ImGui::SameLine(0, ui.px(6));
}

void say_cut(Document& document, Operation operation) {
  Board draft = document.board();
  draft.measured.done.push_back(operation);
  document.change(std::move(draft), "Cut: " + std::string(operation_name(operation)));
}

}  // namespace

float next_cut_height(const Ui& ui) { return ui.px(15.5f + 10 + 6); }

Requests draw_next_cut(Ui& ui, Document& document, const Results& results, const Manner& manner) {
  Requests asked;
  const Model* model = results.model.get();
  const bool judged = model && model->settled && model->board == document.board();
  ImGui::AlignTextToFramePadding();
  if (!judged || !model->release) {
    ui.quiet(!judged ? "Next cut: looking at the board\u2026" : "All is cut.");
    ui.note("next cut", judged ? "all is cut" : "");
    return asked;
  }
  const Release& release = *model->release;
  const bool stopped = release.answer == Release::Answer::refused;
  const bool ways =
      release.answer != Release::Answer::as_planned && !(document.board().measured == sagitta::Measured());
  const float line = ImGui::GetCursorPosX() + ImGui::GetContentRegionAvail().x;
  draw_sign(ui, release.answer);
  ImGui::AlignTextToFramePadding();
  ImGui::PushFont(ui.letters.heading);
  ImGui::TextUnformatted(
      ("Next cut, " + std::string(operation_name(release.operation)) + ": " + word_of(release.answer)).c_str());
  ImGui::PopFont();
  ui.note("next cut", word_of(release.answer));
  ImGui::SameLine(0, ui.px(8));
  const float buttons =
      (ways ? button_width(ui, ways_label) + ui.px(8) : 0) + (stopped ? 0 : button_width(ui, cut_label) + ui.px(8));
  const std::string more = more_of(release, manner);
  const std::string kept = fitted(more, std::max(line - buttons - ImGui::GetCursorPosX(), ui.px(20)));
  ImGui::PushStyleColor(ImGuiCol_Text, ui.theme.quiet);
  ImGui::TextUnformatted(kept.c_str());
  ImGui::PopStyleColor();
  ui.note("next cut says", more);
  if (kept != more) ui.help(more);
  float from = line - buttons + ui.px(8);
  if (ways) {
    ImGui::SameLine(from);
    if (ui.button(ways_label)) asked.push_back(asked::Show{Dialog::rescue});
    from += button_width(ui, ways_label) + ui.px(8);
  }
  if (stopped) return asked;
  ImGui::SameLine(from);
  if (ui.button(cut_label)) say_cut(document, release.operation);
  return asked;
}

}  // namespace sagitta::viewer
