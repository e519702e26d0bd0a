#include "gpu/Program.hpp"

#include <stdexcept>

namespace sagitta::viewer {

namespace {

GLuint compile(GLenum kind, const std::string& source) {
  const GLuint shader = glCreateShader(kind);
  const char* text = source.c_str();
  glShaderSource(shader, 1, &text, nullptr);
  glCompileShader(shader);
  GLint good = 0;
  glGetShaderiv(shader, GL_COMPILE_STATUS, &good);
  if (good) return shader;
  std::array<char, 2048> log{};
  glGetShaderInfoLog(shader, static_cast<GLsizei>(log.size()), nullptr, log.data());
  glDeleteShader(shader);
  throw std::runtime_error("the graphics driver refuses a shader: " + std::string(log.data()));
}

}  // namespace

Program::Program(const std::string& vertex, const std::string& fragment) : object_(ProgramObject::make()) {
  const GLuint shaders[] = {compile(GL_VERTEX_SHADER, vertex), compile(GL_FRAGMENT_SHADER, fragment)};
  for (const GLuint shader : shaders) glAttachShader(object_.id(), shader);
  glLinkProgram(object_.id());
  for (const GLuint shader : shaders) glDeleteShader(shader);
  GLint good = 0;
  glGetProgramiv(object_.id(), GL_LINK_STATUS, &good);
  if (good) return;
  std::array<char, 2048> log{};
  glGetProgramInfoLog(object_.id(), static_cast<GLsizei>(log.size()), nullptr, log.data());
  throw std::runtime_error("the graphics driver cannot link a shader: " + std::string(log.data()));
}

void Program::use() const { glUseProgram(object_.id()); }
void Program::set(const char* name, float v) const { glUniform1f(glGetUniformLocation(object_.id(), name), v); }
void Program::set(const char* name, int v) const { glUniform1i(glGetUniformLocation(object_.id(), name), v); }
void Program::set(const char* name, std::array<float, 2> v) const {
  glUniform2f(glGetUniformLocation(object_.id(), name), v[0], v[1]);
}
void Program::set(const char* name, std::array<float, 3> v) const {
  glUniform3f(glGetUniformLocation(object_.id(), name), v[0], v[1], v[2]);
}
void Program::set(const char* name, std::array<float, 4> v) const {
  glUniform4f(glGetUniformLocation(object_.id(), name), v[0], v[1], v[2], v[3]);
}
void Program::set(const char* name, const std::array<float, 16>& m) const {
  glUniformMatrix4fv(glGetUniformLocation(object_.id(), name), 1, GL_FALSE, m.data());
}

}  // namespace sagitta::viewer
