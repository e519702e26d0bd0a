#include <algorithm>
#include <set>

#include "board/Materials.hpp"
#include "rules/Work.hpp"
#include "wood/WoodFamilies.hpp"

namespace sagitta {
namespace {

const std::string first = "; local rules and trained practice come first";

/// Every material of the board and its pieces.
std::set<std::string> materials_of(const Board& board) {
  std::set<std::string> names{board.blank.material};
  for (const Inlay& inlay : board.inlays) {
    if (inlay.colours.empty()) names.insert(inlay.material);
    for (const auto& [colour, name] : inlay.colours) names.insert(name);
  }
  return names;
}

std::string joined(const std::set<std::string>& names) {
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

std::string dust_words(const Board& board, const std::set<std::string>& names) {
  std::set<MaterialKind> kinds;
  for (const std::string& name : names) kinds.insert(material(board, name).kind);
  std::string text = "machining makes fine dust of " + joined(names);
  if (kinds.count(MaterialKind::wood)) text += "; wood dust harms the lungs, and dark hardwoods irritate skin and eyes";
  if (kinds.count(MaterialKind::shell)) text += "; shell dust is sharp and irritates";
  if (kinds.count(MaterialKind::composite))
    text += "; its resin chars and smells where a cutter rubs, it does not melt";
  if (kinds.count(MaterialKind::plastic)) text += "; plastic melts onto a cutter that rubs, and celluloid catches fire";
  return text;
}

/// Woods and shells of which some species are under trade rules.
bool may_be_covered(const std::string& name) {
  for (const char* word : {"rosewood", "ebony", "mahogany", "abalone", "shell", "pearl"})
    if (name.find(word) != std::string::npos) return true;
  return false;
}

}  // namespace

void judge_cautions(const Subject& subject, Judge& judge) {
  const Board& board = subject.prepared.board();
  const Spot spot{{}, subject.prepared.surface().thickness, {FeatureId::Kind::work}, "the work"};
  const std::set<std::string> names = materials_of(board);
  judge.hold(rule("caution-dust"), static_cast<double>(names.size()), spot, dust_words(board, names) + first,
             "extract at the cutter, wear a mask, and check the limits that hold where you work");
  const std::size_t pieces = subject.prepared.inlays().pieces.size();
  judge.hold(rule("caution-fumes"), static_cast<double>(pieces + (board.binding ? 2 : 0)), spot,
             std::string(pieces == 0   ? "gluing the binding"
                         : pieces == 1 ? "gluing in 1 piece"
                                       : "gluing in " + std::to_string(pieces) + " pieces") +
                 ": adhesive fumes irritate eyes and lungs, and thin glue bonds skin" + first,
             "air the room and wear glasses; read the glue's data sheet");
  judge.hold(rule("caution-small-parts"), static_cast<double>(pieces), spot,
             "pieces cut free on the last pass cannot be clamped and fly" + first,
             "tape them down, or leave tabs or a skin; eye and ear protection, and never leave the machine alone");
  std::set<std::string> covered, unknown;
  for (const std::string& name : names) {
    if (may_be_covered(name)) covered.insert(name);
    if (!material(board, name).known) unknown.insert(name);
  }
  judge.hold(rule("caution-species"), static_cast<double>(covered.size()), spot,
             "some species of " + joined(covered) +
                 " are under trade rules that change; a loose board may not count as a"
                 " finished part" +
                 first,
             "keep the papers, and ask your authority before board or instrument crosses a border");
  judge.hold(rule("unknown-material"), static_cast<double>(unknown.size()), spot,
             "nothing is known of " + joined(unknown) + ": its density and kind are taken as a plain hardwood's",
             "describe it with a table materials.NAME in the board file");
}

}  // namespace sagitta
