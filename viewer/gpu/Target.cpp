#include "gpu/Target.hpp"

#include <algorithm>

namespace sagitta::viewer {

namespace {

Renderbuffer store(GLenum format, int width, int height, int samples) {
  Renderbuffer made = Renderbuffer::make();
  glBindRenderbuffer(GL_RENDERBUFFER, made.id());
  if (samples > 0)
    glRenderbufferStorageMultisample(GL_RENDERBUFFER, samples, format, width, height);
  else
    glRenderbufferStorage(GL_RENDERBUFFER, format, width, height);
  return made;
}

Texture picture(int width, int height) {
  Texture made = Texture::make();
  glBindTexture(GL_TEXTURE_2D, made.id());
  glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE, nullptr);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
  return made;
}

}  // namespace

void Target::resize(int width, int height, int samples) {
  width = std::max(width, 1), height = std::max(height, 1);
  if (width == width_ && height == height_ && samples == samples_) return;
  width_ = width, height_ = height, samples_ = samples;
  colour_ = picture(width, height);
  depth_ = store(GL_DEPTH_COMPONENT24, width, height, 0);
  plain_ = Framebuffer::make();
  glBindFramebuffer(GL_FRAMEBUFFER, plain_.id());
  glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, colour_.id(), 0);
  glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, depth_.id());
  sampled_.reset(), sampled_colour_.reset(), sampled_depth_.reset();
  if (samples > 0) {
    sampled_colour_ = store(GL_RGBA8, width, height, samples);
    sampled_depth_ = store(GL_DEPTH_COMPONENT24, width, height, samples);
    sampled_ = Framebuffer::make();
    glBindFramebuffer(GL_FRAMEBUFFER, sampled_.id());
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_RENDERBUFFER, sampled_colour_.id());
    glFramebufferRenderbuffer(GL_FRAMEBUFFER, GL_DEPTH_ATTACHMENT, GL_RENDERBUFFER, sampled_depth_.id());
  }
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
}

void Target::bind() const {
  glBindFramebuffer(GL_FRAMEBUFFER, sampled_ ? sampled_.id() : plain_.id());
  glViewport(0, 0, width_, height_);
}

void Target::resolve() const {
  if (sampled_) {
    glBindFramebuffer(GL_READ_FRAMEBUFFER, sampled_.id());
    glBindFramebuffer(GL_DRAW_FRAMEBUFFER, plain_.id());
    glBlitFramebuffer(0, 0, width_, height_, 0, 0, width_, height_, GL_COLOR_BUFFER_BIT, GL_NEAREST);
  }
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
}

std::vector<std::uint8_t> Target::pixels() const {
  glBindFramebuffer(GL_FRAMEBUFFER, plain_.id());
  std::vector<std::uint8_t> rows = read_pixels(width_, height_);
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
  return rows;
}

std::vector<std::uint8_t> read_pixels(int width, int height) {
  const std::size_t row = static_cast<std::size_t>(width) * 3;
  std::vector<std::uint8_t> upward(row * static_cast<std::size_t>(height)), rows(upward.size());
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, width, height, GL_RGB, GL_UNSIGNED_BYTE, upward.data());
  for (int y = 0; y < height; ++y) {
    const auto from = upward.begin() + static_cast<std::ptrdiff_t>(row) * y;
    std::copy(from, from + static_cast<std::ptrdiff_t>(row), rows.end() - static_cast<std::ptrdiff_t>(row) * (y + 1));
  }
  return rows;
}

}  // namespace sagitta::viewer
