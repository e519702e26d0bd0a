#include "artwork/ReadArtwork.hpp"

#include <algorithm>
#include <filesystem>
#include <optional>

#include "artwork/Assembly.hpp"
#include "artwork/Chains.hpp"
#include "artwork/Curve.hpp"
#include "artwork/Dxf.hpp"
#include "artwork/Svg.hpp"
#include "board/InputPath.hpp"
#include "files/ReadFile.hpp"
#include "plane/Tolerance.hpp"

namespace sagitta {
namespace {

namespace fs = std::filesystem;

Faults fault(FaultCode code, std::string message, std::string hint = "") {
  return {{code, "", std::move(message), std::move(hint)}};
}

constexpr const char* too_large_message = "the drawing is larger than 16 MiB";
constexpr const char* too_large_hint = "take out what is no outline, pictures above all, or split it";

std::optional<Faults> too_large(std::size_t bytes) {
  if (bytes <= largest_drawing) return std::nullopt;
  return fault(FaultCode::too_many, too_large_message, too_large_hint);
}

std::variant<std::string, Faults> text_of(const std::string& path) {
  auto read = read_file(path, largest_drawing);
  if (auto* text = std::get_if<std::string>(&read)) return std::move(*text);
  const ReadFailure& failure = std::get<ReadFailure>(read);
  if (failure.kind == Unreadable::too_large) return fault(FaultCode::too_many, too_large_message, too_large_hint);
  return fault(FaultCode::unreadable, "the drawing " + path + " " + reason(failure),
               "check its name and folder, and who may read it");
}

std::string ending(const std::string& path) {
  std::string end = fs::path(path).extension().string();
  std::transform(end.begin(), end.end(), end.begin(),
                 [](unsigned char c) { return static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c); });
  return end;
}

enum class DrawingKind { svg, dxf };

std::optional<DrawingKind> kind_of(const std::string& path, std::string_view text) {
  const std::string end = ending(path);
  if (end == ".svg") return DrawingKind::svg;
  if (end == ".dxf") return DrawingKind::dxf;
  const std::string_view head = text.substr(0, 4096);
  if (head.find("<svg") != std::string_view::npos || head.find("<?xml") != std::string_view::npos)
    return DrawingKind::svg;
  if (head.find("SECTION") != std::string_view::npos) return DrawingKind::dxf;
  return std::nullopt;
}

/// A file read by the reader of its kind.
template <typename Answer>
Answer read_by_kind(const std::string& path, Units units, Answer (*svg)(std::string_view, Units),
                    Answer (*dxf)(std::string_view, Units)) {
  const auto read = text_of(path);
  if (const Faults* faults = std::get_if<Faults>(&read)) return *faults;
  const std::string& text = std::get<std::string>(read);
  const auto kind = kind_of(path, text);
  if (kind) return *kind == DrawingKind::svg ? svg(text, units) : dxf(text, units);
  return fault(FaultCode::wrong_kind, path + " is neither SVG nor DXF",
               "save the drawing as one of these and name the file so");
}

OpenLineOrFaults one_open_line(std::variant<std::vector<Run>, Faults> read, Units units) {
  if (auto* faults = std::get_if<Faults>(&read)) return std::move(*faults);
  Notes notes(units);
  std::vector<PathLoop> lines = joined(std::get<std::vector<Run>>(std::move(read)), notes);
  if (lines.size() != 1)
    return fault(FaultCode::end_not_crossing,
                 "the drawing has " + std::to_string(lines.size()) + " lines; it must have one",
                 "keep one open line; its parts must meet within " + notes.length(tolerance::drawn_join));
  if (start_of(lines[0].front()) == end_of(lines[0].back()))
    return fault(FaultCode::end_not_crossing, "the line in the drawing is closed; it must be open",
                 "draw one line from one side of the board to the other");
  return std::move(lines[0]);
}

}  // namespace

ArtworkOrFaults svg_artwork(std::string_view text, Units units) {
  if (auto faults = too_large(text.size())) return *faults;
  auto read = svg_shapes(text, units);
  if (auto* faults = std::get_if<Faults>(&read)) return std::move(*faults);
  return assemble(std::move(std::get<DrawnShapes>(read)));
}

ArtworkOrFaults dxf_artwork(std::string_view text, Units units) {
  if (auto faults = too_large(text.size())) return *faults;
  auto read = dxf_shapes(text, units);
  if (auto* faults = std::get_if<Faults>(&read)) return std::move(*faults);
  return assemble(std::move(std::get<DrawnShapes>(read)));
}

ArtworkOrFaults read_artwork(const std::string& path, Units units) {
  return read_by_kind(path, units, svg_artwork, dxf_artwork);
}

OpenLineOrFaults svg_open_line(std::string_view text, Units units) {
  if (auto faults = too_large(text.size())) return *faults;
  return one_open_line(svg_runs(text, units), units);
}

OpenLineOrFaults dxf_open_line(std::string_view text, Units units) {
  if (auto faults = too_large(text.size())) return *faults;
  return one_open_line(dxf_runs(text, units), units);
}

OpenLineOrFaults read_open_line(const std::string& path, Units units) {
  return read_by_kind(path, units, svg_open_line, dxf_open_line);
}

}  // namespace sagitta
