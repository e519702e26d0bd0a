#pragma once

/// The place where a thread catches everything that its job throws.

#include <functional>
#include <optional>
#include <string>

namespace sagitta {

/// The edge of a thread: runs `job` and lets nothing that it throws get out. What the geometry kernel throws is no
/// std::exception (Standard_Failure of OCCT 7.6), and would end the program. Returns what went wrong, in words for a
/// person; nullopt when the job ran to its end.
std::optional<std::string> failure_of(const std::function<void()>& job);

}  // namespace sagitta
