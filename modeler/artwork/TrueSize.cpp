#include "artwork/TrueSize.hpp"

#include <algorithm>
#include <cctype>
#include <filesystem>

#include "artwork/Dxf.hpp"
#include "artwork/ReadArtwork.hpp"
#include "artwork/Svg.hpp"
#include "files/ReadFile.hpp"

namespace sagitta {

bool says_its_size(const std::string& path) {
  const auto read = read_file(path, largest_drawing);
  const auto* text = std::get_if<std::string>(&read);
  if (!text) return false;
  std::string ending = std::filesystem::path(path).extension().string();
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return ending == ".dxf" ? dxf_says_its_size(*text) : svg_says_its_size(*text);
}

}  // namespace sagitta
