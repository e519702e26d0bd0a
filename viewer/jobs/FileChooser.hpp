#pragma once

/// The desktop's own dialog for files (zenity or kdialog), started without a shell and waited for in the background.

#include <sys/types.h>

#include <filesystem>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

namespace sagitta::viewer {

/// What a file is wanted for.
struct FileQuestion {
  std::string title;            ///< "Open a board"
  std::filesystem::path start;  ///< a file or a folder to begin at
  bool saving = false;
  std::string kind;                   ///< "Boards"
  std::vector<std::string> patterns;  ///< "*.toml"
};

/// How it is put to a program of the desktop: its arguments after the program's name.
std::vector<std::string> zenity_arguments(const FileQuestion& question);
std::vector<std::string> kdialog_arguments(const FileQuestion& question);

class FileChooser {
 public:
  FileChooser() = default;
  ~FileChooser();
  FileChooser(const FileChooser&) = delete;
  FileChooser& operator=(const FileChooser&) = delete;

  /// Whether the desktop has such a dialog.
  static bool available();
  /// Asks; false when there is no program or it cannot be started. `wake` is called from another thread when it has
  /// answered.
  bool ask(const FileQuestion& question, std::function<void()> wake);
  bool asking() const;
  /// The answer, once: a path, or an empty one when the dialog was closed. Nothing while it is open, or when nothing
  /// was asked.
  std::optional<std::filesystem::path> take();
  /// Closes the dialog; there is no answer then.
  void close();

 private:
  mutable std::mutex mutex_;
  pid_t child_ = 0;
  std::optional<std::filesystem::path> answer_;
  std::thread thread_;
};

}  // namespace sagitta::viewer
