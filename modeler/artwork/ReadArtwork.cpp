#include "artwork/ReadArtwork.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <optional>

#include "artwork/Assembly.hpp"
#include "artwork/Dxf.hpp"
#include "artwork/Svg.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

Faults fault(std::string message, std::string hint = "") { return {{"", std::move(message), std::move(hint)}}; }

std::optional<Faults> too_large(std::size_t bytes) {
  if (bytes <= largest_drawing) return std::nullopt;
  return fault("the drawing is larger than 16 MiB", "take out what is no outline, pictures above all, or split it");
}

std::variant<std::string, Faults> text_of(const std::string& path) {
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (status.type() == fs::file_type::not_found)
    return fault("there is no drawing " + path, "check the name and folder");
  if (!fs::is_regular_file(status)) return fault(path + " is no file that can be read", "name an .svg or .dxf file");
  std::ifstream in(path, std::ios::binary);
  if (!in) return fault(path + " cannot be opened for reading", "check who may read it");
  std::string text(largest_drawing + 1, '\0');
  in.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (in.bad()) return fault(path + " cannot be read to its end", "check the disk or copy the file again");
  text.resize(static_cast<std::size_t>(in.gcount()));
  return text;
}

std::string ending(const std::string& path) {
  std::string end = fs::path(path).extension().string();
  std::transform(end.begin(), end.end(), end.begin(),
                 [](unsigned char c) { return static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c); });
  return end;
}

}  // namespace

ArtworkOrFaults svg_artwork(std::string_view text) {
  if (auto faults = too_large(text.size())) return *faults;
  auto read = svg_shapes(text);
  if (auto* faults = std::get_if<Faults>(&read)) return std::move(*faults);
  return assemble(std::move(std::get<DrawnShapes>(read)));
}

ArtworkOrFaults dxf_artwork(std::string_view text) {
  if (auto faults = too_large(text.size())) return *faults;
  auto read = dxf_shapes(text);
  if (auto* faults = std::get_if<Faults>(&read)) return std::move(*faults);
  return assemble(std::move(std::get<DrawnShapes>(read)));
}

ArtworkOrFaults read_artwork(const std::string& path) {
  const auto read = text_of(path);
  if (const Faults* faults = std::get_if<Faults>(&read)) return *faults;
  const std::string& text = std::get<std::string>(read);
  const std::string end = ending(path);
  if (end == ".svg") return svg_artwork(text);
  if (end == ".dxf") return dxf_artwork(text);
  const std::string_view head = std::string_view(text).substr(0, 4096);
  if (head.find("<svg") != std::string_view::npos || head.find("<?xml") != std::string_view::npos)
    return svg_artwork(text);
  if (head.find("SECTION") != std::string_view::npos) return dxf_artwork(text);
  return fault(path + " is neither SVG nor DXF", "save the drawing as one of these and name the file so");
}

std::variant<std::string, Fault> artwork_path(const std::string& folder, const std::string& file, Outside outside) {
  const fs::path named(file);
  const fs::path whole = (fs::path(folder) / named).lexically_normal();
  if (outside == Outside::allowed) return whole.string();
  const auto refused = [&](const std::string& why) {
    return Fault{"", "the drawing \"" + file + "\" " + why,
                 "put the drawing beside the board file, or allow drawings from elsewhere: --allow-outside"};
  };
  if (named.is_absolute()) return refused("is named by its whole path; only drawings in the board's folder are read");
  const fs::path inside = named.lexically_normal();
  if (!inside.empty() && *inside.begin() == "..") return refused("lies outside the board's folder");
  std::error_code error;
  const fs::path real_folder = fs::weakly_canonical(folder.empty() ? fs::path(".") : fs::path(folder), error);
  const fs::path real = fs::weakly_canonical(whole, error);
  if (!error && *real.lexically_relative(real_folder).begin() == "..")
    return refused("is a link that leads outside the board's folder");
  return whole.string();
}

}  // namespace sagitta
