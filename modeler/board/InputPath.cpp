#include "board/InputPath.hpp"

#include <filesystem>
#include <system_error>

namespace sagitta {
namespace {

namespace fs = std::filesystem;

bool leaves(const fs::path& from_folder) { return !from_folder.empty() && *from_folder.begin() == ".."; }

}  // namespace

std::variant<std::string, Fault> input_path(const NamedInput& input, Outside outside) {
  const std::string named = "the " + input.what + " \"" + input.file + "\" ";
  if (input.file.find('\0') != std::string::npos)
    return Fault{FaultCode::outside_folder, "", named + "is not the name of a file",
                 "take the NUL character out of it"};
  const fs::path whole = (fs::path(input.folder) / input.file).lexically_normal();
  if (outside == Outside::allowed) return whole.string();
  const auto refused = [&](const std::string& why) {
    return Fault{FaultCode::outside_folder, "", named + why,
                 "put it beside the board file, or allow files from elsewhere: --allow-outside"};
  };
  if (fs::path(input.file).is_absolute())
    return refused("is named by its whole path; only files in the board's folder are read");
  const fs::path inside = fs::path(input.inside).lexically_normal();
  if (leaves(whole.lexically_relative(inside))) return refused("lies outside the board's folder");
  std::error_code error, no_folder;
  const fs::path real_folder = fs::weakly_canonical(inside.empty() ? fs::path(".") : inside, no_folder);
  const fs::path real = fs::weakly_canonical(whole, error);
  if (!error && !no_folder && leaves(real.lexically_relative(real_folder)))
    return refused("is a link that leads outside the board's folder");
  return whole.string();
}

}  // namespace sagitta
