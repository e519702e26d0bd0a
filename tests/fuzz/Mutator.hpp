#pragma once

/// Gives a fuzz target the changes of Mutation.hpp beside the fuzzer's own. Include it in one source of the target.

#include <cstdint>
#include <cstring>

#include "made/Mutation.hpp"

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* data, std::size_t size, std::size_t most);

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* data, std::size_t size, std::size_t most, unsigned seed) {
  if (seed % 4 == 0) return LLVMFuzzerMutate(data, size, most);
  const std::string text = sagitta::test::Mutation(seed).of({reinterpret_cast<const char*>(data), size});
  const std::size_t kept = std::min(most, text.size());
  std::memcpy(data, text.data(), kept);
  return kept;
}
