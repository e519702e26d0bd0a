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
  return at_nut ? "board.nut_width" : board.board.width_at_fret ? "board.width_at_fret" : "board.heel_width";
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

/// The key that a finding comes from, where its limit's source does not name it.
struct FindingKey {
  std::string_view finding, key;
  bool of_inlay = false;  ///< a key of the finding's own row of [[inlays]]
};

constexpr FindingKey keys_of_findings[] = {
    {"last-fret-past-limit", "scale.frets"},
    {"octave-off", "scale.cents"},
    {"heel-past-limit", "board.past_last_fret"},
    {"inlay-sanded-through", "depth", true},
    {"inlay-too-thin", "depth", true},
    {"pocket-too-deep", "depth", true},
    {"thin-under-pocket", "depth", true},
    {"piece-under-top", "piece_thickness", true},
    {"inlay-on-slot", "frets", true},
    {"inlay-sliver", "frets", true},
    {"inlays-close", "frets", true},
    {"thin-wall-at-slot", "frets", true},
    {"thin-wall-at-edge", "frets", true},
    {"unusual-marker", "frets", true},
    {"slot-too-shallow", "slots.depth"},
    {"thin-under-slot", "slots.depth"},
    {"slot-too-tight", "slots.width"},
    {"slot-too-loose", "slots.width"},
    {"slot-cutter-too-wide", "slots.width"},
    {"crowns-meet", "scale.frets"},
    {"narrow-fret-space", "scale.frets"},
    {"short-fret-piece", "board.past_last_fret"},
    {"cutter-too-short", "cutters"},
    {"no-cutter", "cutters"},
    {"no-room-on-sheet", "sheets"},
    {"proud-in-slot-path", "work.order"},
    {"slot-misplaced", "measured.slots"},
    {"thin-under-nut", "nut.depth"},
    {"thin-edge", "board.thickness"},
    {"blank-short", "blank.length"},
    {"blank-narrow", "blank.width"},
    {"blank-thin", "blank.thickness"},
    {"hump-under-string", "surface.profile"},
};

Vec vec(double x, double y, double z) { return {static_cast<float>(x), static_cast<float>(y), static_cast<float>(z)}; }

}  // namespace

std::string finding_title(const Finding& finding) {
  std::string title = finding.name;
  std::replace(title.begin(), title.end(), '-', ' ');
  return capital(title);
}

std::string key_of_finding(const Finding& finding, const Board& board) {
  if (finding.fix) return finding.fix->key;
  if (any_of(finding.name, {"board-narrower-than-neck", "string-near-edge"}))
    return width_key(board, finding.at[0] < 1);
  if (finding.where.kind == FeatureId::Kind::cut) return feature_key(finding.where);
  for (const FindingKey& each : keys_of_findings)
    if (each.finding == finding.name)
      return each.of_inlay ? inlay_key(finding, std::string(each.key)) : std::string(each.key);
  return key_of_source(finding.name);
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
    return {vec(x, outward * layout.edge(y < 0 ? 0 : 1, x), z),
            vec(x, outward * (layout.edge(y < 0 ? 0 : 1, x) + size / 2), z), text};
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
