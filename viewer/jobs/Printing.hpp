#pragma once

/// A paper sent to a printer by the program that the system has for it (lp or lpr), started without a shell.

#include <filesystem>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

namespace sagitta::viewer {

/// What is printed.
struct PrintOrder {
  std::string document;          ///< "template.pdf"
  std::string bytes;             ///< the PDF
  std::string paper;             ///< "A4"
  std::filesystem::path folder;  ///< where the file may lie until it is taken
};

/// How it came out.
struct Printed {
  bool good = false;
  std::string words;  ///< what happened, and what to do where it went wrong
};

/// Arguments after the program's name: in true size on this paper.
std::vector<std::string> lp_arguments(const std::string& paper, const std::filesystem::path& file);
std::vector<std::string> lpr_arguments(const std::string& paper, const std::filesystem::path& file);

class Printing {
 public:
  Printing() = default;
  ~Printing();
  Printing(const Printing&) = delete;
  Printing& operator=(const Printing&) = delete;

  /// Hands the paper over; where that cannot even begin, the answer is there at once. `wake` is called from another
  /// thread when there is one.
  void start(PrintOrder order, std::function<void()> wake);
  bool busy() const;
  /// The outcome, once.
  std::optional<Printed> take();

 private:
  void answer(Printed outcome);

  mutable std::mutex mutex_;
  bool busy_ = false;
  std::optional<Printed> outcome_;
  std::function<void()> wake_;
  std::thread thread_;
};

}  // namespace sagitta::viewer
