#pragma once

/// How a request to stop (Ctrl+C, SIGTERM, SIGHUP) reaches the work that is being done.

#include <stdexcept>

#include "plane/Cancel.hpp"

namespace sagitta {

/// The user or the system asked the program to stop.
struct Interrupted : std::runtime_error {
  Interrupted() : std::runtime_error("stopped on request") {}
};

/// From this call on, a file that is larger than the system's limit is an error instead of a signal.
void make_file_limit_an_error();

/// From this call on, SIGINT (Ctrl+C), SIGHUP and SIGTERM set the token instead of ending the program at once, so that
/// no incomplete folder is left. Does what make_file_limit_an_error() does too.
Cancel catch_interrupts();

/// Throws Interrupted when the token was asked to stop.
void stop_if_wanted(const Cancel& cancel);

}  // namespace sagitta
