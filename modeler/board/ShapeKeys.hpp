#pragma once

/// The keys that an inlay's shape takes, by the field table.

#include <optional>
#include <string_view>
#include <vector>

#include "board/Board.hpp"

namespace sagitta {

/// Whether the shape takes a key of [[inlays]]: "file", "diameter".
bool takes(const Inlay& inlay, std::string_view key);

/// A size of an inlay, as the board's file has it. mm.
struct InlaySize {
  std::string_view key;  ///< "diameter"
  double value = 0;
};
/// The keys that size its shape, as far as they are given; the size along the board first.
std::vector<InlaySize> sizes_of(const Inlay& inlay);
/// The largest of them.
InlaySize largest_size(const Inlay& inlay);
/// The one size that makes the piece smaller all round: 2 d less of it are d less on every side. None where the shape
/// takes several.
std::optional<InlaySize> size_all_round(const Inlay& inlay);
/// The inlay with another value for one of its sizes.
Inlay with_size(Inlay inlay, const InlaySize& size);

}  // namespace sagitta
