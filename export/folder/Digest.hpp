#pragma once

/// The checksum of files.

#include <string>
#include <string_view>

namespace sagitta {

/// SHA-256 of the bytes as 64 lower-case hex digits (FIPS 180-4). Throws std::runtime_error when the system's
/// cryptographic library refuses.
std::string sha256(std::string_view bytes);

}  // namespace sagitta
