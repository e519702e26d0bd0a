#include "jobsheet/Clock.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>
#include <optional>

#include "board/Cutters.hpp"
#include "board/Length.hpp"
#include "drawing/WoodTop.hpp"
#include "frets/WireList.hpp"
#include "inlay/Nesting.hpp"
#include "jobsheet/InlayHeights.hpp"
#include "plane/Tolerance.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

std::string rounded(double value, int decimals) {
  char text[64];
  std::snprintf(text, sizeof text, "%.*f", decimals, value);
  return text;
}

double length_of(const Loops& loops) {
  double length = 0;
  for (const Loop& loop : loops)
    for (const CurveSegment& segment : loop) length += segment.length();
  return length;
}

/// The cutter that does a step; null: none is named, or no cutter does it.
const Cutter* cutter_of(const Board& board, WalkKind kind) {
  const auto named = [&](CutterUse use) -> const Cutter* {
    const auto found = std::ranges::find_if(board.cutters, [&](const Cutter& each) { return has_use(each, use); });
    return found == board.cutters.end() ? nullptr : &*found;
  };
  switch (kind) {
    case WalkKind::pockets: {
      const Cutter* clears = named(CutterUse::pocket_clear);
      return clears ? clears : named(CutterUse::pocket_detail);
    }
    case WalkKind::pockets_detail:
      return named(CutterUse::pocket_detail);
    case WalkKind::pieces:
      return named(CutterUse::piece);
    case WalkKind::radius:
      return named(CutterUse::radius);
    case WalkKind::slots:
      return named(CutterUse::slot);
    case WalkKind::nut:
      return named(CutterUse::nut);
    case WalkKind::outline:
      return named(CutterUse::outline);
    default:
      return nullptr;
  }
}

bool is_cut(WalkKind kind) {
  return kind == WalkKind::pockets || kind == WalkKind::pieces || kind == WalkKind::radius || kind == WalkKind::slots ||
         kind == WalkKind::outline;
}

/// What a step cuts: mm along the cutter's middle in one layer, and how deep it goes.
struct Path {
  double length = 0, depth = 0;
};

Path path_of(const PreparedBoard& ready, WalkKind kind, double cutter) {
  const Board& board = ready.board();
  Path path;
  switch (kind) {
    case WalkKind::pockets:
      for (const Pocket& pocket : ready.pockets()) {
        double area = 0;
        for (const Loop& loop : pocket.outlines) area += sagitta::area(loop);
        path.length += std::abs(area) / (cutter / 2) + length_of(pocket.outlines);
      }
      for (const InlayHeight& each : inlay_heights(ready))
        path.depth = std::max(path.depth, wood_top_before(ready, Operation::pockets) - each.floor);
      return path;
    case WalkKind::pieces:
      for (const InlayPiece& piece : ready.pieces()) {
        path.length += length_of(piece.piece);
        path.depth = std::max(path.depth, piece.thickness);
      }
      return path;
    case WalkKind::radius: {
      const Point size = ready.layout().strip.high - ready.layout().strip.low;
      return {size.x * std::ceil(size.y / radius_stepover), 0};
    }
    case WalkKind::slots:
      for (const Slot& slot : ready.slots()) path.length += distance(slot.bass_end, slot.treble_end);
      return {path.length, slot_depth(board)};
    default:
      return {length_of({ready.layout().outline}), wood_top_before(ready, Operation::outline)};
  }
}

}  // namespace

JobTable tool_changes(const PreparedBoard& ready, const std::vector<WalkStep>& walk) {
  const Board& board = ready.board();
  JobTable table{{"change", "step", "cutter"}, {}};
  const Cutter* in = nullptr;
  for (std::size_t i = 0; i < walk.size(); ++i) {
    const Cutter* cutter = cutter_of(board, walk[i].kind);
    if (!cutter || cutter == in) continue;
    in = cutter;
    table.rows.push_back({std::to_string(table.rows.size() + 1), std::to_string(i + 1) + ". " + walk[i].title,
                          cutter->name + ", " + stock_length(board.units, cutter->diameter) +
                              (cutter->shape == CutterShape::ball ? " ball" : " flat")});
  }
  return table;
}

JobTable clock_of(const PreparedBoard& ready, const std::vector<WalkStep>& walk) {
  const Board& board = ready.board();
  JobTable table{{"step", "cutter", "length of cut", "passes", "minutes"}, {}};
  double sum = 0;
  bool all_known = true;
  if (std::ranges::none_of(board.cutters, [](const Cutter& cutter) { return cutter.feed.has_value(); })) return table;
  for (const WalkStep& step : walk) {
    if (!is_cut(step.kind)) continue;
    const Cutter* cutter = cutter_of(board, step.kind);
    if (!cutter || !cutter->feed) {
      all_known = false;
      table.rows.push_back({step.title, cutter ? cutter->name : "none named", "", "", "unknown"});
      continue;
    }
    const Path path = path_of(ready, step.kind, cut_width(*cutter));
    const double passes =
        cutter->pass_depth ? std::max(1.0, std::ceil(path.depth / *cutter->pass_depth - tolerance::same)) : 1;
    const double minutes = passes * path.length / *cutter->feed;
    sum += minutes;
    table.rows.push_back(
        {step.title, cutter->name, measure(board, passes * path.length), rounded(passes, 0), rounded(minutes, 1)});
  }
  if (!table.rows.empty())
    table.rows.push_back({"all that is known", "", "", "", rounded(sum, 1) + (all_known ? "" : " +")});
  return table;
}

JobTable material_of(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const auto length = [&](double mm) { return measured_length(board.units, mm); };
  const auto area = [&](double mm2) {
    const double unit = mm_per(board.units);
    return rounded(mm2 / unit / unit, board.units == Units::inch ? 2 : 0) + " " + std::string(unit_name(board.units)) +
           "2";
  };
  JobTable table{{"material", "there is", "used", "left over"}, {}};
  const double wire = total_wire(wire_list(ready));
  if (wire > 0) table.rows.push_back({"wire", "", length(wire), ""});
  const Layout& layout = ready.layout();
  const Box box = bounds(layout.outline);
  const Point blank = layout.blank.high - layout.blank.low, used = box.high - box.low;
  table.rows.push_back({"blank of " + board.blank.material, length(blank.x) + " x " + length(blank.y),
                        length(used.x) + " x " + length(used.y),
                        length(blank.x - used.x) + " of length, " + length(blank.y - used.y) + " of width"});
  if (board.sheets.empty()) return table;
  const Nesting nesting = nest(ready.pieces(), board.sheets, nest_rules(board)).value();
  for (const NestedSheet& sheet : nesting.sheets)
    table.rows.push_back({"sheet " + std::to_string(sheet.sheet + 1) + " of " + sheet.material,
                          length(sheet.length) + " x " + length(sheet.width), area(sheet.used),
                          area(sheet.length * sheet.width - sheet.used)});
  return table;
}

}  // namespace sagitta
