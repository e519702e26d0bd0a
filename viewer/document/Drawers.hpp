#pragma once

/// The shop's drawers: fret wire, cutters, string sets, materials and sheets by name, kept for all boards in the user's
/// own folder. Each thing is a small TOML file with the tables and keys of a board file.

#include <array>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "board/Board.hpp"

namespace sagitta::viewer {

/// Named after the tables of the board file that they hold rows of.
enum class Drawer { wire, strings, cutters, materials, sheets };
inline constexpr std::array all_drawers{Drawer::wire, Drawer::strings, Drawer::cutters, Drawer::materials,
                                        Drawer::sheets};
/// "wire", "strings", ..: the table, and the folder.
std::string_view table_of(Drawer drawer);

/// A thing in a drawer.
struct DrawerItem {
  std::string name;            ///< as the user gave it
  std::filesystem::path file;  ///< where it is kept
  Board board;                 ///< only the drawer's table counts, and for a material the clearance of its inlays
  friend bool operator==(const DrawerItem&, const DrawerItem&) = default;
};

class Drawers {
 public:
  /// `folder` holds one folder a drawer; "" for drawers that are empty and keep nothing.
  explicit Drawers(std::filesystem::path folder = {}) : folder_(std::move(folder)) {}

  /// In order of name. Read from the disk once and again after each change made here.
  const std::vector<DrawerItem>& items(Drawer drawer);
  /// What lies in the drawer and cannot be used, and why; one a file.
  const std::vector<std::string>& troubles(Drawer drawer) { return items(drawer), read_at(drawer).troubles; }
  /// Keeps a row of the board under a name, in place of what has that name. Returns "" or why it could not be kept.
  std::string keep(Drawer drawer, const std::string& name, const Board& board, std::size_t row);
  /// Takes it out of the drawer. Returns "" or why it stays.
  std::string forget(Drawer drawer, const std::string& name);
  /// Reads everything again when it is next asked for.
  void look_again() { read_ = {}; }

 private:
  struct Read {
    bool done = false;
    std::vector<DrawerItem> items;
    std::vector<std::string> troubles;
  };
  Read& read_at(Drawer drawer) { return read_[static_cast<std::size_t>(drawer)]; }
  std::filesystem::path place(Drawer drawer) const { return folder_ / table_of(drawer); }
  std::filesystem::path folder_;
  std::array<Read, all_drawers.size()> read_;
};

/// The board with a thing out of a drawer: as the row of that number, or one more where the table has no such row. A
/// string set sets the gauges; a material comes under its name there, and its settled clearance goes to the inlays made
/// of it.
Board with_item(Board board, Drawer drawer, const DrawerItem& item, std::size_t row);
/// Whether it fits the board as it is: a string set has as many strings.
bool fits(const Board& board, Drawer drawer, const DrawerItem& item);
/// What the row is called on the board: a cutter's name, a material's; "" where rows have none.
std::string own_name(const Board& board, Drawer drawer, std::size_t row);

}  // namespace sagitta::viewer
