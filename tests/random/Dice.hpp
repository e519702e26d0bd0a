#pragma once

#include <cstdint>
#include <initializer_list>
#include <vector>

namespace sagitta::random_boards {

/// Random numbers that are the same on every machine. SplitMix64: Steele, Lea, Flood, "Fast splittable pseudorandom
/// number generators", 2014.
class Dice {
 public:
  explicit Dice(std::uint64_t number) : state_(number) {}

  std::uint64_t bits() {
    std::uint64_t z = (state_ += 0x9e3779b97f4a7c15ULL);
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
    return z ^ (z >> 31);
  }
  /// In [low, high).
  double real(double low, double high) { return low + (high - low) * static_cast<double>(bits() >> 11) * 0x1p-53; }
  /// low .. high, both included.
  int whole(int low, int high) { return low + static_cast<int>(bits() % static_cast<std::uint64_t>(high - low + 1)); }
  bool chance(double share) { return real(0, 1) < share; }
  template <class T>
  T one_of(std::initializer_list<T> values) {
    return values.begin()[whole(0, static_cast<int>(values.size()) - 1)];
  }
  template <class T>
  T one_of(const std::vector<T>& values) {
    return values[static_cast<std::size_t>(whole(0, static_cast<int>(values.size()) - 1))];
  }

 private:
  std::uint64_t state_;
};

}  // namespace sagitta::random_boards
