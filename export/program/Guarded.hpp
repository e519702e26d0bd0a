#pragma once

/// The place where the program catches everything that a command throws.

#include <functional>
#include <stdexcept>
#include <string>

namespace sagitta {

/// What the geometry kernel threw, in words.
struct KernelFailure : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// Writes the message to the standard error, foreign text in it made safe, and gives the code back. `more`: lines of
/// our own below it.
int complain(const std::string& message, int code, const std::string& more = "");

/// Runs the work and gives its exit code. The one place of the program where what it throws is caught and put into
/// words.
int guarded(const std::function<int()>& run);

}  // namespace sagitta
