#include "dialogs/RescuePage.hpp"

#include <algorithm>

#include "decisions/Decisions.hpp"
#include "decisions/Differences.hpp"
#include "widgets/Block.hpp"
#include "widgets/Buttons.hpp"

namespace sagitta::viewer {

namespace {

/// "other-scale" -> "Other scale".
std::string title_of(const Way& way) {
  std::string words = way.name;
  std::replace(words.begin(), words.end(), '-', ' ');
  return capital(words);
}

std::string looks_of(const Way& way) {
  const auto looks = std::count_if(way.findings.begin(), way.findings.end(),
                                   [](const Finding& each) { return each.severity == Severity::look; });
  return looks == 0   ? "Nothing is left to look at."
         : looks == 1 ? "One of its findings says look."
                      : std::to_string(looks) + " of its findings say look.";
}

void draw_way_out(Ui& ui, Document& document, const Way& way, std::size_t number, const Manner& manner) {
  const Board after = edited(document.board(), way.edits);
  ui.heading(std::to_string(number) + "  " + title_of(way));
  ui.note("way " + std::to_string(number), way.name);
  ImGui::PushTextWrapPos(0);
  ImGui::TextUnformatted((capital(with_labels(way.message)) + ".").c_str());
  ImGui::PopTextWrapPos();
  ui.quiet("It costs: " + with_labels(way.cost) + ".");
  for (const Difference& each : differences(document.board(), after, manner)) {
    const std::string here = each.here.empty() ? "not given" : each.here,
                      there = each.there.empty() ? "not given" : each.there;
    ui.quiet(label_of_key(each.key) + ": " + here + " \u2192 " + there);
    ui.note("way " + std::to_string(number) + " " + each.key, there);
  }
  ui.quiet(looks_of(way));
  const std::string label = "Take way " + std::to_string(number);
  if (number == 1 ? ui.primary(label) : ui.button(label)) document.change(after, "Way out: " + title_of(way));
  ImGui::Dummy(ImVec2(0, ui.px(6)));
}

void draw_ways(Ui& ui, Document& document, const std::shared_ptr<const FoundWays>& found, const Manner& manner) {
  if (!found || !(found->board == document.board()))
    return ui.quiet("Looking for ways that still make a good board\u2026");
  if (!found->trouble.empty()) return ui.warning(found->trouble);
  ui.quiet(
      found->ways.empty()
          ? "Nothing that was measured asks for a way out, or none was found. What was measured is typed in under "
            "Neck, Measured, and on the page of measured slots."
          : "The best way stands first: the least work, then the fewest findings. Each was tried: its board has no "
            "finding that says stop. Undo takes it back.");
  ImGui::Dummy(ImVec2(0, ui.px(2)));
  const std::vector<Way> ways = found->ways;
  for (std::size_t i = 0; i < ways.size() && found->board == document.board(); ++i)
    draw_way_out(ui, document, ways[i], i + 1, manner);
}

}  // namespace

Requests draw_rescue(Ui& ui, Document& document, const std::shared_ptr<const FoundWays>& found, const Manner& manner) {
  ImGui::BeginChild("ways", ImVec2(0, -ImGui::GetFrameHeightWithSpacing() - ui.px(10)));
  draw_ways(ui, document, found, manner);
  ImGui::EndChild();
  Requests asked{asked::FindWays{document.board()}};
  dialog_foot(ui, button_width(ui, "Done"));
  if (ui.button("Done")) asked.push_back(asked::Show{Dialog::none});
  return asked;
}

}  // namespace sagitta::viewer
