#include "gpu/Program.hpp"

#include <stdexcept>

namespace sagitta::viewer {

namespace {

GLuint compile(GLenum kind, const std::string& source) {
  const GLuint shader = gl::CreateShader(kind);
  const char* text = source.c_str();
  gl::ShaderSource(shader, 1, &text, nullptr);
  gl::CompileShader(shader);
  GLint good = 0;
  gl::GetShaderiv(shader, GL_COMPILE_STATUS, &good);
  if (good) return shader;
  std::array<char, 2048> log{};
  gl::GetShaderInfoLog(shader, static_cast<GLsizei>(log.size()), nullptr, log.data());
  gl::DeleteShader(shader);
  throw std::runtime_error("the graphics driver refuses a shader: " + std::string(log.data()));
}

}  // namespace

Program::Program(const std::string& vertex, const std::string& fragment) : object_(ProgramObject::make()) {
  const GLuint shaders[] = {compile(GL_VERTEX_SHADER, vertex), compile(GL_FRAGMENT_SHADER, fragment)};
  for (const GLuint shader : shaders) gl::AttachShader(object_.id(), shader);
  gl::LinkProgram(object_.id());
  for (const GLuint shader : shaders) gl::DeleteShader(shader);
  GLint good = 0;
  gl::GetProgramiv(object_.id(), GL_LINK_STATUS, &good);
  if (good) return;
  std::array<char, 2048> log{};
  gl::GetProgramInfoLog(object_.id(), static_cast<GLsizei>(log.size()), nullptr, log.data());
  throw std::runtime_error("the graphics driver cannot link a shader: " + std::string(log.data()));
}

void Program::use() const { gl::UseProgram(object_.id()); }
void Program::set(const char* name, float v) const { gl::Uniform1f(gl::GetUniformLocation(object_.id(), name), v); }
void Program::set(const char* name, int v) const { gl::Uniform1i(gl::GetUniformLocation(object_.id(), name), v); }
void Program::set(const char* name, std::array<float, 2> v) const {
  gl::Uniform2f(gl::GetUniformLocation(object_.id(), name), v[0], v[1]);
}
void Program::set(const char* name, std::array<float, 3> v) const {
  gl::Uniform3f(gl::GetUniformLocation(object_.id(), name), v[0], v[1], v[2]);
}
void Program::set(const char* name, std::array<float, 4> v) const {
  gl::Uniform4f(gl::GetUniformLocation(object_.id(), name), v[0], v[1], v[2], v[3]);
}
void Program::set(const char* name, const std::array<float, 16>& m) const {
  gl::UniformMatrix4fv(gl::GetUniformLocation(object_.id(), name), 1, GL_FALSE, m.data());
}

}  // namespace sagitta::viewer
