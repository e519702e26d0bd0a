#include "decisions/FindingMarks.hpp"

#include <algorithm>
#include <cmath>

#include "rules/Catalogue.hpp"
#include "scene/Flight.hpp"
#include "scene/Pick.hpp"
#include "widgets/Block.hpp"

namespace sagitta::viewer {

namespace {

constexpr float seen_across = 110;  ///< mm of board in the picture once a finding is reached
constexpr double mark_lift = 0.3;   ///< mm above what is marked

bool any_of(const std::string& name, std::initializer_list<const char*> names) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// The key that gives this board its width.
std::string width_key(const Board& board, bool at_nut) {
  if (board.board.edge_margin) return "board.edge_margin";
  if (board.board.nut_margin) return at_nut ? "board.nut_margin" : "board.heel_margin";
  return at_nut ? "board.nut_width" : "board.heel_width";
}

/// "inlays[1].depth"; "" for a finding that belongs to no inlay.
std::string inlay_key(const Finding& finding, const std::string& which) {
  const auto inlay = inlay_of(finding.where);
  return inlay ? "inlays[" + std::to_string(*inlay) + "]." + which : "";
}

std::string key_of_source(const std::string& name) {
  for (const Rule& rule : catalogue) {
    if (rule.name != name || !rule.source.starts_with("key ")) continue;
    const std::string keys(rule.source.substr(4));
    return keys.substr(0, keys.find(','));
  }
  return "";
}

Vec vec(double x, double y, double z) { return {static_cast<float>(x), static_cast<float>(y), static_cast<float>(z)}; }

}  // namespace

std::string finding_title(const Finding& finding) {
  std::string title = finding.name;
  std::replace(title.begin(), title.end(), '-', ' ');
  return capital(title);
}

std::string key_of_finding(const Finding& finding, const Board& board) {
  if (finding.fix) return finding.fix->key;
  const std::string& name = finding.name;
  const bool at_nut = finding.at[0] < 1;
  if (any_of(name, {"board-narrower-than-neck", "string-near-edge"})) return width_key(board, at_nut);
  if (any_of(name, {"last-fret-past-limit", "octave-off"})) return name[0] == 'o' ? "scale.cents" : "scale.frets";
  if (name == "heel-past-limit") return "board.past_last_fret";
  if (any_of(name, {"inlay-sanded-through", "inlay-too-thin", "pocket-too-deep", "thin-under-pocket"}))
    return inlay_key(finding, "depth");
  if (any_of(name, {"inlay-on-slot", "inlay-sliver", "inlays-close", "thin-wall-at-slot", "thin-wall-at-edge",
                    "unusual-marker"}))
    return inlay_key(finding, "frets");
  if (any_of(name, {"slot-too-shallow", "thin-under-slot"})) return "slots.depth";
  if (any_of(name, {"slot-too-tight", "slot-too-loose", "slot-cutter-too-wide"})) return "slots.width";
  if (any_of(name, {"crowns-meet", "narrow-fret-space"})) return "scale.frets";
  if (any_of(name, {"cutter-too-short", "no-cutter"})) return "cutters";
  if (name == "no-room-on-sheet") return "sheets";
  if (name == "proud-in-slot-path") return "work.order";
  if (name == "slot-misplaced") return "measured.slots";
  if (name == "thin-under-nut") return "nut.depth";
  if (name == "thin-edge") return "board.thickness";
  if (name == "blank-short") return "blank.length";
  if (name == "blank-narrow") return "blank.width";
  if (name == "blank-thin") return "blank.thickness";
  if (name == "hump-under-string") return "surface.profile";
  return key_of_source(name);
}

Dimension dimension_of(const Finding& f, const Layout& layout, const Manner& manner) {
  const auto [x, y, z] = f.at;
  const std::string text = f.unit == "mm" ? shown(f.value, manner) : shown_number(f.value, 2) + " " + f.unit;
  const double outward = y < 0 ? -1 : 1, size = std::abs(f.value);
  const Vec place = vec(x, y, z + mark_lift);
  if (f.name == "thin-edge" || f.name.starts_with("thin-under"))
    return {vec(x, y, 0), vec(x, y, f.value), text + " left"};
  if (f.name == "string-near-edge") return {place, vec(x, y + outward * size, z + mark_lift), text};
  if (f.name == "board-narrower-than-neck")
    return {vec(x, outward * layout.half_width(x), z), vec(x, outward * (layout.half_width(x) + size / 2), z), text};
  if (any_of(f.name, {"last-fret-past-limit", "heel-past-limit"}))
    return {vec(x - size, y, z + mark_lift), place, text};
  if (f.name == "blank-short") return {place, vec(x + (x < 0 ? size : -size), y, z + mark_lift), text};
  if (f.name == "blank-narrow") return {place, vec(x, y - outward * size, z + mark_lift), text};
  return {place, place, text};
}

Stage stage_of_finding(const Finding& finding, Stage shown) {
  if (finding.name.starts_with("blank-")) return Stage::blank;
  return shown == Stage::blank ? Stage::board : shown;
}

const Finding* marked_finding(const View& view, const Results& results) {
  if (!view.marked || !results.good) return nullptr;
  const Finding* other = nullptr;
  for (const Finding& f : results.good->findings) {
    if (f.name != view.marked->name) continue;
    if (f.where == view.marked->where) return &f;
    if (!other) other = &f;
  }
  return other;
}

void fly_to(View& view, const Model& model, const Finding& finding, double now) {
  view.marked = Marked{finding.name, finding.where};
  view.stage = stage_of_finding(finding, view.stage);
  const auto [x, y, z] = finding.at;
  const bool treble = y > 0.5 * model.prepared->layout().half_width(x);
  const float across = finding.name.starts_with("blank-") ? 2 * seen_across : seen_across;
  view.cut = x;
  view.flight = Flight{view.camera, near_look(view.camera, vec(x, y, z), treble, across), now};
}

void step_finding(View& view, const Results& results, int direction, double now) {
  if (!results.good || results.good->findings.empty()) return view.say("There is nothing to look at.");
  const auto& all = results.good->findings;
  const auto count = static_cast<int>(all.size());
  const Finding* marked = marked_finding(view, results);
  const int at = marked ? static_cast<int>(marked - all.data()) : direction > 0 ? -1 : 0;
  fly_to(view, *results.good, all[static_cast<std::size_t>((at + direction + count) % count)], now);
}

}  // namespace sagitta::viewer
