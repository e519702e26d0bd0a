#include "paper/PngFile.hpp"

#include <cairo.h>
#include <gtest/gtest.h>

#include <cstring>
#include <random>

namespace sagitta::test {
namespace {

struct Unread {
  const std::string& bytes;
  std::size_t at = 0;
};

cairo_status_t hand_out(void* from, unsigned char* to, unsigned int count) {
  auto& unread = *static_cast<Unread*>(from);
  if (count > unread.bytes.size() - unread.at) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(to, unread.bytes.data() + unread.at, count);
  unread.at += count;
  return CAIRO_STATUS_SUCCESS;
}

/// The picture as libpng reads it, through cairo.
Picture read(const std::string& bytes) {
  Unread unread{bytes};
  cairo_surface_t* surface = cairo_image_surface_create_from_png_stream(hand_out, &unread);
  EXPECT_EQ(cairo_surface_status(surface), CAIRO_STATUS_SUCCESS);
  Picture picture{cairo_image_surface_get_width(surface), cairo_image_surface_get_height(surface), {}};
  const unsigned char* row = cairo_image_surface_get_data(surface);
  for (int y = 0; y < picture.height; ++y, row += cairo_image_surface_get_stride(surface))
    for (int x = 0; x < picture.width; ++x) {
      std::uint32_t pixel = 0;
      std::memcpy(&pixel, row + 4 * x, 4);
      for (const int shift : {16, 8, 0}) picture.pixels.push_back(static_cast<std::uint8_t>(pixel >> shift));
    }
  EXPECT_EQ(unread.at, bytes.size());
  cairo_surface_destroy(surface);
  return picture;
}

TEST(Png, IsReadBackByLibpngPixelForPixel) {
  std::mt19937 random(7);
  for (const auto& [width, height] : {std::pair{1, 1}, {3, 1}, {1, 5}, {257, 131}}) {
    Picture picture{width, height, {}};
    for (int i = 0; i < 3 * width * height; ++i) picture.pixels.push_back(static_cast<std::uint8_t>(random()));
    const Picture back = read(png_bytes(picture));
    EXPECT_EQ(back.width, width);
    EXPECT_EQ(back.height, height);
    EXPECT_TRUE(back.pixels == picture.pixels) << width << " x " << height;
  }
}

}  // namespace
}  // namespace sagitta::test
