#include "folder/Digest.hpp"

#include <openssl/evp.h>

#include <array>
#include <stdexcept>

namespace sagitta {

std::string sha256(std::string_view bytes) {
  std::array<unsigned char, EVP_MAX_MD_SIZE> digest;
  unsigned int size = 0;
  if (EVP_Digest(bytes.data(), bytes.size(), digest.data(), &size, EVP_sha256(), nullptr) != 1)
    throw std::runtime_error("the system's cryptographic library cannot compute a SHA-256");
  constexpr std::string_view hex = "0123456789abcdef";
  std::string text;
  text.reserve(2 * size);
  for (unsigned int i = 0; i < size; ++i) {
    text += hex[digest[i] >> 4];
    text += hex[digest[i] & 15];
  }
  return text;
}

}  // namespace sagitta
