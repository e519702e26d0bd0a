#pragma once

/// How a request to stop (Ctrl+C, SIGTERM, SIGHUP) reaches the work that is being done.

#include <stdexcept>

#include "plane/Cancel.hpp"

namespace sagitta {

/// The user or the system asked the program to stop.
struct Interrupted : std::runtime_error {
  Interrupted() : std::runtime_error("stopped on request") {}
};

/// From now on Ctrl+C, a hang-up and a polite kill ask the token to stop instead of ending the program on the spot, so
/// that nothing half made stays behind; and a file that outgrows the system's limit is an error instead of the end.
Cancel catch_interrupts();

/// Throws Interrupted when the token was asked to stop.
void stop_if_wanted(const Cancel& cancel);

}  // namespace sagitta
