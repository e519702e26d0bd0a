#include "decisions/Decisions.hpp"

#include <cctype>

#include "board/Fields.hpp"

namespace sagitta::viewer {

namespace {

using L = DecisionLine;
using B = DecisionBlock;

constexpr L scale_lines[] = {{"scale.length", "Scale length"},
                             {"scale.bass", "Bass scale"},
                             {"scale.treble", "Treble scale"},
                             {"scale.square_fret", "Square fret"},
                             {"scale.frets", "Frets"},
                             {"scale.steps_per_octave", "Steps in an octave"},
                             {"scale.cents", "Cents of each fret"},
                             {"scale.zero_fret", "Zero fret"}};
constexpr L name_lines[] = {{"name", "Name of the board"}, {"hand", "Player's hand"}, {"units", "Units of the file"}};
constexpr B scale_blocks[] = {{"scale", "", scale_lines}, {"", "The board as a whole", name_lines}};

constexpr L string_lines[] = {{"strings.count", "Strings"},
                              {"strings.nut_spread", "Spread at the nut"},
                              {"strings.saddle_spread", "Spread at the saddle"},
                              {"strings.spacing", "Spacing"},
                              {"strings.gauges", "Gauges, bass first"},
                              {"strings.course", "Strings in a course"},
                              {"strings.course_gap", "Apart in a course"}};
constexpr B string_blocks[] = {{"strings", "", string_lines}};

constexpr L shape_lines[] = {{"board.thickness", "Thickness"},
                             {"board.edge_margin", "String to edge"},
                             {"board.nut_margin", "String to edge, nut"},
                             {"board.heel_margin", "String to edge, heel"},
                             {"board.nut_width", "Nut width"},
                             {"board.heel_width", "Heel width"},
                             {"board.width_at_fret", "Width at a fret"},
                             {"board.behind_nut", "Behind the nut"},
                             {"board.past_last_fret", "Past the last fret"},
                             {"board.heel", "Heel end"},
                             {"board.heel_arc_radius", "Heel arc radius"},
                             {"board.heel_angle", "Heel angle"},
                             {"board.heel_file", "Heel drawing"},
                             {"board.ends_cut_slots", "Heel end cuts slots"},
                             {"board.corner_radius", "Corner radius"}};
constexpr L tongue_lines[] = {{"tongue.frets", "Frets on the tongue"},
                              {"tongue.strings", "Strings over the tongue"},
                              {"tongue.margin", "String to its bass side"},
                              {"tongue.past_last_fret", "Past its last fret"},
                              {"tongue.corner_radius", "Radius of its corners"}};
constexpr L binding_lines[] = {{"binding.width", "Binding width"},
                               {"binding.height", "Binding height"},
                               {"binding.lines", "Lines beside it"},
                               {"binding.line_materials", "Materials of the lines"}};
constexpr L finish_lines[] = {{"finish.sanding", "Sanding allowance"}};
constexpr B shape_blocks[] = {{"board", "", shape_lines},
                              {"tongue", "Tongue", tongue_lines},
                              {"binding", "Binding", binding_lines},
                              {"finish", "Finish", finish_lines}};

constexpr L surface_lines[] = {{"surface.profile", "Profile"},
                               {"surface.radius_at_nut", "Radius at the nut"},
                               {"surface.radius_at_heel", "Radius at the heel"},
                               {"surface.heel_at", "Heel radius at"},
                               {"surface.fall_from_fret", "Fall-away from fret"},
                               {"surface.fall", "Fall at the heel end"}};
constexpr L scallop_lines[] = {{"scallop.from_fret", "Scalloped from slot"},
                               {"scallop.to_fret", "Scalloped to slot"},
                               {"scallop.depth", "Scallop depth"},
                               {"scallop.land", "Land beside a slot"}};
constexpr L edge_lines[] = {{"edges.roll", "Roll radius"},
                            {"edges.bevel", "Bevel width"},
                            {"edges.bevel_angle", "Bevel angle"},
                            {"edges.stage", "Edges worked by"}};
constexpr B surface_blocks[] = {{"surface", "", surface_lines},
                                {"scallop", "Scalloped spaces", scallop_lines},
                                {"edges", "Rolled or bevelled edges", edge_lines}};

constexpr L nut_lines[] = {
    {"nut.seat", "Nut seat"},    {"nut.width", "Nut thickness"},       {"nut.depth", "Seat depth"},
    {"nut.floor", "Seat floor"}, {"nut.compensation", "Compensation"}, {"nut.distance", "Behind the zero fret"}};
constexpr L wire_lines[] = {{"wire.tang_depth", "Tang depth"},          {"wire.tang_width", "Tang width"},
                            {"wire.barb_width", "Tang over its barbs"}, {"wire.crown_width", "Crown width"},
                            {"wire.crown_height", "Crown height"},      {"wire.overhang", "Wire over each edge"},
                            {"wire.end_bevel", "Bevel of the ends"}};
constexpr L slot_lines[] = {{"slots.width", "Slot width"},           {"slots.depth", "Slot depth"},
                            {"slots.floor", "Slot floor"},           {"slots.ends", "Slot ends"},
                            {"slots.edge_left", "Left at the edge"}, {"slots.cut", "Slots are cut"},
                            {"slots.line_material", "Strips of"},    {"slots.line_thickness", "Strip thickness"}};
constexpr B nut_blocks[] = {
    {"nut", "Nut", nut_lines}, {"wire", "Fret wire", wire_lines}, {"slots", "Slots", slot_lines}};

constexpr L inlay_lines[] = {{"inlays.shape", "Shape"},
                             {"inlays.frets", "At frets"},
                             {"inlays.double_frets", "Pairs at frets"},
                             {"inlays.spread", "Pair spread"},
                             {"inlays.diameter", "Diameter"},
                             {"inlays.along", "Along the board"},
                             {"inlays.across", "Across the board"},
                             {"inlays.across_nut", "Across, nut side"},
                             {"inlays.across_heel", "Across, heel side"},
                             {"inlays.file", "Drawing"},
                             {"inlays.sizes", "Size at each fret"},
                             {"inlays.edge_left", "Kept from the edge"},
                             {"inlays.shift_along", "Shift along"},
                             {"inlays.shift_across", "Shift across"},
                             {"inlays.turn", "Turn"},
                             {"inlays.depth", "Pocket depth"},
                             {"inlays.piece_thickness", "Piece thickness"},
                             {"inlays.clearance", "Clearance"},
                             {"inlays.material", "Material"}};
constexpr L side_lines[] = {{"side_dots.frets", "Dots at frets"}, {"side_dots.double_frets", "Pairs at frets"},
                            {"side_dots.spread", "Pair spread"},  {"side_dots.diameter", "Dot diameter"},
                            {"side_dots.depth", "Dot depth"},     {"side_dots.edge", "In the edge"},
                            {"side_dots.in", "Drilled into"}};
constexpr B inlay_blocks[] = {{"inlays", "Inlay", inlay_lines}, {"side_dots", "Side dots", side_lines}};

constexpr L blank_lines[] = {{"blank.material", "Wood"},     {"blank.length", "Blank length"},
                             {"blank.width", "Blank width"}, {"blank.thickness", "Blank thickness"},
                             {"blank.grain", "Sawn"},        {"blank.at", "Nut line in the blank"}};
constexpr L pin_lines[] = {{"pins.diameter", "Pin diameter"}, {"pins.depth", "Pin depth"}, {"pins.at", "Pin places"}};
constexpr L cut_lines[] = {
    {"cuts.name", "Name"},         {"cuts.from", "Cut from"},         {"cuts.shape", "Shape"},
    {"cuts.diameter", "Diameter"}, {"cuts.along", "Along the board"}, {"cuts.across", "Across the board"},
    {"cuts.file", "Drawing"},      {"cuts.at", "Middle of the cut"},  {"cuts.turn", "Turn"},
    {"cuts.depth", "Depth"}};
constexpr L work_lines[] = {{"work.order", "Order of work"}, {"work.thickness_to", "Milled flat to"}};
constexpr L setup_lines[] = {{"setups.name", "Name"},
                             {"setups.operations", "Cuts"},
                             {"setups.zero", "Zero at"},
                             {"setups.z_zero", "Height zero"},
                             {"setups.tape", "Tape under the blank"},
                             {"setups.reclamp_error", "Reclamping error"}};
constexpr B blank_blocks[] = {{"blank", "", blank_lines},
                              {"pins", "Locating pins", pin_lines},
                              {"cuts", "Cut", cut_lines},
                              {"work", "Work", work_lines},
                              {"setups", "Set-up", setup_lines}};

constexpr L cutter_lines[] = {{"cutters.name", "Name"},
                              {"cutters.use", "Used for"},
                              {"cutters.shape", "Tip"},
                              {"cutters.diameter", "Diameter"},
                              {"cutters.measured_cut", "Measured cut"},
                              {"cutters.runout", "Runout"},
                              {"cutters.cutting_length", "Cutting length"},
                              {"cutters.flutes", "Flutes"},
                              {"cutters.rpm", "Speed"},
                              {"cutters.feed", "Feed"},
                              {"cutters.pass_depth", "Depth of a pass"}};
constexpr L sheet_lines[] = {{"sheets.material", "Material"},
                             {"sheets.length", "Length"},
                             {"sheets.width", "Width"},
                             {"sheets.thickness", "Thickness"},
                             {"sheets.pattern", "Figure runs"},
                             {"sheets.zero", "Zero at"},
                             {"sheets.margin", "Free along the sides"},
                             {"sheets.clamp", "Free for clamps at the ends"},
                             {"sheets.hold", "Held by"},
                             {"sheets.skin", "Skin left"},
                             {"sheets.face", "Face lies"}};
constexpr L material_lines[] = {{"materials.kind", "Kind"},
                                {"materials.colour", "Colour"},
                                {"materials.density", "Density"},
                                {"materials.movement_radial", "Moves, radially"},
                                {"materials.movement_tangential", "Moves, tangentially"},
                                {"materials.modulus", "Modulus of elasticity"}};
constexpr B cutter_blocks[] = {
    {"cutters", "Cutter", cutter_lines}, {"sheets", "Sheet", sheet_lines}, {"materials", "Material", material_lines}};

constexpr L neck_lines[] = {{"neck.state", "Neck is"},
                            {"neck.trim", "To trim, each side"},
                            {"neck.nut_width", "Width at the nut"},
                            {"neck.body_width", "Width at the body"},
                            {"neck.body_at", "Body width at"},
                            {"neck.joint_fret", "Joint at fret"},
                            {"neck.channel_width", "Rod channel width"},
                            {"neck.channel_depth", "Rod channel depth"},
                            {"neck.channel_from", "Channel from"},
                            {"neck.channel_to", "Channel to"},
                            {"neck.depth_first", "Depth at fret 1"},
                            {"neck.depth_twelfth", "Depth at fret 12"},
                            {"neck.angle", "Neck angle"},
                            {"neck.joint", "Joint"},
                            {"neck.allowance", "Neck wider, each side"},
                            {"neck.limit", "Board may reach"},
                            {"neck.file", "Neck's STEP file"},
                            {"neck.file_nut", "Nut in the file"},
                            {"neck.file_heel", "Heel end in the file"}};
constexpr L height_lines[] = {{"height.nut", "String at the nut"},
                              {"height.action", "Action"},
                              {"height.action_fret", "Action at fret"},
                              {"height.relief", "Relief"},
                              {"height.relief_fret", "Relief at fret"},
                              {"height.bridge", "Saddle over the body"},
                              {"height.body_step", "Body under the glue face"}};
constexpr L measured_lines[] = {{"measured.serial", "Serial number"},
                                {"measured.done", "Cut already"},
                                {"measured.blank_thickness", "Blank as measured"},
                                {"measured.tape", "Tape as measured"},
                                {"measured.pocket_depths", "Pockets as cut"},
                                {"measured.piece_thickness", "Pieces as cut"},
                                {"measured.thickness", "Thickness as cut"},
                                {"measured.slots", "Slots after cutting"},
                                {"measured.slot_width", "Slot width as cut"},
                                {"measured.widths", "Widths as cut"},
                                {"measured.chips", "Chips"}};
constexpr L note_lines[] = {{"notes.text", "Text"}, {"notes.finding", "On the finding"}, {"notes.by", "Written by"}};
constexpr B neck_blocks[] = {{"neck", "Fit to a neck", neck_lines},
                             {"height", "String heights", height_lines},
                             {"measured", "Measured", measured_lines},
                             {"notes", "Note", note_lines}};

constexpr DecisionGroup groups[] = {
    {"Scale and frets", scale_blocks},   {"Strings", string_blocks},    {"Board", shape_blocks},
    {"Surface", surface_blocks},         {"Nut and slots", nut_blocks}, {"Inlays and dots", inlay_blocks},
    {"Blank and set-ups", blank_blocks}, {"Cutters", cutter_blocks},    {"Neck", neck_blocks}};

constexpr KeyWithoutRow without_row[] = {
    {"format", "there is one version of the file format; the reader checks it and the writer writes it"},
    {"base", "a board that was opened has what its base says merged in; the file keeps the line"},
    {"inlays.colours", "each colour of the drawing has a row of its own below its inlay, in ArtworkRows"}};

std::string table_of(const std::string& plain) {
  const auto dot = plain.find('.');
  return dot == plain.npos ? "" : plain.substr(0, dot);
}

}  // namespace

std::span<const DecisionGroup> decision_groups() { return groups; }

std::span<const KeyWithoutRow> keys_without_row() { return without_row; }

std::string plain_key(const std::string& key) {
  if (const Field* field = find_field(key)) return field->dotted();
  std::string plain;
  bool inside = false;
  for (const char c : key) {
    if (c == '[') inside = true;
    if (!inside) plain += c;
    if (c == ']') inside = false;
  }
  return plain;
}

int group_of_key(const std::string& key) {
  const std::string plain = plain_key(key), table = table_of(plain);
  int by_table = -1;
  for (int g = 0; g < static_cast<int>(std::size(groups)); ++g)
    for (const DecisionBlock& block : groups[g].blocks) {
      for (const DecisionLine& line : block.lines)
        if (line.key == plain) return g;
      if (!block.table.empty() && (block.table == table || block.table == plain)) by_table = g;
    }
  return by_table;
}

std::string label_of_key(const std::string& key) {
  const std::string plain = plain_key(key);
  for (const DecisionGroup& group : groups)
    for (const DecisionBlock& block : group.blocks)
      for (const DecisionLine& line : block.lines)
        if (line.key == plain) return std::string(line.label);
  if (plain == "inlays.colours") return "Colours of the drawing";
  return key;
}

std::string with_labels(std::string text) {
  const auto part_of_word = [&](std::size_t at) {
    return at < text.size() && (std::isalnum(static_cast<unsigned char>(text[at])) || text[at] == '_');
  };
  for (const DecisionGroup& group : groups)
    for (const DecisionBlock& block : group.blocks)
      for (const DecisionLine& line : block.lines) {
        if (line.key.find('.') == line.key.npos) continue;
        for (std::size_t at = text.find(line.key); at != text.npos; at = text.find(line.key, at + 1)) {
          if (part_of_word(at + line.key.size()) || (at > 0 && part_of_word(at - 1))) continue;
          std::string label(line.label);
          label[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(label[0])));
          text.replace(at, line.key.size(), label);
        }
      }
  return text;
}

std::string key_to_show(const std::string& key) {
  const std::string plain = plain_key(key);
  const std::string table = table_of(plain).empty() ? plain : table_of(plain);
  const auto index = key.find('[');
  const auto close = key.find(']', index == key.npos ? 0 : index);
  const bool row_first = index != key.npos && key.substr(0, index) == table;
  const std::string row = table + (row_first ? key.substr(index, close - index + 1) : "");
  for (const DecisionGroup& group : groups)
    for (const DecisionBlock& block : group.blocks)
      for (const DecisionLine& line : block.lines)
        if (line.key == plain) {
          const Table* known = find_table(table);
          if (known && known->form == TableForm::named) return key;
          if (!known || known->form != TableForm::many) return plain;
          return (row_first ? row : table + "[0]") + plain.substr(table.size());
        }
  for (const DecisionGroup& group : groups)
    for (const DecisionBlock& block : group.blocks)
      if (!block.table.empty() && block.table == table) {
        const std::string first(block.lines.front().key);
        const Table* known = find_table(table);
        return known && known->form == TableForm::many ? (row_first ? row : table + "[0]") + first.substr(table.size())
                                                       : first;
      }
  return "";
}

}  // namespace sagitta::viewer
