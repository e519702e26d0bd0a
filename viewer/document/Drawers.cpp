#include "document/Drawers.hpp"

#include <algorithm>
#include <cctype>
#include <utility>

#include "board/BoardFile.hpp"
#include "board/Fields.hpp"
#include "board/Writer.hpp"
#include "document/WholeFile.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

/// Letters, digits and hyphens; other bytes as their two digits, so that two names never share a file.
std::string file_name(const std::string& name) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string file;
  for (const char c : name) {
    const auto byte = static_cast<unsigned char>(c);
    if (std::isalnum(byte) || c == '-')
      file += c;
    else if (c == ' ')
      file += '_';
    else
      (file += '%') += {digits[byte >> 4], digits[byte & 15]};
  }
  return file + ".toml";
}

/// A thing in a drawer is a part of a board: keys of other tables may be missing, but what it says must be right.
bool is_grave(FaultCode code) {
  switch (code) {
    case FaultCode::no_such_file:
    case FaultCode::is_folder:
    case FaultCode::no_plain_file:
    case FaultCode::forbidden:
    case FaultCode::unreadable:
    case FaultCode::not_text:
    case FaultCode::not_well_formed:
    case FaultCode::wrong_kind:
    case FaultCode::not_allowed:
    case FaultCode::too_many:
    case FaultCode::unknown_key:
    case FaultCode::named_twice:
      return true;
    default:
      return false;
  }
}

std::string inlays_of_material(const Board& board, const std::string& material) {
  for (const Inlay& inlay : board.inlays)
    if (inlay.material == material)
      return "\n# The clearance that its pieces were settled with.\n[[inlays]]\nmaterial = " +
             sagitta::quoted(material) + "\nclearance = " + length_text(inlay.clearance, board.units) + "\n";
  return "";
}

std::string text_of(Drawer drawer, const std::string& name, const Board& board, std::size_t row) {
  const Table& table = *find_table(table_of(drawer));
  std::string text = "name = " + sagitta::quoted(name) + "\n";
  if (board.units == Units::inch) text += "units = \"in\"\n";
  if (drawer == Drawer::strings)
    return text + "\n[strings]\ngauges = " +
           value_text(*find_field("strings.gauges"), Value(board.strings.gauges), board.units) + "\n";
  text += "\n" + header_text(board, table, row) + row_text(board, table, row);
  if (drawer == Drawer::materials) text += inlays_of_material(board, own_name(board, drawer, row));
  return text;
}

bool holds_it(const Board& board, Drawer drawer) {
  if (drawer == Drawer::wire) return true;
  if (drawer == Drawer::strings) return !board.strings.gauges.empty();
  return row_count(board, *find_table(table_of(drawer))) > 0;
}

}  // namespace

std::string_view table_of(Drawer drawer) {
  constexpr std::array<std::string_view, all_drawers.size()> names{"wire", "strings", "cutters", "materials", "sheets"};
  return names[static_cast<std::size_t>(drawer)];
}

const std::vector<DrawerItem>& Drawers::items(Drawer drawer) {
  Read& read = read_at(drawer);
  if (std::exchange(read.done, true) || folder_.empty()) return read.items;
  std::error_code trouble;
  for (fs::directory_iterator it(place(drawer), trouble), end; !trouble && it != end; it.increment(trouble)) {
    if (it->path().extension() != ".toml") continue;
    BoardFile file = read_board(it->path().string());
    const auto grave = std::find_if(file.problems.begin(), file.problems.end(),
                                    [](const Problem& problem) { return is_grave(problem.code); });
    const std::string name = file.board.name.empty() ? it->path().stem().string() : file.board.name;
    if (grave != file.problems.end())
      read.troubles.push_back(it->path().string() + ", line " + std::to_string(grave->line) + ": " + grave->message);
    else if (!holds_it(file.board, drawer))
      read.troubles.push_back(it->path().string() + " has no [" + std::string(table_of(drawer)) + "].");
    else
      read.items.push_back({name, it->path(), std::move(file.board)});
  }
  std::sort(read.items.begin(), read.items.end(),
            [](const DrawerItem& a, const DrawerItem& b) { return a.name < b.name; });
  return read.items;
}

std::string Drawers::keep(Drawer drawer, const std::string& name, const Board& board, std::size_t row) {
  if (folder_.empty()) return "There is no folder to keep it in.";
  if (name.empty()) return "Give it a name first.";
  std::error_code trouble;
  fs::create_directories(place(drawer), trouble);
  if (trouble) return place(drawer).string() + " cannot be made: " + trouble.message() + ".";
  const auto same = std::find_if(items(drawer).begin(), items(drawer).end(),
                                 [&](const DrawerItem& item) { return item.name == name; });
  const fs::path file = same == items(drawer).end() ? place(drawer) / file_name(name) : same->file;
  const std::string why = write_whole(file, text_of(drawer, name, board, row));
  read_at(drawer) = {};
  return why;
}

std::string Drawers::forget(Drawer drawer, const std::string& name) {
  for (const DrawerItem& item : items(drawer)) {
    if (item.name != name) continue;
    std::error_code trouble;
    fs::remove(item.file, trouble);
    read_at(drawer) = {};
    return trouble ? item.file.string() + " stays: " + trouble.message() + "." : "";
  }
  return "";
}

Board with_item(Board board, Drawer drawer, const DrawerItem& item, std::size_t row) {
  const auto put = [&](auto& rows, const auto& taken) {
    if (row < rows.size())
      rows[row] = taken.front();
    else
      rows.push_back(taken.front());
  };
  switch (drawer) {
    case Drawer::wire:
      board.wire = item.board.wire;
      break;
    case Drawer::strings:
      board.strings.gauges = item.board.strings.gauges;
      break;
    case Drawer::cutters:
      put(board.cutters, item.board.cutters);
      break;
    case Drawer::sheets:
      put(board.sheets, item.board.sheets);
      break;
    case Drawer::materials:
      for (const auto& [name, material] : item.board.materials) board.materials[name] = material;
      for (const Inlay& settled : item.board.inlays)
        for (Inlay& inlay : board.inlays)
          if (inlay.material == settled.material) inlay.clearance = settled.clearance;
      break;
  }
  return board;
}

bool fits(const Board& board, Drawer drawer, const DrawerItem& item) {
  return drawer != Drawer::strings || static_cast<int>(item.board.strings.gauges.size()) == board.strings.count;
}

std::string own_name(const Board& board, Drawer drawer, std::size_t row) {
  if (drawer == Drawer::cutters && row < board.cutters.size()) return board.cutters[row].name;
  if (drawer == Drawer::sheets && row < board.sheets.size()) return board.sheets[row].material;
  if (drawer == Drawer::materials && row < board.materials.size())
    return std::next(board.materials.begin(), static_cast<std::ptrdiff_t>(row))->first;
  return "";
}

}  // namespace sagitta::viewer
