#include "jobsheet/WalkFindings.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "board/CutSide.hpp"
#include "board/Cutters.hpp"

namespace sagitta {
namespace {

using Kind = FeatureId::Kind;

WalkKind step_of(Operation operation) {
  switch (operation) {
    case Operation::thickness:
      return WalkKind::thickness;
    case Operation::pockets:
      return WalkKind::pockets;
    case Operation::inlay:
      return WalkKind::pieces;
    case Operation::radius:
      return WalkKind::radius;
    case Operation::slots:
      return WalkKind::slots;
    case Operation::outline:
      break;
  }
  return WalkKind::outline;
}

WalkKind step_of(CutterUse use) {
  switch (use) {
    case CutterUse::pocket_clear:
    case CutterUse::pocket_detail:
      return WalkKind::pockets;
    case CutterUse::piece:
      return WalkKind::pieces;
    case CutterUse::radius:
      return WalkKind::radius;
    case CutterUse::slot:
      return WalkKind::slots;
    case CutterUse::nut:
      return WalkKind::nut;
    case CutterUse::outline:
      break;
  }
  return WalkKind::outline;
}

/// The step that a feature is made at; none for the whole board, its strings and its work.
std::optional<WalkKind> step_of(const Board& board, const FeatureId& where) {
  switch (where.kind) {
    case Kind::blank:
    case Kind::blank_top:
      return WalkKind::blank;
    case Kind::playing_surface:
    case Kind::radius_cut:
    case Kind::fall_away:
    case Kind::scallop:
      return WalkKind::radius;
    case Kind::slots:
    case Kind::slot:
    case Kind::fret_space:
      return WalkKind::slots;
    case Kind::fret:
      return WalkKind::wire;
    case Kind::nut:
    case Kind::nut_seat:
      return WalkKind::nut;
    case Kind::inlay:
      return WalkKind::pockets;
    case Kind::piece:
      return WalkKind::pieces;
    case Kind::edge:
    case Kind::heel_end:
    case Kind::outline:
      return WalkKind::outline;
    case Kind::binding:
    case Kind::binding_line:
      return WalkKind::binding;
    case Kind::side_dot:
      return WalkKind::side_dots;
    case Kind::pin:
      return WalkKind::from_below;
    case Kind::cut:
      if (where.index < 0) return std::nullopt;
      return is_from_below(board.cuts[static_cast<std::size_t>(where.index)]) ? WalkKind::from_below
                                                                              : WalkKind::pockets;
    case Kind::worked_edge:
      return board.edges && board.edges->stage == EdgeStage::hand ? WalkKind::edges : WalkKind::radius;
    case Kind::glue_face:
    case Kind::neck:
    case Kind::neck_side:
    case Kind::neck_face:
    case Kind::neck_channel:
      return WalkKind::neck;
    case Kind::operation:
      return step_of(static_cast<Operation>(where.index));
    case Kind::cutter:
      if (where.index < 0 || board.cutters[static_cast<std::size_t>(where.index)].use.empty()) return std::nullopt;
      return step_of(board.cutters[static_cast<std::size_t>(where.index)].use.front());
    default:
      return std::nullopt;
  }
}

/// The step of the walk that a finding stands at; -1: none.
int place_of(const Board& board, const std::vector<WalkStep>& walk, const FeatureId& where) {
  const bool set_up = where.kind == Kind::setup;
  const auto kind = step_of(board, where);
  for (std::size_t i = 0; i < walk.size(); ++i)
    if (set_up ? walk[i].kind == WalkKind::set_up && walk[i].setup == where.index : kind && walk[i].kind == *kind)
      return static_cast<int>(i);
  return -1;
}

}  // namespace

std::string text_of(const Finding& finding) {
  return finding.message + (finding.suggestion.empty() ? "" : ": " + finding.suggestion);
}

/// A line for each stop and each look. Notes of one kind with one remedy are one line: it counts them, names all
/// places, and says the text of the one that is furthest over its limit.
std::vector<std::string> finding_lines(const std::vector<const Finding*>& findings) {
  std::vector<std::vector<const Finding*>> groups;
  for (const Finding* finding : findings) {
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const auto& group) {
      const Finding& first = *group.front();
      return finding->severity == Severity::note && first.severity == Severity::note && first.name == finding->name &&
             first.suggestion == finding->suggestion;
    });
    if (same != groups.end()) {
      same->push_back(finding);
    } else {
      groups.push_back({finding});
    }
  }
  std::vector<std::string> lines;
  for (const auto& group : groups) {
    const auto over = [](const Finding* finding) { return std::abs(finding->value - finding->limit); };
    const Finding& worst = **std::max_element(group.begin(), group.end(),
                                              [&](const Finding* a, const Finding* b) { return over(a) < over(b); });
    std::string places;
    for (const Finding* finding : group) places += (places.empty() ? "" : "; ") + finding->feature;
    const std::string count = group.size() > 1 ? std::to_string(group.size()) + " places, " : "";
    lines.push_back(std::string(severity_name(worst.severity)) + ", " + count + places + ": " + text_of(worst));
  }
  return lines;
}

void put_at_steps(const Board& board, std::vector<WalkStep>& walk, std::vector<const Finding*>& open) {
  std::map<int, std::vector<const Finding*>> at;
  std::vector<const Finding*> left;
  for (const Finding* finding : open) {
    const int place = place_of(board, walk, finding->where);
    (place < 0 ? left : at[place]).push_back(finding);
  }
  for (const auto& [place, own] : at) walk[static_cast<std::size_t>(place)].findings = finding_lines(own);
  open = std::move(left);
}

}  // namespace sagitta
