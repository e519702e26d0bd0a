#include "jobsheet/JobSheet.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "board/SlotCut.hpp"
#include "drawing/BoardDrawing.hpp"
#include "drawing/InlayOutlines.hpp"
#include "drawing/ResolvedSetup.hpp"
#include "frets/LineList.hpp"
#include "frets/WireList.hpp"
#include "inlay/Nesting.hpp"
#include "jobsheet/JobRecord.hpp"
#include "jobsheet/JobSteps.hpp"
#include "layout/Taper.hpp"
#include "rules/Work.hpp"
#include "tables/PieceList.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

std::vector<JobLevel> levels_of(const PreparedBoard& ready, const ResolvedSetup& setup) {
  const Board& board = ready.board();
  std::vector<JobLevel> levels;
  const auto add = [&](const std::string& what, double height, ZZero zero, const std::string& above) {
    levels.push_back({what, "z = " + measure(board, setup.z_from_board(height)), setup.z_zero == zero, above});
  };
  const double finished = board.board.thickness, sanded = finished + board.sanding,
               top = ready.layout().blank_thickness;
  if (setup.tape > 0) add("bed", -setup.tape, ZZero::bed, "tape " + measure(board, setup.tape));
  add(setup.tape > 0 ? "glue face" : "glue face, on the bed", 0, ZZero::glue_face, "board " + measure(board, finished));
  if (setup.tape <= 0) levels.back().zero = setup.z_zero != ZZero::blank_top;
  levels.push_back({"finished top", "z = " + measure(board, setup.z_from_board(finished)), false,
                    "comes off " + measure(board, top - finished)});
  if (board.sanding > 0) {
    levels.back().above = "sanding " + measure(board, board.sanding);
    levels.push_back({"top as it is cut", "z = " + measure(board, setup.z_from_board(sanded)), false,
                      "comes off " + measure(board, top - sanded)});
  }
  add("blank's top", top, ZZero::blank_top, "");
  return levels;
}

std::vector<JobSetup> job_setups(const PreparedBoard& ready) {
  std::vector<JobSetup> list;
  const Drawing drawing = drawing_of(ready, inlay_outlines(ready));
  for (ResolvedSetup setup : setups_of(ready)) {
    std::erase_if(setup.operations, [&](Operation each) { return is_done(ready.board(), each); });
    if (setup.operations.empty()) continue;
    JobSetup own;
    own.title = "Set-up " + std::to_string(setup.number) + ": " + setup.name;
    own.folder = setup.folder;
    own.notes = setup_notes(ready, setup, ready.board().units);
    own.notes.push_back("Clamp back within " + measure(ready.board(), setup.reclamp_error) + " of where it lay.");
    own.hold_down = {setup_drawing(ready, setup, drawing), setup.from_board({0, 0}).x, ready.board().units};
    own.levels = levels_of(ready, setup);
    own.steps = job_steps(ready, setup);
    list.push_back(std::move(own));
  }
  return list;
}

JobTable caliper_checks(const PreparedBoard& ready) {
  const Board& board = ready.board();
  const auto off = [&](double tolerance) { return "\u00b1 " + measure(board, tolerance); };
  JobTable table{{"what", "should be", "tolerance", "measured"}, {}};
  const int last = ready.layout().frets.back().fret;
  const bool fan = board.scale.bass.has_value();
  for (const int fret : std::set<int>{1, 7, 12, last}) {
    if (fret < 1 || fret > last || slot_cut(board) == SlotCut::none) continue;
    const FretLine& line = ready.layout().frets[static_cast<std::size_t>(fret)];
    const std::string what = "nut line to the middle of slot " + std::to_string(fret);
    if (!fan) {
      table.rows.push_back({what, fixed_measure(board, line.bass_from_nut), off(slot_tolerance), ""});
      continue;
    }
    table.rows.push_back({what + ", along the board at the outer bass string", fixed_measure(board, line.bass_from_nut),
                          off(slot_tolerance), ""});
    table.rows.push_back({what + ", along the board at the outer treble string",
                          fixed_measure(board, line.treble_from_nut), off(slot_tolerance), ""});
  }
  const auto thickness = [&](const std::string& where, double x, double y) {
    table.rows.push_back({"thickness " + where, fixed_measure(board, ready.surface().height(x, y) + board.sanding),
                          off(thickness_tolerance), ""});
  };
  const auto edges = [&](const std::string& where, auto x_of) {
    const Taper taper = taper_in(ready.layout());
    const bool left = board.hand == Hand::left;
    if (taper.symmetric()) return thickness("at the edge, " + where, x_of(1), taper.edge(1, x_of(1)));
    for (const int side : {left ? 1 : 0, left ? 0 : 1})
      thickness(std::string((side == 1) == left ? "at the bass edge, " : "at the treble edge, ") + where, x_of(side),
                (side == 0 ? -1 : 1) * taper.edge(side, x_of(side)));
  };
  const auto heel = [&](int side) { return ready.layout().edges[side].b.x; };
  thickness("in the middle of the nut line", 0, 0);
  edges("at the nut line", [](int) { return 0.0; });
  thickness("in the middle of the heel", heel(1), 0);
  edges("at the heel", heel);
  return table;
}

/// Pieces, the sheets that they are cut from, and what no sheet has room for.
void pieces_and_sheets(const PreparedBoard& ready, JobSheet& sheet) {
  const Board& board = ready.board();
  const bool sheets = !board.sheets.empty();
  const Nesting nesting = sheets ? nest(ready.pieces(), board.sheets, nest_rules(board)).value() : Nesting();
  std::map<std::string, int> sheet_of;
  std::map<int, std::size_t> pieces_on;
  for (const NestedSheet& each : nesting.sheets)
    for (const NestedPiece& piece : each.pieces) sheet_of[piece.name] = each.sheet + 1, ++pieces_on[each.sheet];
  sheet.pieces.heads = {"piece", "fret", "material", "along", "across", "thickness", "pocket"};
  if (sheets) sheet.pieces.heads.emplace_back("sheet");
  for (const auto& [number, piece, box] : piece_list(ready.pieces())) {
    const Point size = box.high - box.low;
    sheet.pieces.rows.push_back({piece.name, std::to_string(piece.fret), piece.material, fixed_measure(board, size.x),
                                 fixed_measure(board, size.y), fixed_measure(board, piece.thickness),
                                 fixed_measure(board, piece.depth)});
    const auto found = sheet_of.find(piece.name);
    if (sheets) sheet.pieces.rows.back().push_back(found == sheet_of.end() ? "none" : std::to_string(found->second));
    if (sheets && found == sheet_of.end())
      sheet.no_room.push_back(piece.name + ": no sheet of " + piece.material + " has room for it");
  }
  sheet.sheets.heads = {"sheet", "material", "length", "width", "thickness", "pieces"};
  for (std::size_t i = 0; i < board.sheets.size(); ++i) {
    const Sheet& each = board.sheets[i];
    sheet.sheets.rows.push_back({std::to_string(i + 1), each.material, fixed_measure(board, each.length),
                                 fixed_measure(board, each.width), fixed_measure(board, each.thickness),
                                 std::to_string(pieces_on[static_cast<int>(i)])});
  }
}

JobTable lines_of(const PreparedBoard& ready) {
  const Board& board = ready.board();
  JobTable table{{"line", "material", "length", "thickness", "height at least"}, {}};
  const std::vector<LinePiece> list = line_list(ready);
  for (const LinePiece& piece : list)
    table.rows.push_back({std::to_string(piece.fret), piece.material, fixed_measure(board, piece.length),
                          fixed_measure(board, piece.thickness), fixed_measure(board, piece.height)});
  if (!list.empty()) table.rows.push_back({"all", "", fixed_measure(board, total_line(list)), "", ""});
  return table;
}

JobTable wire_of(const PreparedBoard& ready) {
  const Board& board = ready.board();
  if (slot_cut(board) != SlotCut::all) return {};
  JobTable table{{"fret", "cut", "bend to radius", "nip bass", "nip treble", "tang that stays"}, {}};
  const std::vector<WirePiece> list = wire_list(ready);
  for (const WirePiece& piece : list)
    table.rows.push_back({std::to_string(piece.fret), fixed_measure(board, piece.cut),
                          piece.bend_radius ? fixed_measure(board, *piece.bend_radius) : "straight",
                          fixed_measure(board, piece.nip_bass), fixed_measure(board, piece.nip_treble),
                          fixed_measure(board, piece.tang)});
  if (!list.empty()) table.rows.push_back({"all", fixed_measure(board, total_wire(list)), "", "", "", ""});
  return table;
}

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

}  // namespace

JobSheet job_sheet(const PreparedBoard& ready, const std::vector<Finding>& findings) {
  JobSheet sheet;
  sheet.title = shown_name(ready.board()) + ", job sheet";
  sheet.units = unit_word(ready.board());
  sheet.setups = job_setups(ready);
  sheet.checks = caliper_checks(ready);
  pieces_and_sheets(ready, sheet);
  sheet.wire = wire_of(ready);
  sheet.lines = lines_of(ready);
  std::vector<const Finding*> open;
  for (const Finding& finding : findings) {
    const bool caution = finding.name.starts_with("caution-");
    if (caution)
      sheet.cautions.push_back(text_of(finding));
    else
      open.push_back(&finding);
  }
  sheet.findings = finding_lines(open);
  sheet.notes = notes_of(ready.board());
  for (const Operation each : ready.board().order)
    if (is_done(ready.board(), each)) sheet.done.emplace_back(operation_name(each));
  sheet.record = record_of(ready);
  return sheet;
}

}  // namespace sagitta
