#include "app/WrongKind.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <fstream>
#include <string_view>

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

/// Of files that hold these bytes first, or have one of these endings.
struct WrongKind {
  std::array<std::string_view, 8> endings, beginnings;
  const char* words;
};

constexpr std::array<WrongKind, 2> kinds{
    WrongKind{
        {".png", ".jpg", ".jpeg", ".gif", ".bmp", ".webp", ".tif", ".tiff"},
        {"\x89PNG", "\xff\xd8\xff", "GIF8", "BM", "RIFF", "II*", "MM"},
        " is a picture made of pixels. An inlay is cut along outlines: draw over it in a drawing program and save "
        "that as SVG or DXF."},
    WrongKind{{".pdf", ".ps", ".eps", ".ai"},
              {"%PDF", "%!PS"},
              " is a page. Open it in a drawing program and save its outlines as SVG or DXF."}};

/// Of a regular file: nothing else is opened.
std::string head_of(const fs::path& path) {
  std::error_code unknown;
  std::string head(4, '\0');
  if (!fs::is_regular_file(path, unknown)) return "";
  std::ifstream file(path, std::ios::binary);
  file.read(head.data(), static_cast<std::streamsize>(head.size()));
  head.resize(static_cast<std::size_t>(file.gcount()));
  return head;
}

}  // namespace

std::string wrong_kind_words(const fs::path& path) {
  std::string ending = path.extension().string();
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  const std::string head = head_of(path);
  const auto one_of = [](const auto& all, const auto& holds) {
    return std::any_of(all.begin(), all.end(), [&](std::string_view one) { return !one.empty() && holds(one); });
  };
  for (const WrongKind& kind : kinds)
    if (one_of(kind.endings, [&](std::string_view one) { return ending == one; }) ||
        one_of(kind.beginnings, [&](std::string_view one) { return head.starts_with(one); }))
      return path.filename().string() + kind.words;
  return "";
}

}  // namespace sagitta::viewer
