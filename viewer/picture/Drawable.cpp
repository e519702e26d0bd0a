#include "picture/Drawable.hpp"

#include <cstddef>

namespace sagitta::viewer {

namespace {

void fill(GLenum target, const Buffer& buffer, std::size_t bytes, const void* data) {
  glBindBuffer(target, buffer.id());
  glBufferData(target, static_cast<GLsizeiptr>(bytes), data, GL_STATIC_DRAW);
}

void attribute(GLuint index, GLint count, GLenum type, GLboolean normalised, std::size_t offset) {
  glEnableVertexAttribArray(index);
  glVertexAttribPointer(index, count, type, normalised, sizeof(RenderVertex), reinterpret_cast<const void*>(offset));
}

}  // namespace

Drawable::Drawable(const RenderMesh& skin) {
  if (skin.empty()) return;
  surface_ = VertexArray::make(), vertices_ = Buffer::make(), indices_ = Buffer::make();
  glBindVertexArray(surface_.id());
  fill(GL_ARRAY_BUFFER, vertices_, skin.vertices.size() * sizeof(RenderVertex), skin.vertices.data());
  attribute(0, 3, GL_FLOAT, GL_FALSE, offsetof(RenderVertex, position));
  attribute(1, 3, GL_FLOAT, GL_FALSE, offsetof(RenderVertex, normal));
  attribute(2, 4, GL_UNSIGNED_BYTE, GL_TRUE, offsetof(RenderVertex, colour));
  attribute(3, 1, GL_FLOAT, GL_FALSE, offsetof(RenderVertex, finish));
  attribute(4, 1, GL_FLOAT, GL_FALSE, offsetof(RenderVertex, change));
  std::vector<std::uint32_t> all = skin.triangles;
  all.insert(all.end(), skin.edges.begin(), skin.edges.end());
  fill(GL_ELEMENT_ARRAY_BUFFER, indices_, all.size() * sizeof(std::uint32_t), all.data());
  glBindVertexArray(0);
  triangles_ = static_cast<GLsizei>(skin.triangles.size()), edges_ = static_cast<GLsizei>(skin.edges.size());
}

void Drawable::draw_triangles() const {
  if (!triangles_) return;
  glBindVertexArray(surface_.id());
  glDrawElements(GL_TRIANGLES, triangles_, GL_UNSIGNED_INT, nullptr);
  glBindVertexArray(0);
}

void Drawable::draw_edges() const {
  if (!edges_) return;
  glBindVertexArray(surface_.id());
  const std::size_t offset = static_cast<std::size_t>(triangles_) * sizeof(std::uint32_t);
  glDrawElements(GL_LINES, edges_, GL_UNSIGNED_INT, reinterpret_cast<const void*>(offset));
  glBindVertexArray(0);
}

}  // namespace sagitta::viewer
