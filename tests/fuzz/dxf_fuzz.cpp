// Any bytes are either a drawing or are refused with a reason: no crash, no hang, bounded memory.

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "Sound.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  sagitta::test::expect_sound_or_refused(
      sagitta::dxf_artwork(std::string_view(reinterpret_cast<const char*>(data), size)));
  return 0;
}
