#include "package/BoardSources.hpp"

#include <filesystem>

#include "artwork/ReadArtwork.hpp"
#include "board/InputPath.hpp"
#include "board/ShapeKeys.hpp"
#include "files/ReadFile.hpp"
#include "folder/Folder.hpp"
#include "input/NeckProcess.hpp"

namespace fs = std::filesystem;

namespace sagitta {
namespace {

class Copies {
 public:
  explicit Copies(const Board& board) { found_.board = board; }

  BoardSources take() {
    Board& board = found_.board;
    for (Inlay& inlay : board.inlays)
      if (takes(inlay, "file")) inlay.file = drawing(inlay.file);
    for (Cut& cut : board.cuts)
      if (cut.shape == CutShape::drawn) cut.file = drawing(cut.file);
    if (board.board.heel == Heel::drawn) board.board.heel_file = drawing(board.board.heel_file);
    if (board.neck && !board.neck->file.empty()) board.neck->file = neck(board.neck->file);
    return std::move(found_);
  }

 private:
  fs::path whole(const std::string& file) const { return (fs::path(found_.board.folder) / file).lexically_normal(); }

  std::string drawing(const std::string& file) {
    const auto bytes = read_file(whole(file), largest_drawing);
    if (const auto* why = std::get_if<ReadFailure>(&bytes))
      throw FolderError("the drawing " + whole(file).string() + " can no longer be read: it " + reason(*why));
    return keep(file, std::get<std::string>(bytes));
  }

  std::string neck(const std::string& file) {
    const auto read = read_file(whole(file), NeckLimits().bytes);
    const auto* bytes = std::get_if<std::string>(&read);
    return bytes && bytes->starts_with("ISO-10303-21") ? keep(file, *bytes) : file;
  }

  /// A name that leads out of the folder, or a whole path, becomes one below "outside".
  std::string keep(const std::string& file, const std::string& bytes) {
    const fs::path plain = fs::path(file).lexically_normal();
    const bool out = plain.is_absolute() || *plain.begin() == "..";
    std::string name = out ? ("outside" / plain.filename()).string() : file;
    const auto place = [&] { return (source_folder / fs::path(name).lexically_normal()).string(); };
    for (int i = 2; found_.copies.contains(place()) && found_.copies[place()] != bytes; ++i)
      name = "outside/" + std::to_string(i) + "-" + plain.filename().string();
    found_.copies[place()] = bytes;
    return name;
  }

  BoardSources found_;
};

}  // namespace

std::vector<fs::path> inputs_of(const BoardFile& file) {
  const fs::path folder = file.board.folder;
  std::vector<fs::path> inputs(file.read_from.begin(), file.read_from.end());
  for (const Inlay& inlay : file.board.inlays)
    if (!inlay.file.empty()) inputs.push_back(folder / inlay.file);
  for (const Cut& cut : file.board.cuts)
    if (!cut.file.empty()) inputs.push_back(folder / cut.file);
  if (!file.board.board.heel_file.empty()) inputs.push_back(folder / file.board.board.heel_file);
  if (file.board.neck && !file.board.neck->file.empty()) inputs.push_back(folder / file.board.neck->file);
  return inputs;
}

BoardSources sources_of(const Board& board) { return Copies(board).take(); }

}  // namespace sagitta
