#include "app/Drawings.hpp"

#include <algorithm>
#include <cmath>

#include "app/DropPlace.hpp"
#include "app/Files.hpp"
#include "app/WrongKind.hpp"
#include "artwork/ColourMaterials.hpp"
#include "artwork/ReadArtwork.hpp"
#include "artwork/TrueSize.hpp"
#include "decisions/ArtworkRows.hpp"
#include "decisions/DecisionsPanel.hpp"
#include "document/Beside.hpp"
#include "document/UnsavedFolder.hpp"
#include "files/ReadFile.hpp"
#include "inlay/Flatten.hpp"
#include "overlay/ChosenInlay.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

/// Every colour of the drawing with its material: that of before where there was one.
std::map<std::string, std::string> materials_of(const Artwork& artwork, const Inlay& inlay) {
  std::map<std::string, std::string> colours;
  for (const std::string& colour : colours_of(artwork)) colours[colour] = material_of(inlay, colour);
  return colours.size() > 1 ? colours : std::map<std::string, std::string>();
}

/// A board without a place has its drawings in a folder of the window's own until it is saved. False, with the reason
/// on screen, when there is none to be had.
bool has_folder(Desk& desk) {
  const Document& document = desk.document;
  const fs::path state = state_of(desk);
  if (!document.path().empty() || is_unsaved_folder(state, document.board().folder)) return true;
  const fs::path folder = make_unsaved_folder(state);
  if (folder.empty())
    return desk.view.fail(
               "There is no room for the drawings of an unsaved board in " + state.string() + ": save the board first.",
               "Save", "save"),
           false;
  if (const std::string left = take_along(document.board(), folder); !left.empty()) return desk.view.fail(left), false;
  desk.document.moved_to(folder.string());
  return true;
}

/// A new inlay's size and place: as large as it is drawn, where it was dropped. A drawing that gives no size is half as
/// wide as the strings until the builder says so. True where that is still to be said.
bool lay_down(Desk& desk, Board& board, Inlay& inlay, const fs::path& path, const Artwork& artwork,
              const std::optional<Point>& place) {
  constexpr double shown_parts = 1000;  // of a mm
  inlay.depth = 1.5;
  inlay.frets = {std::min(board.scale.frets, 12)};
  if (place && desk.results.laid_out()) put_at(inlay, *place, board, desk.results.good->prepared->layout());
  const bool sized = says_its_size(path.string()) && !artwork.regions.empty();
  if (!sized) {
    inlay.across = std::round(board.strings.nut_spread / 2);
    return true;
  }
  const Box box = bounds(artwork);
  inlay.along = std::round((box.high.x - box.low.x) * shown_parts) / shown_parts;
  return false;
}

/// The inlay is made from another drawing; its place and its size stay.
void replace_drawing(Board& board, Inlay& inlay) {
  inlay.shape = InlayShape::artwork, inlay.diameter = Inlay().diameter;
  inlay.across_nut.reset(), inlay.across_heel.reset();
  if (!inlay.along && !inlay.across) inlay.across = std::round(board.strings.nut_spread / 2);
  if (inlay.along && inlay.across) inlay.along.reset();
}

}  // namespace

std::string beside_board(Desk& desk, const fs::path& path) {
  if (!has_folder(desk)) return "";
  std::error_code trouble;
  const fs::path folder = desk.document.board().folder;
  const fs::path relative = fs::proximate(fs::absolute(path, trouble), fs::absolute(folder, trouble), trouble);
  if (!trouble && !relative.empty() && *relative.begin() != fs::path("..") && relative.is_relative())
    return relative.string();
  const std::string name = path.filename().string();
  const fs::path there = folder / name;
  if (fs::exists(there, trouble)) {
    if (same_bytes(path, there)) return name;  // it was taken before
    desk.view.fail("Another " + name + " lies beside the board: rename one of them first.", "Choose another drawing",
                   "drawing");
    return "";
  }
  if (!fs::copy_file(path, there, trouble)) {
    desk.view.fail(path.string() + " could not be copied beside the board: " + trouble.message() + ".");
    return "";
  }
  if (auto read = read_file(there, largest_drawing); auto* bytes = std::get_if<std::string>(&read))
    desk.drawings.copied.copied(path, name, std::move(*bytes));
  return name;
}

bool place_drawing(Desk& desk, const fs::path& path, const std::optional<Point>& place) {
  desk.view.dialog = Dialog::none;
  if (const std::string words = wrong_kind_words(path); !words.empty())
    return desk.view.fail(words, "Choose another drawing", "drawing"), false;
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
  const bool another = index == draft.inlays.size();
  if (another) draft.inlays.emplace_back();
  Inlay& inlay = draft.inlays[index];
  const bool unsized = another && lay_down(desk, draft, inlay, path, artwork, place);
  replace_drawing(draft, inlay);
  inlay.file = file;
  inlay.colours = materials_of(artwork, inlay);
  for (const auto& [colour, material] : inlay.colours) need_sheet(draft, material, piece_thickness(inlay));
  desk.document.change(std::move(draft), "Drawing " + file);
  choose_inlay(desk.view, desk.document.board(), desk.results, static_cast<int>(index), std::nullopt);
  const std::string row = "inlays[" + std::to_string(index) + "].";
  if (unsized)
    lead_to_key(desk.ui, desk.view, desk.forms.rows, row + "across");
  else
    reveal_key(desk.ui, desk.view, desk.forms.rows, row + "frets");
  desk.view.say(file + (unsized                  ? " does not say how large it is: type its size across the board."
                        : !artwork.notes.empty() ? ": " + artwork.notes.front().message
                                                 : " lies on the board; drag it to its place."));
  return true;
}

}  // namespace sagitta::viewer
