#include "jobs/Printing.hpp"

#include <sys/wait.h>

#include <utility>

#include "files/SystemError.hpp"
#include "files/WriteFile.hpp"
#include "jobs/OtherProgram.hpp"

namespace sagitta::viewer {

namespace fs = std::filesystem;

namespace {

/// The program and how it is called.
struct PrintProgram {
  fs::path program;
  bool is_lp = true;
};

PrintProgram print_program() {
  if (const fs::path lp = find_program("lp"); !lp.empty()) return {lp, true};
  return {find_program("lpr"), false};
}

std::string failed_words(const fs::path& program, int status, const std::string& document) {
  const std::string how = WIFEXITED(status) ? " gave up (exit code " + std::to_string(WEXITSTATUS(status)) + ")"
                                            : std::string(" was ended");
  return document + " was not printed: " + program.string() + how +
         ". Look whether a printer is set up and switched on; or export the folder and print the PDF from it.";
}

}  // namespace

std::vector<std::string> lp_arguments(const std::string& paper, const fs::path& file) {
  return {"-o", "media=" + paper, "-o", "print-scaling=none", "--", file.string()};
}

std::vector<std::string> lpr_arguments(const std::string& paper, const fs::path& file) {
  return {"-o", "media=" + paper, "-o", "print-scaling=none", file.string()};
}

Printing::~Printing() {
  if (thread_.joinable()) thread_.join();
}

void Printing::start(PrintOrder order, std::function<void()> wake) {
  if (busy()) return;
  if (thread_.joinable()) thread_.join();
  wake_ = std::move(wake);
  const PrintProgram with = print_program();
  if (with.program.empty())
    return answer({false,
                   "No program that prints was found (lp or lpr, of the package cups-client). Install it, or "
                   "export the folder and print " +
                       order.document + " from it."});
  std::error_code trouble;
  fs::create_directories(order.folder, trouble);
  const fs::path file =
      fs::absolute(order.folder / ("printing-" + fs::path(order.document).filename().string()), trouble);
  if (const int wrong = replace_file(file, order.bytes); wrong != 0)
    return answer({false, file.string() + " could not be written: " + system_reason(wrong) + "."});
  const Started other =
      started(with.program, with.is_lp ? lp_arguments(order.paper, file) : lpr_arguments(order.paper, file));
  if (other.child == 0) return fs::remove(file, trouble), answer({false, other.trouble});
  {
    const std::lock_guard lock(mutex_);
    busy_ = true;
  }
  thread_ = std::thread([this, child = other.child, program = with.program, file, document = order.document] {
    int status = 0;
    ::waitpid(child, &status, 0);
    std::error_code gone;
    fs::remove(file, gone);
    const bool good = WIFEXITED(status) && WEXITSTATUS(status) == 0;
    answer({good, good ? document + " is with the printer. Measure a length on the paper before you trust it."
                       : failed_words(program, status, document)});
  });
}

bool Printing::busy() const {
  const std::lock_guard lock(mutex_);
  return busy_;
}

std::optional<Printed> Printing::take() {
  const std::lock_guard lock(mutex_);
  return std::exchange(outcome_, std::nullopt);
}

void Printing::answer(Printed outcome) {
  {
    const std::lock_guard lock(mutex_);
    busy_ = false;
    outcome_ = std::move(outcome);
  }
  if (wake_) wake_();
}

}  // namespace sagitta::viewer
