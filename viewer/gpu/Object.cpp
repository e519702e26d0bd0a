#include "gpu/Object.hpp"

#include <array>
#include <numeric>

namespace sagitta::viewer {

namespace {
std::array<int, 6> alive{};

GLuint create(GpuKind kind) {
  GLuint id = 0;
  switch (kind) {
    case GpuKind::buffer:
      glGenBuffers(1, &id);
      break;
    case GpuKind::vertex_array:
      glGenVertexArrays(1, &id);
      break;
    case GpuKind::texture:
      glGenTextures(1, &id);
      break;
    case GpuKind::framebuffer:
      glGenFramebuffers(1, &id);
      break;
    case GpuKind::renderbuffer:
      glGenRenderbuffers(1, &id);
      break;
    case GpuKind::program:
      id = glCreateProgram();
      break;
  }
  return id;
}

void destroy(GpuKind kind, GLuint id) {
  switch (kind) {
    case GpuKind::buffer:
      glDeleteBuffers(1, &id);
      break;
    case GpuKind::vertex_array:
      glDeleteVertexArrays(1, &id);
      break;
    case GpuKind::texture:
      glDeleteTextures(1, &id);
      break;
    case GpuKind::framebuffer:
      glDeleteFramebuffers(1, &id);
      break;
    case GpuKind::renderbuffer:
      glDeleteRenderbuffers(1, &id);
      break;
    case GpuKind::program:
      glDeleteProgram(id);
      break;
  }
}
}  // namespace

int gpu_alive(GpuKind kind) { return alive[static_cast<std::size_t>(kind)]; }
int gpu_alive() { return std::accumulate(alive.begin(), alive.end(), 0); }

template <GpuKind Kind>
GpuObject<Kind> GpuObject<Kind>::make() {
  GpuObject made;
  made.id_ = create(Kind);
  ++alive[static_cast<std::size_t>(Kind)];
  return made;
}

template <GpuKind Kind>
void GpuObject<Kind>::reset() {
  if (!id_) return;
  destroy(Kind, id_);
  --alive[static_cast<std::size_t>(Kind)];
  id_ = 0;
}

template class GpuObject<GpuKind::buffer>;
template class GpuObject<GpuKind::vertex_array>;
template class GpuObject<GpuKind::texture>;
template class GpuObject<GpuKind::framebuffer>;
template class GpuObject<GpuKind::renderbuffer>;
template class GpuObject<GpuKind::program>;

}  // namespace sagitta::viewer
