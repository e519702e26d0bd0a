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

void add_once(std::vector<std::string>& files, const std::string& file) {
  if (!file.empty() && std::find(files.begin(), files.end(), file) == files.end()) files.push_back(file);
}

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

std::vector<std::string> drawings_of(const Board& board) {
  std::vector<std::string> files;
  for (const Inlay& inlay : board.inlays) add_once(files, inlay.file);
  for (const Cut& cut : board.cuts) add_once(files, cut.file);
  add_once(files, board.board.heel_file);
  return files;
}

std::vector<std::string> files_beside(const Board& board) {
  std::vector<std::string> files = drawings_of(board);
  if (board.neck) add_once(files, board.neck->file);
  return files;
}

bool same_bytes(const fs::path& a, const fs::path& b) {
  const auto one = read_file(a, largest_taken), other = read_file(b, largest_taken);
  return std::holds_alternative<std::string>(one) && std::holds_alternative<std::string>(other) &&
         std::get<std::string>(one) == std::get<std::string>(other);
}

std::string name_taken_in(const Board& board, const fs::path& to) {
  std::error_code unknown;
  if (board.folder.empty() || fs::equivalent(board.folder, to, unknown)) return "";
  for (const std::string& file : files_beside(board)) {
    const fs::path from = fs::path(board.folder) / file, there = to / file;
    if (!fs::path(file).is_absolute() && fs::exists(from, unknown) && fs::exists(there, unknown) &&
        !same_bytes(from, there))
      return file;
  }
  return "";
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
