#include "app/Drawings.hpp"

#include <algorithm>

#include "artwork/ReadArtwork.hpp"
#include "decisions/ArtworkRows.hpp"
#include "decisions/DecisionsPanel.hpp"
#include "document/WholeFile.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

/// Both can be read and hold the same bytes.
bool same_bytes(const fs::path& a, const fs::path& b) {
  const auto one = read_whole(a), other = read_whole(b);
  return std::holds_alternative<std::string>(one) && std::holds_alternative<std::string>(other) &&
         std::get<std::string>(one) == std::get<std::string>(other);
}

/// Every colour of the drawing with its material: that of before where there was one.
std::map<std::string, std::string> materials_of(const Artwork& artwork, const Inlay& inlay) {
  std::map<std::string, std::string> colours;
  for (const DrawnRegion& region : artwork.regions) {
    const auto before = inlay.colours.find(region.colour);
    colours[region.colour] = before == inlay.colours.end() ? inlay.material : before->second;
  }
  return colours.size() > 1 ? colours : std::map<std::string, std::string>();
}

}  // namespace

std::string beside_board(Desk& desk, const fs::path& path) {
  std::error_code trouble;
  const fs::path folder = desk.document.board().folder;
  const fs::path relative = fs::proximate(fs::absolute(path, trouble), fs::absolute(folder, trouble), trouble);
  if (!trouble && !relative.empty() && *relative.begin() != fs::path("..") && relative.is_relative())
    return relative.string();
  const fs::path there = folder / path.filename();
  if (fs::exists(there, trouble)) {
    if (same_bytes(path, there)) return path.filename().string();  // it was taken before
    desk.view.fail("Another " + path.filename().string() + " lies beside the board: rename one of them first.",
                   "Choose another drawing", "drawing");
    return "";
  }
  if (fs::copy_file(path, there, trouble)) return path.filename().string();
  desk.view.fail(path.string() + " could not be copied beside the board: " + trouble.message() + ".");
  return "";
}

bool place_drawing(Desk& desk, const fs::path& path) {
  desk.view.dialog = Dialog::none;
  if (desk.document.path().empty())
    return desk.view.fail("Save the board first: its drawings lie in its folder.", "Save", "save"), false;
  const auto read = read_artwork(path.string());
  if (const auto* faults = std::get_if<Faults>(&read))
    return desk.view.fail(path.filename().string() + ": " + faults->front().message, "Choose another drawing",
                          "drawing"),
           false;
  const Artwork& artwork = std::get<Artwork>(read);
  const std::string file = beside_board(desk, path);
  if (file.empty()) return false;
  Board draft = desk.document.board();
  const auto index = std::min(static_cast<std::size_t>(std::max(desk.forms.placing, 0)), draft.inlays.size());
  if (index == draft.inlays.size()) {
    draft.inlays.emplace_back();
    draft.inlays.back().depth = 1.5;
    draft.inlays.back().frets = {std::min(draft.scale.frets, 12)};
  }
  Inlay& inlay = draft.inlays[index];
  inlay.shape = InlayShape::artwork, inlay.file = file, inlay.diameter = Inlay().diameter;
  inlay.across_nut.reset(), inlay.across_heel.reset();
  if (!inlay.along && !inlay.across) inlay.across = std::round(draft.strings.nut_spread / 2);
  if (inlay.along && inlay.across) inlay.along.reset();
  inlay.colours = materials_of(artwork, inlay);
  for (const auto& [colour, material] : inlay.colours) need_sheet(draft, material, piece_thickness(inlay));
  desk.document.change(std::move(draft), "Drawing " + file);
  lead_to_key(desk.ui, desk.view, desk.forms.rows, "inlays[" + std::to_string(index) + "].frets");
  desk.view.say(file + (artwork.notes.empty() ? " lies on the board; drag it to its place."
                                              : ": " + artwork.notes.front().message));
  return true;
}

}  // namespace sagitta::viewer
