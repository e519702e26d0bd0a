#include "export/JobSheet.hpp"

#include <set>

#include "export/InlayOutlines.hpp"
#include "export/JobSteps.hpp"
#include "export/Measures.hpp"
#include "export/PieceList.hpp"
#include "export/SetUp.hpp"
#include "export/SvgFile.hpp"
#include "findings/WireList.hpp"

namespace sagitta {
namespace {

std::vector<JobSetUp> job_setups(const ReadyBoard& ready) {
  std::vector<JobSetUp> list;
  const Drawing drawing = drawing_of(ready.board(), ready.layout, inlay_outlines(ready.inlays));
  for (const SetUp& setup : setups_of(ready.board(), ready.layout)) {
    JobSetUp own;
    own.title = "Set-up " + std::to_string(setup.number) + ": " + setup.name;
    own.folder = setup.folder;
    own.notes = setup_notes(ready.board(), ready.layout, setup);
    own.notes.push_back("Clamp back within " + measure(ready.board(), setup.reclamp_error) + " of where it lay.");
    own.hold_down = svg_text(setup_drawing(ready.board(), ready.layout, setup, drawing));
    own.steps = job_steps(ready, setup);
    list.push_back(std::move(own));
  }
  return list;
}

JobTable caliper_checks(const ReadyBoard& ready) {
  const Board& board = ready.board();
  const auto off = [&](double tolerance) { return "+- " + measure(board, tolerance); };
  JobTable table{{"what", "should be", "tolerance", "measured"}, {}};
  const int last = ready.layout.frets.back().fret;
  const bool fan = board.scale.bass.has_value();
  for (const int fret : std::set<int>{1, 7, 12, last}) {
    if (fret > last) continue;
    const FretLine& line = ready.layout.frets[static_cast<std::size_t>(fret)];
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
    table.rows.push_back({"thickness " + where, fixed_measure(board, ready.surface.height(x, y) + board.sanding),
                          off(thickness_tolerance), ""});
  };
  const double heel = ready.layout.edges[1].b.x;
  thickness("in the middle of the nut line", 0, 0);
  thickness("at the edge, at the nut line", 0, ready.layout.half_width(0));
  thickness("in the middle of the heel", heel, 0);
  thickness("at the edge, at the heel", heel, ready.layout.half_width(heel));
  return table;
}

JobTable pieces_of(const ReadyBoard& ready) {
  const Board& board = ready.board();
  JobTable table{{"piece", "fret", "material", "along", "across", "thickness", "pocket"}, {}};
  for (const ListedPiece& listed : piece_list(ready.inlays.pieces)) {
    const Point size = listed.box.high - listed.box.low;
    table.rows.push_back({listed.piece.name, std::to_string(listed.piece.fret), listed.piece.material,
                          fixed_measure(board, size.x), fixed_measure(board, size.y),
                          fixed_measure(board, listed.piece.thickness), fixed_measure(board, listed.piece.depth)});
  }
  return table;
}

JobTable sheets_of(const Board& board) {
  JobTable table{{"sheet of", "length", "width", "thickness"}, {}};
  for (const Sheet& sheet : board.sheets)
    table.rows.push_back({sheet.material, fixed_measure(board, sheet.length), fixed_measure(board, sheet.width),
                          fixed_measure(board, sheet.thickness)});
  return table;
}

JobTable wire_of(const ReadyBoard& ready) {
  const Board& board = ready.board();
  JobTable table{{"fret", "cut", "bend to radius", "nip bass", "nip treble", "tang that stays"}, {}};
  const std::vector<WirePiece> list = wire_list(board, ready.layout, ready.surface);
  for (const WirePiece& piece : list)
    table.rows.push_back({std::to_string(piece.fret), fixed_measure(board, piece.cut),
                          piece.bend_radius ? measure(board, *piece.bend_radius) : "straight",
                          fixed_measure(board, piece.nip_bass), fixed_measure(board, piece.nip_treble),
                          fixed_measure(board, piece.tang)});
  if (!list.empty()) table.rows.push_back({"all", fixed_measure(board, total_wire(list)), "", "", "", ""});
  return table;
}

}  // namespace

JobSheet job_sheet(const ReadyBoard& ready, const std::vector<Finding>& findings) {
  JobSheet sheet;
  sheet.title = shown_name(ready.board()) + ", job sheet";
  sheet.units = unit_word(ready.board());
  sheet.setups = job_setups(ready);
  sheet.checks = caliper_checks(ready);
  sheet.pieces = pieces_of(ready);
  sheet.sheets = sheets_of(ready.board());
  sheet.wire = wire_of(ready);
  for (const Finding& finding : findings) {
    const bool caution = finding.name.starts_with("caution-");
    const std::string text = finding.message + (finding.suggestion.empty() ? "" : ": " + finding.suggestion);
    if (caution)
      sheet.cautions.push_back(text);
    else
      sheet.findings.push_back(std::string(severity_name(finding.severity)) + ", " + finding.feature + ": " + text);
  }
  return sheet;
}

}  // namespace sagitta
