#pragma once

/// Messages for error numbers of the operating system.

#include <string>

namespace sagitta {

/// The reason of a system call's error number (errno) in a builder's words, with what to do where that is clear.
std::string system_reason(int error);

}  // namespace sagitta
