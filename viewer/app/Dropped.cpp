#include "app/Dropped.hpp"

#include <algorithm>
#include <array>
#include <cctype>

#include "app/Drawings.hpp"
#include "app/DropPlace.hpp"
#include "app/Files.hpp"
#include "decisions/DecisionsPanel.hpp"
#include "document/Beside.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

std::string ending_of(const fs::path& path) {
  std::string ending = path.extension().string();
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return ending;
}

template <std::size_t N>
bool is_one_of(const std::string& ending, const std::array<std::string_view, N>& endings) {
  return std::find(endings.begin(), endings.end(), ending) != endings.end();
}

constexpr std::array<std::string_view, 8> pixels{".png", ".jpg", ".jpeg", ".gif", ".bmp", ".webp", ".tif", ".tiff"};
constexpr std::array<std::string_view, 4> pages{".pdf", ".ps", ".eps", ".ai"};
constexpr std::array<std::string_view, 2> steps{".step", ".stp"};

void take_neck(Desk& desk, const fs::path& path) {
  const std::string file = beside_board(desk, path);
  if (file.empty()) return;
  Board draft = desk.document.board();
  if (!draft.neck) draft.neck = Neck();
  draft.neck->file = file;
  draft.neck->file_nut.reset(), draft.neck->file_heel.reset();
  desk.document.change(std::move(draft), "Neck's file " + file);
  reveal_key(desk.ui, desk.view, desk.forms.rows, "neck.file");
  desk.view.say(file + " is the neck's file; where its glue face is found stands at the right, below the figures.");
}

}  // namespace

void take_dropped(Desk& desk, const fs::path& path) {
  const std::string ending = ending_of(path), name = path.filename().string();
  if (is_drawing(path)) {
    desk.forms.placing = static_cast<int>(desk.document.board().inlays.size());
    place_drawing(desk, path, place_at_pointer(desk));
    return;
  }
  if (ending == ".toml") return when_settled(desk, asked::OpenBoard{path});
  if (is_one_of(ending, steps)) return take_neck(desk, path);
  const std::string wanted = " Boards are .toml files, drawings .svg or .dxf, a neck .step.";
  if (is_one_of(ending, pixels))
    return desk.view.fail(name +
                              " is a picture made of pixels. An inlay is cut along outlines: draw over it in a "
                              "drawing program and save that as SVG or DXF.",
                          "Choose a drawing", "drawing");
  if (is_one_of(ending, pages))
    return desk.view.fail(name + " is a page. Open it in a drawing program and save its outlines as SVG or DXF.",
                          "Choose a drawing", "drawing");
  desk.view.fail(name + " is of a kind that the window does not take." + wanted);
}

}  // namespace sagitta::viewer
