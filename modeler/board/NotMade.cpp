/// What a board file can say and this version does not make yet: refused, so that nothing is silently left out.

#include "board/Reading.hpp"

namespace sagitta {
namespace {

constexpr std::string_view tables_not_made[] = {"tongue", "scallop", "edges", "cuts", "height", "notes"};
constexpr std::string_view keys_not_made[] = {"board.ends_cut_slots",
                                              "wire.barb_width",
                                              "wire.end_bevel",
                                              "slots.line_material",
                                              "slots.line_thickness",
                                              "side_dots.edge",
                                              "side_dots.in",
                                              "binding.lines",
                                              "binding.line_materials",
                                              "blank.grain",
                                              "work.thickness_to",
                                              "neck.depth_first",
                                              "neck.depth_twelfth",
                                              "neck.angle",
                                              "neck.joint",
                                              "neck.allowance",
                                              "neck.file_nut",
                                              "neck.file_heel",
                                              "measured.blank_thickness",
                                              "measured.tape",
                                              "measured.slot_width",
                                              "measured.pocket_depths",
                                              "measured.piece_thickness",
                                              "measured.widths",
                                              "measured.thickness",
                                              "measured.done",
                                              "measured.chips",
                                              "measured.serial"};
constexpr std::string_view sheet_keys_not_made[] = {"zero", "margin", "clamp", "hold", "skin", "face"};
constexpr std::string_view material_keys_not_made[] = {"movement_radial", "movement_tangential", "modulus"};

void refuse(Reading& reading, const std::string& key) {
  if (reading.given(key))
    reading.report_value(FaultCode::not_made, key, "this version of Sagitta reads this but does not make it yet",
                         "take it out");
}

/// A value of a key that is made otherwise.
void refuse_value(Reading& reading, const std::string& key, bool not_made) {
  if (not_made) refuse(reading, key);
}

}  // namespace

void check_made(Reading& reading) {
  const Board& board = reading.out.board;
  for (const std::string_view table : tables_not_made) refuse(reading, std::string(table));
  for (const std::string_view key : keys_not_made) refuse(reading, std::string(key));
  for (std::size_t i = 0; i < board.sheets.size(); ++i)
    for (const std::string_view key : sheet_keys_not_made)
      refuse(reading, "sheets[" + std::to_string(i) + "]." + std::string(key));
  for (const auto& [name, material] : board.materials)
    for (const std::string_view key : material_keys_not_made)
      refuse(reading, "materials." + name + "." + std::string(key));
  refuse_value(reading, "board.heel", board.board.heel == Heel::slant || board.board.heel == Heel::drawn);
  refuse_value(reading, "scale.frets", board.scale.frets == 0 && reading.good("scale.frets"));
  refuse_value(reading, "slots.cut", board.slots.cut && *board.slots.cut != SlotCut::all);
  refuse_value(reading, "nut.floor", board.nut.floor == NutFloor::arc);
  refuse_value(reading, "work.order", !board.order.empty() && board.order[0] == Operation::thickness);
}

}  // namespace sagitta
