#include "app/Dropped.hpp"

#include <algorithm>
#include <array>
#include <cctype>

#include "app/Drawings.hpp"
#include "app/DropPlace.hpp"
#include "app/Files.hpp"
#include "app/WrongKind.hpp"
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
  if (const std::string words = wrong_kind_words(path); !words.empty())
    return desk.view.fail(words, "Choose a drawing", "drawing");
  desk.view.fail(name + " is of a kind that the window does not take." + wanted);
}

}  // namespace sagitta::viewer
