#include "board/ShapeKeys.hpp"

#include <algorithm>

#include "board/Fields.hpp"

namespace sagitta {
namespace {

constexpr std::string_view size_keys[] = {"diameter", "along", "across", "across_nut", "across_heel"};

const Field& field_of(std::string_view key) { return *find_field("inlays." + std::string(key)); }

}  // namespace

bool takes(const Inlay& inlay, std::string_view key) {
  static const Board any;  // what an inlay's keys need is said by its own row
  return is_used(field_of(key), any, &inlay);
}

std::vector<InlaySize> sizes_of(const Inlay& inlay) {
  std::vector<InlaySize> sizes;
  for (const std::string_view key : size_keys) {
    if (!takes(inlay, key)) continue;
    const Value value = field_of(key).access.get(&inlay);
    if (const double* size = std::get_if<double>(&value)) sizes.push_back({key, *size});
  }
  return sizes;
}

InlaySize largest_size(const Inlay& inlay) {
  InlaySize largest;
  for (const InlaySize& size : sizes_of(inlay))
    if (size.value > largest.value) largest = size;
  return largest;
}

std::optional<InlaySize> size_all_round(const Inlay& inlay) {
  const auto taken = std::count_if(std::begin(size_keys), std::end(size_keys),
                                   [&](std::string_view key) { return takes(inlay, key); });
  const std::vector<InlaySize> sizes = sizes_of(inlay);
  return taken == 1 && !sizes.empty() ? std::optional(sizes.front()) : std::nullopt;
}

Inlay with_size(Inlay inlay, const InlaySize& size) {
  field_of(size.key).access.set(&inlay, size.value);
  return inlay;
}

}  // namespace sagitta
