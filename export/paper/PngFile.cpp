#include "paper/PngFile.hpp"

#include <zlib.h>

#include <stdexcept>

namespace sagitta {
namespace {

/// Most significant byte first, as all numbers of the format.
void add_number(std::string& to, std::size_t value) {
  for (const int shift : {24, 16, 8, 0}) to += static_cast<char>(value >> shift & 0xff);
}

/// Length, type, data, and the check of type and data (clause 5.3).
void add_chunk(std::string& to, const std::string& type, const std::string& data) {
  add_number(to, data.size());
  const std::size_t from = to.size();
  to += type + data;
  add_number(to, crc32(0, reinterpret_cast<const Bytef*>(to.data() + from), static_cast<uInt>(to.size() - from)));
}

/// Width, height, eight bits a part, red green blue; deflate, the one filter method, no interlace (clause 11.2.2).
std::string header_of(const Picture& picture) {
  std::string data;
  add_number(data, static_cast<std::size_t>(picture.width));
  add_number(data, static_cast<std::size_t>(picture.height));
  return data += {8, 2, 0, 0, 0};
}

/// Each row after the number of its filter: none.
std::string rows_of(const Picture& picture) {
  const std::size_t width = 3 * static_cast<std::size_t>(picture.width);
  std::string rows;
  rows.reserve((width + 1) * static_cast<std::size_t>(picture.height));
  for (std::size_t at = 0; at < picture.pixels.size(); at += width) {
    rows += '\0';
    rows.append(reinterpret_cast<const char*>(&picture.pixels[at]), width);
  }
  return rows;
}

std::string compressed(const std::string& data) {
  uLongf size = compressBound(data.size());
  std::string small(size, '\0');
  if (compress(reinterpret_cast<Bytef*>(small.data()), &size, reinterpret_cast<const Bytef*>(data.data()),
               data.size()) != Z_OK)
    throw std::runtime_error("there is not enough memory to write a picture");
  small.resize(size);
  return small;
}

}  // namespace

std::string png_bytes(const Picture& picture) {
  std::string file = "\x89PNG\r\n\x1a\n";
  add_chunk(file, "IHDR", header_of(picture));
  add_chunk(file, "IDAT", compressed(rows_of(picture)));
  add_chunk(file, "IEND", "");
  return file;
}

}  // namespace sagitta
