#pragma once

/// The manifest of an exported folder: what it lists and how it is written.

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace sagitta {

/// How a manifest is called and begins.
inline constexpr const char* manifest_name = "manifest.json";
inline constexpr const char* manifest_program = "sagitta";
/// What a manifest calls the way it is laid out; a reader refuses another.
inline constexpr int manifest_format = 1;
/// No manifest is larger. Bytes.
inline constexpr std::size_t largest_manifest = 64U << 20;

/// A body in an exported file; volume in mm^3, area in mm^2, corners of its bounding box in mm.
struct ManifestBody {
  std::string name, material;
  double volume = 0, area = 0;
  std::array<double, 3> low{}, high{};
};

/// An exported file. The deviation (mm) and the number of triangles belong to meshes.
struct ManifestFile {
  std::string file, stage, kind;
  std::size_t bytes = 0;
  std::string sha256;
  std::vector<ManifestBody> bodies;
  std::optional<double> deviation;
  std::optional<std::size_t> triangles;
};

/// What manifest.json holds: the folder's files, copies of the board's drawings among them, and the board's whole text,
/// so that the folder can be made again from it alone.
struct Manifest {
  std::string version;  ///< of the program
  std::string board;    ///< the board as a board file, normalised
  std::vector<ManifestFile> files;
  std::string options;   ///< JSON text: how the folder was made, see Repeat.hpp
  std::string findings;  ///< JSON text: the board's findings, as `check --json` has them
  std::string serial{};  ///< measured.serial; empty: the manifest does not speak of it
};

/// {format, program, version, board, options, findings, files: [{file, stage, kind, bytes, sha256, bodies: [{name,
/// material, volume, area, bbox: [[x, y, z], [x, y, z]]}], deviation, triangles}]}; deviation and triangles are null
/// for an exact solid; `serial` stands at the end where the board has one. Nothing in it depends on the hour, the user
/// or the machine.
std::string manifest_text(const Manifest& manifest);

}  // namespace sagitta
