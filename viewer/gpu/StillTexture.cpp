#include "gpu/StillTexture.hpp"

namespace sagitta::viewer {

void Image::load(int width, int height, const std::vector<std::uint8_t>& pixels) {
  std::vector<std::uint8_t> rows;  // four bytes a pixel: rows then begin where the card wants them
  rows.reserve(pixels.size() / 3 * 4);
  for (std::size_t i = 0; i + 2 < pixels.size(); i += 3)
    rows.insert(rows.end(), {pixels[i], pixels[i + 1], pixels[i + 2], 255});
  if (!colour_) colour_ = Texture::make();
  glBindTexture(GL_TEXTURE_2D, colour_.id());
  glTexImage2D(GL_TEXTURE_2D, 0, GL_RGBA8, width, height, 0, GL_RGBA, GL_UNSIGNED_BYTE, rows.data());
  glGenerateMipmap(GL_TEXTURE_2D);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR_MIPMAP_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
  glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
}

}  // namespace sagitta::viewer
