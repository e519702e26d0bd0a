#pragma once

/// What builders usually decide for a key, and why: told beside the key's meaning where a value is chosen. No rule: the
/// field table says what is allowed, the findings say what goes wrong.

#include <string_view>

namespace sagitta {

/// A usual range in mm, degrees or plain numbers as the key's field has them; none where least is most.
struct Practice {
  std::string_view key;
  double least = 0, most = 0;
  std::string_view reason;  ///< whole sentences
};

/// The practice of a key ("slots.depth", "inlays.depth"); null where there is none to tell. Common practice, no source,
/// but for what the comments in Practice.cpp name.
const Practice* practice_of(std::string_view key);

/// All of them, for tests.
const Practice* begin_practice();
const Practice* end_practice();

}  // namespace sagitta
