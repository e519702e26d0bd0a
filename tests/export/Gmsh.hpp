#pragma once

/// A STEP file as gmsh reads it: a second reader, on its own path.

#include <array>

#include "CommandLine.hpp"

namespace sagitta::test {

struct GmshReading {
  std::size_t bodies = 0;
  double volume = 0;            ///< of all bodies
  std::array<double, 6> box{};  ///< of all vertices: low x, y, z, high x, y, z
  std::string said;             ///< what gmsh printed, names among it
};

/// `unit`: what lengths are converted into, "MM" or "INCH". Throws when gmsh reads nothing.
inline GmshReading read_by_gmsh(const fs::path& step, const std::string& unit = "MM") {
  const ScratchFolder scratch;
  write_file(
      scratch / "read.geo",
      "Geometry.OCCTargetUnit = \"" + unit + "\";\nSetFactory(\"OpenCASCADE\");\nMerge \"" + step.string() +
          "\";\nv() = Volume{:};\nm = 0;\nFor i In {0:#v()-1}\n  m += Mass Volume{v(i)};\nEndFor\n"
          "b() = BoundingBox Point{PointsOf{Volume{:};}};\nPrintf(\"bodies %g\", #v());\nPrintf(\"volume %.12g\", m);\n"
          "Printf(\"box %.9g %.9g %.9g %.9g %.9g %.9g\", b(0), b(1), b(2), b(3), b(4), b(5));\n");
  const Outcome read = shell("gmsh -parse_and_exit '" + (scratch / "read.geo").string() + "'");
  GmshReading found;
  found.said = read.out;
  const auto figures = [&](const std::string& word, double* to, int count) {
    const std::size_t at = read.out.find(word + " ");
    if (read.code != 0 || at == std::string::npos) throw std::runtime_error(read.out + read.err);
    std::istringstream text(read.out.substr(at + word.size()));
    for (int i = 0; i < count; ++i) text >> to[i];
  };
  double bodies = 0;
  figures("bodies", &bodies, 1);
  figures("volume", &found.volume, 1);
  figures("box", found.box.data(), 6);
  found.bodies = static_cast<std::size_t>(bodies);
  return found;
}

}  // namespace sagitta::test
