#include "package/Compare.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <nlohmann/json.hpp>
#include <utility>

#include "board/Fields.hpp"
#include "board/Length.hpp"
#include "board/Writer.hpp"
#include "input/PreparedFile.hpp"
#include "layout/Taper.hpp"
#include "mesh/Mesh.hpp"
#include "plan/Feature.hpp"
#include "text/TerminalText.hpp"

namespace sagitta {
namespace {

/// Stations along and across the board where the playing surfaces are compared; they bend by far less between two.
constexpr int along = 64, across = 16;

double slot_shift(const Layout& a, const Layout& b) {
  double most = 0;
  const std::size_t count = std::min(a.frets.size(), b.frets.size());
  for (std::size_t i = 0; i < count; ++i) {
    const FretLine &here = a.frets[i], &there = b.frets[i];
    for (const double shift : {distance(here.bass_edge, there.bass_edge), distance(here.middle, there.middle),
                               distance(here.treble_edge, there.treble_edge)})
      most = std::max(most, shift);
  }
  return most;
}

/// The shortest way from a point to an outline, over points of it.
double way_to(const Loop& loop, Point p) {
  double least = 1e300;
  for (const CurveSegment& segment : loop) {
    if (!segment.is_arc()) {
      const Point d = segment.b - segment.a;
      const double s = std::clamp(dot(p - segment.a, d) / dot(d, d), 0.0, 1.0);
      least = std::min(least, distance(p, between(segment.a, segment.b, s)));
      continue;
    }
    constexpr int steps = 256;
    for (int i = 0; i <= steps; ++i) least = std::min(least, distance(p, segment.at(i / double{steps})));
  }
  return least;
}

double edge_shift(const Loop& a, const Loop& b) {
  double most = 0;
  for (const auto& [from, to] : {std::pair{&a, &b}, std::pair{&b, &a}})
    for (const CurveSegment& segment : *from)
      for (int i = 0; i < along; ++i) most = std::max(most, way_to(*to, segment.at(i / double{along})));
  return most;
}

double surface_shift(const PreparedBoard& a, const PreparedBoard& b) {
  const double low = std::max(a.layout().nut_end, b.layout().nut_end);
  const double high = std::min(a.layout().heel_end, b.layout().heel_end);
  double most = 0;
  for (int i = 0; i <= along; ++i) {
    const double x = low + (high - low) * i / along;
    // The surface is the same on both sides of y = 0.
    const double edge = std::min(taper_in(a.layout()).larger_edge(x), taper_in(b.layout()).larger_edge(x));
    for (int k = 0; k <= across; ++k) {
      const double y = edge * k / across;
      if (a.surface().exists(x, y) && b.surface().exists(x, y))
        most = std::max(most, std::abs(a.surface().height(x, y) - b.surface().height(x, y)));
    }
  }
  return most;
}

/// The cuts from above of the whole work, with what bounds them.
std::vector<Feature> cuts_of(const PreparedBoard& ready) {
  std::vector<Feature> cuts;
  for (Feature& feature : ready.features(work_done_at(ready.board(), Stage::board)))
    if (feature.role == Feature::Role::cut) cuts.push_back(std::move(feature));
  return cuts;
}

Point middle_of(const Feature& feature) {
  const Box box = bounds(feature.shape ? outline(*feature.shape) : feature.loop);
  return between(box.low, box.high, 0.5);
}

/// Floors of features of one id; each measured at the middle of the first board's.
double floor_shift(const PreparedBoard& a, const PreparedBoard& b) {
  double most = 0;
  const std::vector<Feature> there = cuts_of(b);
  for (const Feature& cut : cuts_of(a)) {
    const auto other = std::find_if(there.begin(), there.end(), [&](const Feature& f) { return f.id == cut.id; });
    if (other == there.end()) continue;
    const Point p = middle_of(cut);
    const auto floor = [&](const PreparedBoard& ready, BoundingSurface bound) {
      bound.fallen = ready.surface().fall_start && p.x > *ready.surface().fall_start;
      return height(ready.surface(), bound, p);
    };
    most = std::max(most, std::abs(floor(a, cut.bound) - floor(b, other->bound)));
  }
  return most;
}

double volume_of(const PreparedBoard& ready) { return volume(make_mesh(ready.shell(Stage::board))); }

std::string shown(const Field& field, const Value& value, Units units) {
  return std::holds_alternative<std::monostate>(value) ? "-" : value_text(field, value, units);
}

/// The first board with one row's field, or with as many rows of a table, as the second; nothing where that alone is no
/// board: a compound surface without its second radius.
std::optional<Effect> effect_alone(const PreparedBoard& a, const Board& changed) {
  BoardFile file = read_board_text(write_board(changed), "", changed.folder, a.outside());
  if (!file.sound()) return {};
  const auto prepared = prepare(std::move(file), a.outside());
  const PreparedBoard* ready = std::get_if<PreparedBoard>(&prepared);
  return ready ? std::optional(effect_of(a, *ready)) : std::nullopt;
}

class Differences {
 public:
  Differences(const PreparedBoard& a, const PreparedBoard& b)
      : ready_(a), a_(tidy(a.planned())), b_(tidy(b.planned())) {}

  std::vector<KeyDifference> take() {
    for (const Table& table : tables()) {
      if (table.form == TableForm::free)
        limits();
      else if (table.form == TableForm::named)
        materials(table);
      else
        rows(table);
    }
    return std::move(found_);
  }

 private:
  void rows(const Table& table) {
    const std::size_t here = row_count(a_, table), there = row_count(b_, table);
    for (std::size_t i = 0; i < std::min(here, there); ++i) fields(table, i, i);
    if (here == there) return;
    Board changed = a_;
    set_row_count(changed, table, there);
    for (std::size_t i = here; i < there; ++i)
      for (const Field& field : fields_of(table.name))
        field.access.set(row(changed, table, i), field.access.get(row(std::as_const(b_), table, i)));
    const auto count = [](std::size_t n) { return n == 0 ? std::string("-") : std::to_string(n) + " of them"; };
    found_.push_back({std::string(table.name), count(here), count(there), effect_alone(ready_, changed)});
  }

  void fields(const Table& table, std::size_t i, std::size_t k) {
    for (const Field& field : fields_of(table.name)) {
      if (field.dotted() == "base" || field.dotted() == "format") continue;
      const Value here = field.access.get(row(std::as_const(a_), table, i));
      const Value there = field.access.get(row(std::as_const(b_), table, k));
      if (here == there) continue;
      Board changed = a_;
      field.access.set(row(changed, table, i), there);
      const std::string prefix = row_key(a_, table, i);
      found_.push_back({prefix + (prefix.empty() ? "" : ".") + std::string(field.key), shown(field, here, a_.units),
                        shown(field, there, b_.units), effect_alone(ready_, changed)});
    }
  }

  void materials(const Table& table) {
    std::size_t i = 0;
    for (const auto& [name, material] : a_.materials) {
      const auto other = b_.materials.find(name);
      if (other == b_.materials.end())
        found_.push_back({"materials." + name, "given", "-", Effect{}});
      else
        fields(table, i, static_cast<std::size_t>(std::distance(b_.materials.begin(), other)));
      ++i;
    }
    for (const auto& [name, material] : b_.materials)
      if (!a_.materials.contains(name)) found_.push_back({"materials." + name, "-", "given", Effect{}});
  }

  void limits() {
    std::map<std::string, double> names = a_.limits;
    names.insert(b_.limits.begin(), b_.limits.end());
    const auto text = [](const std::map<std::string, double>& limits, const std::string& name) {
      const auto at = limits.find(name);
      return at == limits.end() ? std::string("-") : decimal(at->second);
    };
    for (const auto& [name, limit] : names)
      if (text(a_.limits, name) != text(b_.limits, name))
        found_.push_back({"limits." + name, text(a_.limits, name), text(b_.limits, name), Effect{}});
  }

  const PreparedBoard& ready_;
  const Board a_, b_;
  std::vector<KeyDifference> found_;
};

std::string number(double value, int decimals) {
  char text[40];
  std::snprintf(text, sizeof text, "%.*f", decimals, value);
  return text;
}

/// Mm to 0.0001, inches to 0.00001.
std::string shift_text(double mm, Units units) {
  return number(mm / mm_per(units), units == Units::inch ? 5 : 4) + " " + std::string(unit_name(units));
}

/// Mm3 to 0.1, cubic inches to 0.0001.
std::string volume_text(double mm3, Units units) {
  const double unit = mm_per(units) * mm_per(units) * mm_per(units);
  return number(mm3 / unit, units == Units::inch ? 4 : 1) + " " + std::string(unit_name(units)) + "3";
}

nlohmann::ordered_json effect_json(const std::optional<Effect>& effect) {
  if (!effect) return nullptr;
  return {{"slot", effect->slot},   {"edge", effect->edge},       {"depth", effect->depth},
          {"slots", effect->slots}, {"pockets", effect->pockets}, {"volume", effect->volume}};
}

}  // namespace

std::string effect_text(const Effect& effect, Units units) {
  std::string text;
  const auto add = [&](bool there, const std::string& what) {
    if (there) text += (text.empty() ? "" : ", ") + what;
  };
  constexpr double seen = 0.00005;  // what rounds to 0.0001 mm
  add(effect.slot >= seen, "slots up to " + shift_text(effect.slot, units));
  add(effect.edge >= seen, "edges up to " + shift_text(effect.edge, units));
  add(effect.depth >= seen, "depths and heights up to " + shift_text(effect.depth, units));
  const auto counted = [](int n, const char* what) {
    return std::to_string(std::abs(n)) + (n > 0 ? " more " : " fewer ") + what + (std::abs(n) == 1 ? "" : "s");
  };
  add(effect.slots != 0, counted(effect.slots, "slot"));
  add(effect.pockets != 0, counted(effect.pockets, "pocket"));
  add(std::abs(effect.volume) >= 0.05,
      volume_text(std::abs(effect.volume), units) + (effect.volume > 0 ? " more wood" : " less wood"));
  return text.empty() ? "nothing in the wood" : text;
}

Effect effect_of(const PreparedBoard& a, const PreparedBoard& b) {
  Effect effect;
  effect.slot = slot_shift(a.layout(), b.layout());
  effect.edge = edge_shift(a.layout().outline, b.layout().outline);
  effect.depth = std::max(surface_shift(a, b), floor_shift(a, b));
  effect.slots = static_cast<int>(b.layout().slots.size()) - static_cast<int>(a.layout().slots.size());
  effect.pockets = static_cast<int>(b.layout().markers.size()) - static_cast<int>(a.layout().markers.size());
  effect.volume = volume_of(b) - volume_of(a);
  return effect;
}

std::vector<KeyDifference> differences(const PreparedBoard& a, const PreparedBoard& b) {
  return Differences(a, b).take();
}

std::string comparison_text(const std::vector<KeyDifference>& keys, const Effect& all, Units units) {
  if (keys.empty()) return "the two boards are the same\n";
  std::string text;
  for (const KeyDifference& difference : keys)
    text += terminal_text(difference.key) + ": " + terminal_text(difference.a) + " -> " + terminal_text(difference.b) +
            "\n    " +
            (difference.effect ? effect_text(*difference.effect, units) : "cannot be built with this change alone") +
            "\n";
  return text + "all together: " + effect_text(all, units) + "\n";
}

nlohmann::ordered_json comparison_json(const std::vector<KeyDifference>& keys, const Effect& all) {
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const KeyDifference& difference : keys)
    list.push_back({{"key", difference.key},
                    {"a", difference.a},
                    {"b", difference.b},
                    {"effect", effect_json(difference.effect)}});
  return {{"keys", list}, {"effect", effect_json(all)}};
}

}  // namespace sagitta
