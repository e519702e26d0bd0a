#include "drawing/SheetDrawing.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <set>

#include "board/Length.hpp"
#include "drawing/ResolvedSetup.hpp"
#include "plane/Tolerance.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

/// How far a tab's line reaches from the outline, each way. mm.
constexpr double tab_reach = 1.5;

const Sheet& spec_of(const PreparedBoard& ready, const NestedSheet& sheet) {
  return ready.board().sheets[static_cast<std::size_t>(sheet.sheet)];
}

/// The sheet's zero in its own frame, whose origin is its lower left corner.
Point zero_of(const Sheet& spec, const NestedSheet& sheet) {
  switch (spec.zero) {
    case SheetZero::corner:
      return {0, 0};
    case SheetZero::centre:
      return {sheet.length / 2, sheet.width / 2};
    case SheetZero::first_piece:
      break;
  }
  const Box box = bounds(sheet.pieces.front().outline.front());
  return between(box.low, box.high, 0.5);
}

std::string zero_words(const Sheet& spec, const NestedSheet& sheet) {
  switch (spec.zero) {
    case SheetZero::corner:
      return "its lower left corner";
    case SheetZero::centre:
      return "its middle";
    case SheetZero::first_piece:
      break;
  }
  return "the middle of " + sheet.pieces.front().name;
}

std::string hold_note(const Sheet& spec, Units units) {
  switch (spec.hold) {
    case SheetHold::tape:
      return "Hold: tape under the dashed area, for the last pass frees the pieces; the clamps hold only the ends.";
    case SheetHold::tabs:
      return "Hold: leave tabs where the short lines cross the outlines, and cut them by hand.";
    case SheetHold::skin:
      break;
  }
  return "Hold: what stays under the pieces, at least " + measured_length(units, spec.skin) +
         ". Sand it away from the back until the pieces come free.";
}

/// Thicknesses of the pieces on this sheet.
std::set<double> thicknesses(const PreparedBoard& ready, const NestedSheet& sheet) {
  std::set<std::string> names;
  for (const NestedPiece& piece : sheet.pieces) names.insert(piece.name);
  std::set<double> all;
  for (const InlayPiece& piece : ready.pieces())
    if (names.contains(piece.name)) all.insert(piece.thickness);
  return all;
}

/// What becomes of pieces that are thinner than their sheet. A sheet is planed to its thickest pieces.
std::vector<std::string> thickness_notes(const Sheet& spec, const std::set<double>& all, double sheet, Units units) {
  const auto length = [&](double mm) { return measured_length(units, mm); };
  std::vector<std::string> notes;
  const double most = all.empty() ? sheet : *all.rbegin();
  if (spec.hold == SheetHold::skin) {
    for (const double each : all)
      notes.push_back("Pieces of " + length(each) + ": cut as deep as that; " + length(std::max(0.0, sheet - each)) +
                      " stay under them.");
    return notes;
  }
  if (sheet > most + tolerance::same)
    notes.push_back("The sheet is " + length(sheet - most) + " thicker than pieces of " + length(most) +
                    ": plane it to that, or they stand proud by as much more.");
  for (const double each : all)
    if (each < most - tolerance::same)
      notes.push_back("Pieces of " + length(each) + " come out " + length(most - each) +
                      " too thick even so: thin them from the back, or they stand proud by as much more.");
  return notes;
}

std::string turned_note(const NestedSheet& sheet) {
  std::string turned;
  for (const NestedPiece& nested : sheet.pieces)
    if (nested.turn != 0)
      turned += (turned.empty() ? "" : ", ") + nested.name + " by " +
                std::to_string(std::lround(nested.turn * 180 / std::numbers::pi)) + " degrees";
  return turned.empty() ? turned : "Turned against the board: " + turned + ".";
}

/// Where clamps stand: the sheet's two ends.
std::vector<Figure> clamps_of(const Sheet& spec, const NestedSheet& sheet) {
  if (spec.clamp <= tolerance::snap || 2 * spec.clamp >= sheet.length) return {};
  return {{"clamp", rectangle({0, 0}, {spec.clamp, sheet.width}), true},
          {"clamp", rectangle({sheet.length - spec.clamp, 0}, {sheet.length, sheet.width}), true}};
}

/// Where tape lies under the sheet: between the clamps.
std::vector<Figure> tape_of(const Sheet& spec, const NestedSheet& sheet) {
  if (spec.hold != SheetHold::tape) return {};
  const double end = clamps_of(spec, sheet).empty() ? 0 : spec.clamp;
  return {{"tape under the sheet", rectangle({end, 0}, {sheet.length - end, sheet.width}), true}};
}

/// A short line across the outline in the middle of its two longest segments, where the piece may stay tied.
void add_tabs(const NestedPiece& nested, std::vector<Figure>& figures) {
  Loop longest = nested.outline.front();
  std::ranges::stable_sort(longest, std::ranges::greater{}, &CurveSegment::length);
  for (std::size_t i = 0; i < std::min<std::size_t>(2, longest.size()); ++i) {
    const Point middle = longest[i].at(0.5), across = tab_reach * left_of(unit(longest[i].slope(0.5)));
    figures.push_back({nested.name, {line(middle - across, middle + across)}, false});
  }
}

std::vector<Figure> tabs_of(const Sheet& spec, const NestedSheet& sheet) {
  std::vector<Figure> figures;
  if (spec.hold == SheetHold::tabs)
    for (const NestedPiece& nested : sheet.pieces) add_tabs(nested, figures);
  return figures;
}

}  // namespace

std::string sheet_folder(const NestedSheet& sheet) {
  char ending[24];
  std::snprintf(ending, sizeof ending, "-%02d", sheet.sheet + 1);
  return plain_name("sheet-" + sheet.material) + ending;
}

std::vector<std::string> sheet_notes(const PreparedBoard& ready, const NestedSheet& sheet, Units units) {
  const Sheet& spec = spec_of(ready, sheet);
  const auto length = [&](double mm) { return measured_length(units, mm); };
  std::vector<std::string> notes = {
      "Sheet of " + sheet.material + ", " + measure(units, sheet.length) + " x " + measure(units, sheet.width) + " x " +
          length(sheet.thickness) + "; zero at " + zero_words(spec, sheet) + ", z = 0 on the sheet's top.",
      "Clear of pieces: " + length(std::max(spec.margin, spec.clamp)) + " at each end, where clamps may stand, and " +
          length(spec.margin) + " along both sides.",
      hold_note(spec, units), "Cut inside outlines before outside ones."};
  if (spec.face == SheetFace::mirrored)
    notes.push_back("The face lies DOWN: the outlines are drawn mirrored. Turn each piece over when it is glued in.");
  for (const std::string& note : thickness_notes(spec, thicknesses(ready, sheet), sheet.thickness, units))
    notes.push_back(note);
  if (const std::string turned = turned_note(sheet); !turned.empty()) notes.push_back(turned);
  return notes;
}

Drawing sheet_drawing(const PreparedBoard& ready, const NestedSheet& sheet) {
  const Sheet& spec = spec_of(ready, sheet);
  Drawing drawing{shown_name(ready.board()) + ", sheet of " + sheet.material, {}, {}, {}};
  Layer outlines{plain_name("piece-" + sheet.material), "#b07020", {}};
  for (const NestedPiece& nested : sheet.pieces)
    for (const Loop& loop : nested.outline) outlines.figures.push_back({nested.name, loop, true, nested.ellipse});
  drawing.layers = {outlines,
                    {"blank-centre",
                     "#c0c0c0",
                     {{"middle of the sheet, along", {line(sheet.along.a, sheet.along.b)}, false},
                      {"middle of the sheet, across", {line(sheet.across.a, sheet.across.b)}, false}}},
                    {"blank", "#806040", {{"sheet", rectangle({0, 0}, {sheet.length, sheet.width}), true}}}};
  if (auto clamps = clamps_of(spec, sheet); !clamps.empty()) drawing.layers.push_back({"clamps", "#909090", clamps});
  if (auto tape = tape_of(spec, sheet); !tape.empty()) drawing.layers.push_back({"tape", "#60a0a0", tape});
  if (auto tabs = tabs_of(spec, sheet); !tabs.empty()) drawing.layers.push_back({"tabs", "#c060a0", tabs});
  Point zero = zero_of(spec, sheet);
  if (spec.face == SheetFace::mirrored) {
    drawing = moved(mirrored(std::move(drawing)), {0, sheet.width});
    zero.y = sheet.width - zero.y;
    if (spec.zero == SheetZero::corner) zero.y = 0;
  }
  drawing = moved(std::move(drawing), Point{} - zero);
  drawing.page = {Point{} - zero, Point{sheet.length, sheet.width} - zero};
  drawing.layers.push_back(zero_layer());
  drawing.notes = sheet_notes(ready, sheet, Units::mm);
  drawing.notes.push_back("True size, millimetres; the pieces as they lie on the sheet, seen from above.");
  return drawing;
}

}  // namespace sagitta
