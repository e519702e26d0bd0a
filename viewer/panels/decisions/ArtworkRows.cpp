#include "decisions/ArtworkRows.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <map>
#include <set>

#include "artwork/Colour.hpp"
#include "artwork/ColourMaterials.hpp"
#include "board/ShapeKeys.hpp"

namespace sagitta::viewer {

namespace {

/// The inlay's drawing as the newest model has it, else as one before had it; null where it was never read.
const Artwork* drawing_of(const Results& results, const Inlay& inlay) {
  for (const ModelPtr& model : {results.model, results.good}) {
    if (!model || !model->fitted) continue;
    const auto drawing = model->fitted->drawings.find(inlay.file);
    if (drawing != model->fitted->drawings.end()) return &drawing->second;
  }
  return nullptr;
}

/// A colour as the builder wrote it, as drawings have it.
std::string plain(const std::string& written) { return read_colour(written).value_or(written); }

/// What does not match between an inlay's materials and the colours of its drawing.
struct Unmatched {
  std::vector<std::string> colours;  ///< of the drawing, without a material
  std::vector<std::string> written;  ///< as the inlay has them, that the drawing has not
};

Unmatched unmatched_of(const Inlay& inlay, const Artwork& artwork) {
  Unmatched found;
  const std::vector<std::string> drawn = colours_of(artwork);
  std::set<std::string> named;
  for (const auto& [written, material] : inlay.colours) {
    named.insert(plain(written));
    if (std::find(drawn.begin(), drawn.end(), plain(written)) == drawn.end()) found.written.push_back(written);
  }
  if (drawn.size() > 1 || !named.empty())
    for (const std::string& colour : drawn)
      if (!named.contains(colour)) found.colours.push_back(colour);
  return found;
}

std::string row_of(std::size_t index) { return "inlays[" + std::to_string(index) + "].colours"; }

/// Room for a swatch; wrapping would take plain spaces away.
const std::string beside_swatch = "\u00a0\u00a0\u00a0\u00a0\u00a0\u00a0\u00a0";

ImU32 ink_of(const std::string& colour) {
  const auto value = static_cast<unsigned>(std::strtoul(colour.c_str() + (colour.empty() ? 0 : 1), nullptr, 16));
  return IM_COL32(value >> 16 & 0xff, value >> 8 & 0xff, value & 0xff, 255);
}

/// What a colour may be cut from: the board's own materials, its sheets', and some that are built in.
std::vector<std::string> choices(const Board& board, const std::string& now) {
  std::vector<std::string> names{"shell", "bone", "brass", "ebony", "maple"};
  const auto add = [&](const std::string& name) {
    if (!name.empty() && std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
  };
  for (const auto& [name, material] : board.materials) add(name);
  for (const Sheet& sheet : board.sheets) add(sheet.material);
  add(now);
  return names;
}

void give_material(Board& draft, std::size_t index, const std::string& colour, const std::string& material) {
  Inlay& inlay = draft.inlays[index];
  inlay.colours[colour] = material;
  need_sheet(draft, material, piece_thickness(inlay));
}

bool draw_colour(Ui& ui, Board& draft, std::size_t index, const std::string& colour) {
  Inlay& inlay = draft.inlays[index];
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float side = ImGui::GetFrameHeight();
  const float room = row_label(ui, beside_swatch + colour);
  ImGui::GetWindowDrawList()->AddRectFilled(ImVec2(corner.x, corner.y + ui.px(4)),
                                            ImVec2(corner.x + side - ui.px(8), corner.y + side - ui.px(4)),
                                            ink_of(colour), ui.px(3));
  const auto found = std::find_if(inlay.colours.begin(), inlay.colours.end(),
                                  [&](const auto& entry) { return plain(entry.first) == colour; });
  const std::string now = found == inlay.colours.end() ? "" : found->second;
  const std::vector<std::string> names = choices(draft, now);
  int chosen = static_cast<int>(std::find(names.begin(), names.end(), now) - names.begin());
  if (now.empty()) chosen = -1;
  ImGui::SetNextItemWidth(room);
  if (!ui.choice(row_of(index) + " " + colour, names, chosen)) return false;
  give_material(draft, index, found == inlay.colours.end() ? colour : found->first,
                names[static_cast<std::size_t>(chosen)]);
  return true;
}

/// The material that most of the inlay's colours are cut from.
std::string usual_material(const Inlay& inlay) {
  std::map<std::string, int> counts;
  for (const auto& [colour, material] : inlay.colours) ++counts[material];
  const auto most =
      std::max_element(counts.begin(), counts.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
  return most == counts.end() ? inlay.material : most->first;
}

/// A button that mends one colour; `name`: what it is called besides its label.
bool mends(Ui& ui, const std::string& colour, const std::string& words, const std::string& label,
           const std::string& name) {
  ImGui::PushID(colour.c_str());
  ui.warning(words);
  const bool pressed = ui.button(label);
  ui.note(name + " " + colour);
  ImGui::PopID();
  return pressed;
}

/// Colours that came and colours that went, one button each.
bool draw_unmatched(Ui& ui, Board& draft, std::size_t index, const Unmatched& unmatched) {
  Inlay& inlay = draft.inlays[index];
  bool changed = false;
  for (const std::string& colour : unmatched.colours) {
    const std::string material = usual_material(inlay);
    if (!mends(ui, colour, "The drawing has " + colour + " and no material is named for it.", "Cut it from " + material,
               row_of(index) + " give"))
      continue;
    give_material(draft, index, colour, material);
    changed = true;
  }
  for (const std::string& written : unmatched.written) {
    if (!mends(ui, written, written + " (" + inlay.colours.at(written) + ") is no colour of the drawing any more.",
               "Take it out", row_of(index) + " drop"))
      continue;
    inlay.colours.erase(written);
    changed = true;
  }
  return changed;
}

}  // namespace

void need_sheet(Board& board, const std::string& material, double thickness) {
  if (board.sheets.empty()) return;
  for (const Sheet& sheet : board.sheets)
    if (sheet.material == material) return;
  Sheet sheet;
  sheet.material = material, sheet.length = 60, sheet.width = 40, sheet.thickness = thickness;
  board.sheets.push_back(sheet);
}

std::string mending_button(const Results& results, const Board& board, std::size_t index) {
  const Inlay& inlay = board.inlays[index];
  const Artwork* artwork = takes(inlay, "file") ? drawing_of(results, inlay) : nullptr;
  if (!artwork) return "";
  const Unmatched unmatched = unmatched_of(inlay, *artwork);
  if (!unmatched.colours.empty()) return row_of(index) + " give " + unmatched.colours.front();
  return unmatched.written.empty() ? "" : row_of(index) + " drop " + unmatched.written.front();
}

Edit draw_artwork_rows(Ui& ui, const Results& results, Board& draft, std::size_t index, Requests& asked) {
  Inlay& inlay = draft.inlays[index];
  if (!takes(inlay, "file")) return Edit::none;
  Edit edit = Edit::none;
  if (const Artwork* artwork = drawing_of(results, inlay)) {
    const std::vector<std::string> colours = colours_of(*artwork);
    const Unmatched unmatched = unmatched_of(inlay, *artwork);
    if (colours.size() > 1)
      for (const std::string& colour : std::set(colours.begin(), colours.end()))
        if (draw_colour(ui, draft, index, colour)) edit = Edit::done;
    if (draw_unmatched(ui, draft, index, unmatched)) edit = Edit::done;
  }
  ImGui::PushID(static_cast<int>(index));
  if (ui.button(inlay.file.empty() ? "Choose a drawing" : "Choose another drawing"))
    asked.push_back(asked::ChooseDrawing{static_cast<int>(index)});
  ImGui::PopID();
  return edit;
}

}  // namespace sagitta::viewer
