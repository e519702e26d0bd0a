#include "cad/StlFile.hpp"

#include <gtest/gtest.h>

#include <bit>
#include <cmath>

#include "export/CommandLine.hpp"

namespace sagitta {
namespace {

/// The corner of a cube with legs 2, 4, 6: volume 8.
Mesh corner() {
  Mesh mesh;
  mesh.points = {{0, 0, 0}, {2, 0, 0}, {0, 4, 0}, {0, 0, 6}};
  mesh.triangles = {{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}};
  mesh.face = {0, 1, 2, 3};
  return mesh;
}

std::uint32_t number_at(const std::string& bytes, std::size_t place) {
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < 4; ++i) value |= std::uint32_t{static_cast<unsigned char>(bytes[place + i])} << (8 * i);
  return value;
}

float float_at(const std::string& bytes, std::size_t place) { return std::bit_cast<float>(number_at(bytes, place)); }

// Layout of a binary STL: 80 bytes of header that do not begin with "solid", a 32-bit count, 50 bytes a triangle,
// little endian: 84 + 50 n bytes (the format's own description).
TEST(StlFile, HasTheFormatsLayout) {
  const std::string bytes = stl_bytes(corner(), "solid thing");
  ASSERT_EQ(bytes.size(), 84U + 50U * 4U);
  EXPECT_NE(bytes.substr(0, 5), "solid");
  EXPECT_NE(bytes.substr(0, 80).find("solid thing"), std::string::npos);
  EXPECT_EQ(number_at(bytes, 80), 4U);
  EXPECT_EQ(float_at(bytes, 84 + 12 + 12), 0.0F);
  EXPECT_EQ(float_at(bytes, 84 + 12 + 16), 4.0F) << "second point of the first triangle, y";
  EXPECT_EQ(bytes.substr(84 + 48, 2), std::string(2, '\0'));
}

TEST(StlFile, NormalsPointOutAndAreOneLong) {
  const std::string bytes = stl_bytes(corner(), "");
  EXPECT_EQ(float_at(bytes, 84 + 8), -1.0F) << "the floor looks down";
  const std::size_t slanted = 84 + 3 * 50;
  // Plane x/2 + y/4 + z/6 = 1: normal (6, 3, 2)/7.
  EXPECT_FLOAT_EQ(float_at(bytes, slanted), 6.0F / 7);
  EXPECT_FLOAT_EQ(float_at(bytes, slanted + 4), 3.0F / 7);
  EXPECT_FLOAT_EQ(float_at(bytes, slanted + 8), 2.0F / 7);
}

TEST(StlFile, KeepsLongAndForeignTitlesOutOfTheHeader) {
  const std::string bytes = stl_bytes(corner(), std::string(200, 'x') + "\xc3\xa4\n");
  EXPECT_EQ(bytes.size(), 84U + 50U * 4U);
  for (const char c : bytes.substr(0, 80)) EXPECT_TRUE(c >= ' ' && c <= '~');
}

TEST(StlFile, IsReadByAnotherProgram) {
  const test::ScratchFolder folder;
  test::write_file(folder / "corner.stl", stl_bytes(corner(), "corner"));
  const test::Outcome read = test::shell("admesh '" + (folder / "corner.stl").string() + "'");
  ASSERT_EQ(read.code, 0) << read.err;
  EXPECT_NE(read.out.find("Volume   :  8.000000"), std::string::npos) << read.out;
}

}  // namespace
}  // namespace sagitta
