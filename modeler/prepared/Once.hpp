#pragma once

/// A value that is made when it is first asked for.

#include <mutex>
#include <optional>

namespace sagitta {

/// A value that is made when it is first asked for, once, whichever thread asks: the others wait for it. Where making
/// it throws, it is made again for the next that asks.
template <typename Value>
class Once {
 public:
  template <typename Make>
  const Value& get(const Make& make) const {
    const std::lock_guard lock(making_);
    if (!value_) value_.emplace(make());
    return *value_;
  }

 private:
  mutable std::mutex making_;
  mutable std::optional<Value> value_;
};

}  // namespace sagitta
