#include "cad/Interrupt.hpp"

#include <csignal>

namespace sagitta {
namespace {

/// The only state that a signal handler can reach; made before the handler is.
const Cancel& token() {
  static const Cancel cancel;
  return cancel;
}

void handle(int) { token().request(); }

}  // namespace

void make_file_limit_an_error() { std::signal(SIGXFSZ, SIG_IGN); }

Cancel catch_interrupts() {
  Cancel cancel = token();
  for (const int signal : {SIGINT, SIGTERM, SIGHUP}) std::signal(signal, handle);
  make_file_limit_an_error();
  return cancel;
}

void stop_if_wanted(const Cancel& cancel) {
  if (cancel.wanted()) throw Interrupted();
}

}  // namespace sagitta
