#pragma once

/// OpenGL objects that free themselves: move-only, made and freed on the thread of the context, counted by kind.

#include <utility>

#include "gpu/Gl.hpp"

namespace sagitta::viewer {

enum class GpuKind { buffer, vertex_array, texture, framebuffer, renderbuffer, program };

/// Objects alive now, of one kind and of all.
int gpu_alive(GpuKind kind);
int gpu_alive();

template <GpuKind Kind>
class GpuObject {
 public:
  GpuObject() = default;
  GpuObject(GpuObject&& other) noexcept : id_(std::exchange(other.id_, 0)) {}
  GpuObject& operator=(GpuObject&& other) noexcept {
    std::swap(id_, other.id_);
    return *this;
  }
  ~GpuObject() { reset(); }
  static GpuObject make();
  void reset();
  GLuint id() const { return id_; }
  explicit operator bool() const { return id_ != 0; }

 private:
  GLuint id_ = 0;
};

using Buffer = GpuObject<GpuKind::buffer>;
using VertexArray = GpuObject<GpuKind::vertex_array>;
using Texture = GpuObject<GpuKind::texture>;
using Framebuffer = GpuObject<GpuKind::framebuffer>;
using Renderbuffer = GpuObject<GpuKind::renderbuffer>;
using ProgramObject = GpuObject<GpuKind::program>;

}  // namespace sagitta::viewer
