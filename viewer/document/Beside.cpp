#include "document/Beside.hpp"

#include <algorithm>

#include "document/WholeFile.hpp"
#include "files/ReadFile.hpp"
#include "files/SystemError.hpp"
#include "files/WriteFile.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t largest_taken = 256U << 20;  ///< bytes

bool stays_inside(const fs::path& path) {
  return path.is_relative() && std::find(path.begin(), path.end(), fs::path("..")) == path.end();
}

}  // namespace

bool is_drawing(const fs::path& path) {
  std::string ending = path.extension().string();
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return ending == ".svg" || ending == ".dxf";
}

std::vector<std::string> files_beside(const Board& board) {
  std::vector<std::string> files;
  const auto add = [&](const std::string& file) {
    if (!file.empty() && std::find(files.begin(), files.end(), file) == files.end()) files.push_back(file);
  };
  for (const Inlay& inlay : board.inlays) add(inlay.file);
  for (const Cut& cut : board.cuts) add(cut.file);
  add(board.board.heel_file);
  if (board.neck) add(board.neck->file);
  return files;
}

std::string take_along(const Board& board, const fs::path& to) {
  std::error_code trouble;
  if (board.folder.empty() || fs::equivalent(board.folder, to, trouble)) return "";
  for (const std::string& file : files_beside(board)) {
    const fs::path from = fs::path(board.folder) / file, there = to / file;
    if (fs::path(file).is_absolute() || !fs::exists(from, trouble) || fs::exists(there, trouble)) continue;
    if (!stays_inside(file)) return file + " was not taken along, because it does not lie beside the board.";
    fs::create_directories(there.parent_path(), trouble);
    const auto bytes = read_file(from, largest_taken);
    if (const auto* failure = std::get_if<ReadFailure>(&bytes))
      return file + " was not taken along: it " + reason(*failure) + ".";
    if (const int wrong = make_file(there, std::get<std::string>(bytes)); wrong != 0)
      return file + " could not be taken along: " + system_reason(wrong) + ".";
  }
  return "";
}

std::string lay_out_drawings(const Preset& preset, const fs::path& folder) {
  std::error_code trouble;
  fs::create_directories(folder, trouble);
  if (trouble)
    return "The drawings of " + std::string(preset.name) + " cannot be kept in " + folder.string() + ": " +
           trouble.message() + ".";
  for (const PresetDrawing& drawing : preset.drawings)
    if (const std::string why = write_whole(folder / drawing.file, drawing.text); !why.empty()) return why;
  return "";
}

}  // namespace sagitta::viewer
