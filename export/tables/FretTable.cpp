#include "tables/FretTable.hpp"

#include <cstdarg>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "layout/SlotParts.hpp"
#include "text/TerminalText.hpp"

namespace sagitta {
namespace {

using Json = nlohmann::ordered_json;

constexpr double inch = 25.4;

/// printf into a string; for lines of at most 255 characters.
[[gnu::format(printf, 1, 2)]] std::string line_of(const char* format, ...) {
  char buffer[256];
  va_list arguments;
  va_start(arguments, format);
  std::vsnprintf(buffer, sizeof buffer, format, arguments);
  va_end(arguments);
  return buffer;
}

bool has_two_scales(const Layout& layout) { return layout.bass_scale != layout.treble_scale; }

Json distance_json(bool two, double bass, double treble) {
  if (!two) return bass;
  return {{"bass", bass}, {"treble", treble}};
}

Json point_json(Point p) { return {p.x, p.y}; }

/// Distances of one fret along both outer strings, mm; `to_next` is meaningless for the last.
struct Row {
  const FretLine& fret;
  bool last = false;
  double bass_to_next = 0, treble_to_next = 0;
};

std::vector<Row> rows(const Layout& layout) {
  std::vector<Row> result;
  for (std::size_t i = 0; i < layout.frets.size(); ++i) {
    Row row{layout.frets[i], i + 1 == layout.frets.size()};
    if (!row.last) {
      row.bass_to_next = layout.frets[i + 1].bass_from_nut - row.fret.bass_from_nut;
      row.treble_to_next = layout.frets[i + 1].treble_from_nut - row.fret.treble_from_nut;
    }
    result.push_back(row);
  }
  return result;
}

std::string single_text(const Layout& layout, double unit, int places) {
  std::string text = line_of("%5s %10s %12s %12s %12s\n", "fret", "cents", "from nut", "to next", "to saddle");
  for (const Row& row : rows(layout)) {
    text += line_of("%5d %10.2f %12.*f ", row.fret.fret, row.fret.cents, places, row.fret.bass_from_nut / unit);
    text += row.last ? line_of("%12s", "-") : line_of("%12.*f", places, row.bass_to_next / unit);
    text += line_of(" %12.*f\n", places, row.fret.bass_to_saddle / unit);
  }
  return text;
}

std::string double_text(const Layout& layout, double unit, int places) {
  std::string text = line_of("%5s %10s | %-31s | %-31s\n", "", "", "bass string", "treble string");
  text += line_of("%5s %10s | %10s %9s %10s | %10s %9s %10s\n", "fret", "cents", "from nut", "to next", "to saddle",
                  "from nut", "to next", "to saddle");
  const auto string_text = [&](double from, double next, double saddle, bool last) {
    const std::string to_next = last ? line_of("%9s", "-") : line_of("%9.*f", places, next / unit);
    return line_of(" | %10.*f %s %10.*f", places, from / unit, to_next.c_str(), places, saddle / unit);
  };
  for (const Row& row : rows(layout)) {
    const FretLine& fret = row.fret;
    text += line_of("%5d %10.2f", fret.fret, fret.cents);
    text += string_text(fret.bass_from_nut, row.bass_to_next, fret.bass_to_saddle, row.last);
    text += string_text(fret.treble_from_nut, row.treble_to_next, fret.treble_to_saddle, row.last) + "\n";
  }
  return text;
}

/// The pieces of a slot that the heel end cuts, each from its bass end to its treble end; empty for another.
Json pieces_json(const Layout& layout, int fret) {
  Json pieces = Json::array();
  for (const Slot& slot : layout.slots)
    if (slot.fret == fret && is_parted(slot))
      pieces.push_back({point_json(slot.bass_end), point_json(slot.treble_end)});
  return pieces;
}

/// "fret 20 in 2 pieces", a line each.
std::string pieces_text(const Layout& layout, double unit, int places) {
  std::string text;
  for (const Slot& slot : layout.slots) {
    if (!is_parted(slot)) continue;
    text += line_of("fret %d, piece %d: %.*f long, from y = %.*f to %.*f\n", slot.fret, slot.part + 1, places,
                    distance(slot.bass_end, slot.treble_end) / unit, places, slot.bass_end.y / unit, places,
                    slot.treble_end.y / unit);
  }
  return text.empty() ? text : "cut by the body end:\n" + text;
}

}  // namespace

Json fret_json(const Layout& layout) {
  const bool two = has_two_scales(layout);
  Json table = Json::array();
  for (const Row& row : rows(layout)) {
    const FretLine& fret = row.fret;
    table.push_back({{"fret", fret.fret},
                     {"cents", fret.cents},
                     {"from_nut", distance_json(two, fret.bass_from_nut, fret.treble_from_nut)},
                     {"to_next", row.last ? Json() : distance_json(two, row.bass_to_next, row.treble_to_next)},
                     {"to_saddle", distance_json(two, fret.bass_to_saddle, fret.treble_to_saddle)},
                     {"bass", point_json(fret.bass)},
                     {"treble", point_json(fret.treble)}});
    if (Json pieces = pieces_json(layout, fret.fret); !pieces.empty()) table.back()["pieces"] = std::move(pieces);
  }
  return table;
}

std::string fret_csv(const Layout& layout) {
  const bool two = has_two_scales(layout);
  std::string text =
      two ? "fret,cents,bass_from_nut_mm,treble_from_nut_mm,bass_to_next_mm,treble_to_next_mm,bass_to_saddle_mm,"
            "treble_to_saddle_mm,"
          : "fret,cents,from_nut_mm,to_next_mm,to_saddle_mm,";
  text += "bass_x_mm,bass_y_mm,treble_x_mm,treble_y_mm\n";
  const auto pair = [&](double bass, double treble) {
    return two ? line_of(",%.4f,%.4f", bass, treble) : line_of(",%.4f", bass);
  };
  for (const Row& row : rows(layout)) {
    const FretLine& fret = row.fret;
    text += line_of("%d,%.4f", fret.fret, fret.cents) + pair(fret.bass_from_nut, fret.treble_from_nut);
    text += row.last ? (two ? ",," : ",") : pair(row.bass_to_next, row.treble_to_next);
    text += pair(fret.bass_to_saddle, fret.treble_to_saddle);
    text += line_of(",%.4f,%.4f,%.4f,%.4f\n", fret.bass.x, fret.bass.y, fret.treble.x, fret.treble.y);
  }
  return text;
}

std::string fret_text(const Drawn& drawn) {
  const Board& board = drawn.board;
  const Layout& layout = drawn.layout;
  const bool inches = board.units == Units::inch;
  const double unit = inches ? inch : 1;
  const int places = inches ? 4 : 3;
  std::string text = board.name.empty() ? "" : terminal_text(board.name) + ", ";
  text += inches ? "all lengths in inches\n" : "all lengths in millimetres\n";
  return text + (has_two_scales(layout) ? double_text(layout, unit, places) : single_text(layout, unit, places)) +
         pieces_text(layout, unit, places);
}

}  // namespace sagitta
