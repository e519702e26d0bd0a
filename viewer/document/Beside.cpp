#include "document/Beside.hpp"

#include <algorithm>

#include "document/WholeFile.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

bool stays_inside(const fs::path& path) {
  return path.is_relative() && std::find(path.begin(), path.end(), fs::path("..")) == path.end();
}

}  // namespace

std::vector<std::string> files_beside(const Board& board) {
  std::vector<std::string> files;
  const auto add = [&](const std::string& file) {
    if (!file.empty() && std::find(files.begin(), files.end(), file) == files.end()) files.push_back(file);
  };
  for (const Inlay& inlay : board.inlays) add(inlay.file);
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
    if (!fs::copy_file(from, there, trouble)) return file + " could not be taken along: " + trouble.message() + ".";
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
    if (const std::string why = write_whole(folder / drawing.file, std::string(drawing.text)); !why.empty()) return why;
  return "";
}

}  // namespace sagitta::viewer
