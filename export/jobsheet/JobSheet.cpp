#include "jobsheet/JobSheet.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "board/SlotCut.hpp"
#include "drawing/BoardDrawing.hpp"
#include "drawing/InlayOutlines.hpp"
#include "drawing/ResolvedSetup.hpp"
#include "drawing/WoodTop.hpp"
#include "frets/LineList.hpp"
#include "frets/WireList.hpp"
#include "inlay/Nesting.hpp"
#include "jobsheet/CaliperPage.hpp"
#include "jobsheet/Clock.hpp"
#include "jobsheet/Facts.hpp"
#include "jobsheet/JobRecord.hpp"
#include "jobsheet/JobSteps.hpp"
#include "jobsheet/WalkFindings.hpp"
#include "plane/Tolerance.hpp"
#include "rules/Work.hpp"
#include "tables/PieceList.hpp"
#include "text/Measures.hpp"

namespace sagitta {
namespace {

std::vector<JobLevel> levels_of(const PreparedBoard& ready, const ResolvedSetup& setup) {
  const Board& board = ready.board();
  std::vector<JobLevel> levels;
  const auto add = [&](const std::string& what, double height, ZZero zero, const std::string& above) {
    levels.push_back({what, "z = " + fine_measure(board, setup.z_from_board(height)), setup.z_zero == zero, above});
  };
  const double finished = board.board.thickness, sanded = finished + board.sanding, top = wood_top_before(ready, setup);
  const bool whole = top == ready.layout().blank_thickness;
  if (setup.tape > 0) add("bed", -setup.tape, ZZero::bed, "tape " + fine_measure(board, setup.tape));
  add(setup.tape > 0 ? "glue face" : "glue face, on the bed", 0, ZZero::glue_face,
      "board " + fine_measure(board, finished));
  if (setup.tape <= 0) levels.back().zero = setup.z_zero != ZZero::blank_top;
  const auto level = [&](const std::string& what, double height, const std::string& above) {
    levels.push_back({what, "z = " + fine_measure(board, setup.z_from_board(height)), false, above});
  };
  const auto comes_off = [&](double over) {
    return over > tolerance::same ? "comes off " + fine_measure(board, over) : std::string();
  };
  if (board.sanding > 0) level("finished top", finished, "sanding " + fine_measure(board, board.sanding));
  if (top > sanded + tolerance::same)
    level(board.sanding > 0 ? "top as it is cut" : "finished top", sanded, comes_off(top - sanded));
  if (whole)
    add("blank's top", top, ZZero::blank_top, "");
  else
    level("wood's top now", top, "");
  return levels;
}

/// The set-ups with what they have still to do; those that have nothing left are not in it.
std::vector<ResolvedSetup> open_setups(const PreparedBoard& ready) {
  std::vector<ResolvedSetup> open = setups_of(ready);
  for (ResolvedSetup& setup : open)
    std::erase_if(setup.operations, [&](Operation each) { return is_done(ready.board(), each); });
  std::erase_if(open, [](const ResolvedSetup& setup) { return setup.operations.empty(); });
  return open;
}

std::vector<JobSetup> job_setups(const PreparedBoard& ready, const std::vector<ResolvedSetup>& setups) {
  std::vector<JobSetup> list;
  const Drawing drawing = drawing_of(ready, inlay_outlines(ready));
  for (const ResolvedSetup& setup : setups) {
    JobSetup own;
    own.title = "Set-up " + std::to_string(setup.number) + ": " + setup.name;
    own.folder = setup.folder;
    own.notes = setup_notes(ready, setup, ready.board().units);
    own.hold_down = {setup_drawing(ready, setup, drawing), setup.from_board({0, 0}).x, ready.board().units};
    own.levels = levels_of(ready, setup);
    own.steps = job_steps(ready, setup);
    list.push_back(std::move(own));
  }
  return list;
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
  sheet.pieces.heads = {"piece", "fret", "material", "along", "across", "thickness", "pocket depth"};
  if (sheets) sheet.pieces.heads.emplace_back("sheet");
  for (const auto& [number, piece, box] : pieces_by_name(ready.pieces())) {
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
  const std::vector<WirePiece> list = wire_list(ready);
  const bool nipped = std::ranges::any_of(list, [](const WirePiece& piece) {
    return piece.nip_bass > tolerance::same || piece.nip_treble > tolerance::same;
  });
  JobTable table{{"fret", "cut", "board's radius"}, {}};
  if (nipped) table.heads.insert(table.heads.end(), {"nip bass", "nip treble", "tang that stays"});
  for (const WirePiece& piece : list) {
    std::vector<std::string> row{
        std::to_string(piece.fret) + (piece.part ? ", part " + std::to_string(*piece.part + 1) : ""),
        fixed_measure(board, piece.cut), piece.bend_radius ? fixed_measure(board, *piece.bend_radius) : "straight"};
    if (nipped)
      for (const double each : {piece.nip_bass, piece.nip_treble, piece.tang})
        row.push_back(fixed_measure(board, each));
    table.rows.push_back(std::move(row));
  }
  if (!list.empty()) {
    table.rows.push_back({"all", fixed_measure(board, total_wire(list))});
    table.rows.back().resize(table.heads.size());
  }
  return table;
}

}  // namespace

bool shows_wire(const WalkStep& step) { return step.kind == WalkKind::wire; }
bool shows_lines(const WalkStep& step) { return step.kind == WalkKind::lines; }

JobSheet job_sheet(const PreparedBoard& ready, const std::vector<Finding>& findings) {
  JobSheet sheet;
  sheet.title = shown_name(ready.board()) + ", job sheet";
  sheet.units = unit_word(ready.board());
  const std::vector<ResolvedSetup> setups = open_setups(ready);
  sheet.setups = job_setups(ready, setups);
  sheet.checks = caliper_page(ready);
  pieces_and_sheets(ready, sheet);
  sheet.wire = wire_of(ready);
  sheet.lines = lines_of(ready);
  sheet.walk = walk_of(ready, setups);
  sheet.picture = stage_after(Operation::outline);
  sheet.facts = board_facts(ready);
  sheet.tools = tool_changes(ready, sheet.walk);
  sheet.clock = clock_of(ready, sheet.walk);
  if (sheet.clock.rows.empty())
    sheet.no_clock =
        "Name the cutters with their feed and pass_depth ([[cutters]]): the minutes of every step stand here.";
  sheet.material = material_of(ready);
  std::vector<const Finding*> open;
  for (const Finding& finding : findings) {
    const bool caution = finding.name.starts_with("caution-");
    if (caution)
      sheet.cautions.push_back(text_of(finding));
    else
      open.push_back(&finding);
  }
  put_at_steps(ready.board(), sheet.walk, open);
  sheet.findings = finding_lines(open);
  sheet.notes = notes_of(ready.board());
  for (const Operation each : ready.board().order)
    if (is_done(ready.board(), each)) sheet.done.emplace_back(operation_name(each));
  sheet.record = record_of(ready);
  return sheet;
}

}  // namespace sagitta
