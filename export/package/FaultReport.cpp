#include "package/FaultReport.hpp"

#include <optional>

#include "cad/Gate.hpp"
#include "folder/Folder.hpp"
#include "package/ListedFolder.hpp"
#include "plan/CellOrderError.hpp"

namespace fs = std::filesystem;

namespace sagitta {
namespace {

constexpr int most_folders = 99;

/// A folder of that kind that is not there yet.
std::optional<fs::path> free_name(const fs::path& target) {
  const std::string base = (target.has_filename() ? target : target.parent_path()).string() + "-fault";
  std::error_code error;
  for (int i = 1; i <= most_folders; ++i) {
    const fs::path name = i == 1 ? base : base + "-" + std::to_string(i);
    if (!fs::exists(fs::symlink_status(name, error))) return name;
  }
  return std::nullopt;
}

std::string report(const std::string& found, const std::string& options) {
  return "Sagitta " SAGITTA_VERSION
         " made a result that is not sound, and did not write it.\n"
         "This is a fault of the program, not of the board.\n\n" +
         found + "\n\nExport with the options " + options + "\n";
}

/// In a sentence where the board was kept, or why it could not be.
std::string kept(const Board& board, const std::vector<Finding>& findings, const std::string& options,
                 const fs::path& target, const std::string& found) try {
  const std::optional<fs::path> name = free_name(target);
  if (!name) return "The board was not kept for a report: there are too many of them beside " + target.string() + ".";
  Folder folder(*name, false);
  ListedFolder listed(folder);
  listed.add("fault.txt", "", "txt", report(found, options));
  listed.finish(board, findings, options);
  folder.keep();
  return "The board is kept in \"" + name->string() + "\": please report it with that folder.";
} catch (const FolderError& error) {
  return std::string("The board could not be kept for a report: ") + error.what() + ".";
}

[[noreturn]] void fault(const Board& board, const std::vector<Finding>& findings, const std::string& options,
                        const fs::path& target, const std::string& found) {
  throw ProgramFault("a result is not sound: " + found +
                     ". Nothing was written. This is a fault of the program, not of the board. " +
                     kept(board, findings, options, target, found));
}

}  // namespace

void keep_on_fault(const Board& board, const std::vector<Finding>& findings, const std::string& options,
                   const fs::path& target, const std::function<void()>& write) try {
  write();
} catch (const Unsound& error) {
  fault(board, findings, options, target, error.what());
} catch (const CellOrderError& error) {
  fault(board, findings, options, target, error.what());
} catch (const BuildError& error) {
  fault(board, findings, options, target,
        "stage " + error.stage + ", near " + error.feature + ": the solid could not be made: " + error.what());
}

}  // namespace sagitta
