#include <algorithm>
#include <map>

#include "inlaid/InlayFamilies.hpp"
#include "inlay/Nesting.hpp"
#include "rules/Subject.hpp"

namespace sagitta {
namespace {

/// The sheet of a material that gives the thickest pieces, with its number in the file; none when there is no sheet of
/// it.
struct Thickest {
  double thickness = 0;  ///< of the pieces
  int sheet = -1;
  double skin = 0;  ///< what stays under them
};

double skin_of(const Sheet& sheet) { return sheet.hold == SheetHold::skin ? sheet.skin : 0; }

Thickest thickest_of(const Board& board, const std::string& material) {
  Thickest best;
  for (std::size_t i = 0; i < board.sheets.size(); ++i) {
    const Sheet& sheet = board.sheets[i];
    const double skin = skin_of(sheet);
    if (sheet.material == material && (best.sheet < 0 || sheet.thickness - skin > best.thickness))
      best = {sheet.thickness - skin, static_cast<int>(i), skin};
  }
  return best;
}

std::string listed(const std::vector<const InlayPiece*>& pieces) {
  constexpr std::size_t most = 6;
  std::string text;
  for (std::size_t i = 0; i < std::min(pieces.size(), most); ++i) text += (i ? ", " : "") + pieces[i]->name;
  return pieces.size() > most ? text + " and " + std::to_string(pieces.size() - most) + " more" : text;
}

Spot spot_of(const Subject& subject, const InlayPiece& piece) {
  const Point at = piece.piece.front().front().a;
  return {at, subject.prepared.surface().height(at), id_of(piece), piece.name};
}

/// Sheets that are thinner than what is cut from them.
void judge_thickness(const Subject& subject, Judge& judge) {
  std::map<std::string, const InlayPiece*> thick;  // of each material, the thickest piece
  for (const InlayPiece& piece : subject.prepared.inlays().pieces)
    if (const InlayPiece*& most = thick[piece.material]; !most || piece.thickness > most->thickness) most = &piece;
  const Rule& thin = rule("sheet-too-thin");
  for (const auto& [material, piece] : thick) {
    const Thickest sheet = thickest_of(subject.prepared.board(), material);
    if (sheet.sheet < 0) continue;  // judge_room names the pieces
    const double whole = piece->thickness + sheet.skin;
    judge.hold(thin, sheet.thickness - piece->thickness, spot_of(subject, *piece),
               piece->name + " is cut " + judge.shown(piece->thickness) + " thick, and the thickest sheet of " +
                   material + " has " + judge.shown(sheet.thickness + sheet.skin) +
                   (sheet.skin > 0 ? ", of which " + judge.shown(sheet.skin) + " stay as a skin" : ""),
               "take a sheet at least " + judge.shown(whole) + " thick, or a shallower pocket",
               Fix{"sheets[" + std::to_string(sheet.sheet) + "].thickness", judge.up(whole)});
  }
}

/// Pieces that no sheet has room for.
void judge_room(const Subject& subject, Judge& judge) {
  const auto nesting =
      nest(subject.prepared.inlays().pieces, subject.prepared.board().sheets, nest_rules(subject.prepared.board()));
  std::map<std::string, std::vector<const InlayPiece*>> left;  // by material
  for (const InlayPiece& piece : subject.prepared.inlays().pieces) {
    const Thickest sheet = thickest_of(subject.prepared.board(), piece.material);
    if (sheet.sheet >= 0 && sheet.thickness < piece.thickness) continue;  // judge_thickness says so
    if (std::binary_search(nesting->no_room.begin(), nesting->no_room.end(), piece.name))
      left[piece.material].push_back(&piece);
  }
  for (const auto& [material, pieces] : left) {
    const bool none = thickest_of(subject.prepared.board(), material).sheet < 0;
    judge.hold(rule("no-room-on-sheet"), static_cast<double>(pieces.size()), spot_of(subject, *pieces.front()),
               none ? "there is no sheet of " + material + " for " + listed(pieces)
                    : "the sheets of " + material + " have no room for " + listed(pieces),
               none ? "add a sheet of " + material : "add another sheet of " + material + ", or a larger one");
  }
}

}  // namespace

void judge_sheets(const Subject& subject, Judge& judge) {
  if (subject.prepared.board().sheets.empty()) return;
  judge_thickness(subject, judge);
  judge_room(subject, judge);
}

}  // namespace sagitta
