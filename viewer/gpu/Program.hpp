#pragma once

/// A shader program.

#include <array>
#include <string>

#include "gpu/Object.hpp"

namespace sagitta::viewer {

/// A linked vertex and fragment shader. Attributes are named in the source with layout(location = ..).
class Program {
 public:
  Program() = default;
  /// Compiles and links; throws std::runtime_error with the driver's words when that fails.
  Program(const std::string& vertex, const std::string& fragment);

  void use() const;
  void set(const char* name, float value) const;
  void set(const char* name, int value) const;
  void set(const char* name, std::array<float, 2> value) const;
  void set(const char* name, std::array<float, 3> value) const;
  void set(const char* name, std::array<float, 4> value) const;
  void set(const char* name, const std::array<float, 16>& column_major) const;

 private:
  ProgramObject object_;
};

}  // namespace sagitta::viewer
