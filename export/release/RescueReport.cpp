#include "release/RescueReport.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <type_traits>

#include "board/Fields.hpp"
#include "board/Writer.hpp"
#include "input/BoardFindings.hpp"
#include "package/Report.hpp"
#include "rescue/Ways.hpp"
#include "text/TerminalText.hpp"

namespace sagitta {
namespace {

using Json = nlohmann::ordered_json;

Json value_json(const Edit& edit) {
  const Field* field = find_field(edit.key);
  const auto word = [&](int index) { return field->choices[static_cast<std::size_t>(index)].name; };
  if (const int* index = std::get_if<int>(&edit.value); index && field->kind == Kind::choice) return word(*index);
  if (const auto* list = std::get_if<std::vector<int>>(&edit.value); list && field->kind == Kind::choices) {
    Json words = Json::array();
    for (const int index : *list) words.push_back(word(index));
    return words;
  }
  return std::visit(
      [](const auto& value) -> Json {
        if constexpr (std::is_same_v<std::decay_t<decltype(value)>, std::monostate>)
          return nullptr;
        else
          return value;
      },
      edit.value);
}

std::string_view effort_word(WayEffort effort) {
  switch (effort) {
    case WayEffort::numbers:
      return "numbers";
    case WayEffort::pieces:
      return "pieces";
    case WayEffort::cut_again:
      return "cut-again";
    case WayEffort::design:
      break;
  }
  return "design";
}

Json way_json(const Way& way) {
  Json edits = Json::array(), figures = Json::array();
  for (const Edit& edit : way.edits) edits.push_back({{"key", edit.key}, {"value", value_json(edit)}});
  for (const WayFigure& figure : way.figures)
    figures.push_back({{"what", figure.what}, {"value", figure.value}, {"unit", figure.unit}});
  return {{"name", way.name},
          {"message", way.message},
          {"cost", way.cost},
          {"effort", effort_word(way.effort)},
          {"edits", edits},
          {"figures", figures},
          {"findings", findings_json(way.findings)}};
}

/// The findings of check, with the neck's file read.
Judged judged_with_neck(const Board& board, Outside outside) {
  const auto prepared = prepare(board, outside);
  if (const auto* faults = std::get_if<Faults>(&prepared)) return *faults;
  const PreparedBoard& ready = std::get<PreparedBoard>(prepared);
  if (Faults faults = ready.stage_faults(); !faults.empty()) return faults;
  return board_findings(ready);
}

}  // namespace

std::vector<Way> ways_out(const BoardFile& file, Outside outside) {
  if (!file.sound()) return {};
  return ways_out(file.board, [outside](const Board& board) { return judged_with_neck(board, outside); });
}

std::string rescue_text(const std::vector<Way>& ways, const Board& board) {
  if (ways.empty()) return "no way out was found, or nothing that was measured asks for one\n";
  std::string text;
  for (std::size_t i = 0; i < ways.size(); ++i) {
    const Way& way = ways[i];
    text += std::to_string(i + 1) + ". " + way.name + ": " + terminal_text(way.message) +
            "\n    it costs: " + terminal_text(way.cost) + "\n";
    for (const Edit& edit : way.edits) {
      const bool taken_out = std::holds_alternative<std::monostate>(edit.value);
      text += "    " + terminal_text(edit.key) +
              (taken_out ? ": take it out"
                         : " = " + terminal_text(value_text(*find_field(edit.key), edit.value, board.units))) +
              "\n";
    }
    const auto looks = std::count_if(way.findings.begin(), way.findings.end(),
                                     [](const Finding& each) { return each.severity == Severity::look; });
    if (looks > 0) text += "    " + std::to_string(looks) + " findings of it say look\n";
  }
  return text;
}

nlohmann::ordered_json rescue_json(const std::vector<Way>& ways) {
  Json list = Json::array();
  for (const Way& way : ways) list.push_back(way_json(way));
  return {{"ways", list}};
}

}  // namespace sagitta
