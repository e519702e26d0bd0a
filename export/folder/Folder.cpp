#include "folder/Folder.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>

#include "files/SystemError.hpp"
#include "files/WriteFile.hpp"

namespace fs = std::filesystem;

namespace sagitta {
namespace {

using Kind = FolderState::Kind;

/// Absolute, links resolved, without a slash at the end.
fs::path resolved(const fs::path& path) {
  std::error_code error;
  fs::path result = fs::weakly_canonical(fs::absolute(path, error), error);
  if (error) fail_folder(path, system_reason(error.value()));
  return result.has_filename() ? result : result.parent_path();
}

int renamed(const fs::path& from, const fs::path& to) { return ::rename(from.c_str(), to.c_str()) == 0 ? 0 : errno; }

int exchanged(const fs::path& a, const fs::path& b) {
  return ::renameat2(AT_FDCWD, a.c_str(), AT_FDCWD, b.c_str(), RENAME_EXCHANGE) == 0 ? 0 : errno;
}

/// Gives a folder the mode of another, and its group and owner where the user may.
int take_mode(const fs::path& folder, const fs::path& from) {
  struct stat old {};
  if (::stat(from.c_str(), &old) != 0) return errno == ENOENT ? 0 : errno;
  // Refused to most users; the mode is what must be kept. It comes second, because a new owner takes bits from it.
  if (::chown(folder.c_str(), static_cast<uid_t>(-1), old.st_gid) == 0 && ::geteuid() == 0)
    if (::chown(folder.c_str(), old.st_uid, static_cast<gid_t>(-1)) != 0) return errno;
  return ::chmod(folder.c_str(), old.st_mode & 07777) == 0 ? 0 : errno;
}

/// Sees the names in a folder and those below it onto the disk.
int sync_tree(const fs::path& folder) {
  std::error_code error;
  fs::recursive_directory_iterator entry(folder, error), end;
  for (; !error && entry != end; entry.increment(error))
    if (entry->is_directory(error))
      if (const int wrong = sync_folder(entry->path()); wrong != 0) return wrong;
  return error ? error.value() : sync_folder(folder);
}

/// What changed while the files were being made.
std::string late(const FolderState& state) {
  return state.free() ? "it changed meanwhile; try again" : why_left_alone(state);
}

}  // namespace

Folder::Folder(const fs::path& path, bool replace, const std::vector<fs::path>& inputs)
    : wanted_(resolved(path)), inputs_(inputs), replace_(replace) {
  clear_left_folders(wanted_.parent_path());
  looked_at();
  try {
    make_parents();
    temporary_.emplace(wanted_);
  } catch (const FolderError&) {
    discard();
    throw;
  }
}

Folder::~Folder() { discard(); }

FolderState Folder::looked_at() const {
  FolderState state = look_at_folder(wanted_, inputs_);
  if (state.replaceable() && !replace_)
    fail_folder(wanted_, "it is not empty; name a new folder, or add --replace to put the new files in its place");
  if (!state.free() && !state.replaceable()) fail_folder(wanted_, why_left_alone(state));
  return state;
}

void Folder::make_parents() {
  std::error_code error;
  std::vector<fs::path> missing;
  for (fs::path parent = wanted_.parent_path(); !fs::exists(parent, error) && parent.has_relative_path();
       parent = parent.parent_path())
    missing.insert(missing.begin(), parent);
  for (const fs::path& parent : missing) {
    if (fs::create_directory(parent, error)) parents_.push_back(parent);
    if (error) fail_folder(wanted_, system_reason(error.value()));
  }
}

void Folder::discard() noexcept {
  std::error_code ignored;
  temporary_.reset();
  for (; !parents_.empty(); parents_.pop_back()) fs::remove(parents_.back(), ignored);
}

void Folder::add(const std::string& name, const std::string& bytes) {
  const fs::path path = temporary_->made() / name;
  std::error_code error;
  fs::create_directories(path.parent_path(), error);
  if (error) fail_folder(wanted_, system_reason(error.value()));
  if (const int wrong = make_file(path, bytes); wrong != 0) fail_folder(wanted_, system_reason(wrong));
  const std::lock_guard lock(adding_);
  ++files_;
  bytes_ += bytes.size();
}

void Folder::keep() {
  if (const int wrong = sync_tree(temporary_->made()); wrong != 0) fail_folder(wanted_, system_reason(wrong));
  const FolderState state = looked_at();
  if (const int wrong = take_mode(temporary_->made(), wanted_); wrong != 0) fail_folder(wanted_, system_reason(wrong));
  state.free() ? place() : exchange();
  parents_.clear();
  discard();
}

void Folder::place() {
  // A rename takes the place of an absent or empty folder in one step, and fails on any other.
  if (const int wrong = renamed(temporary_->made(), wanted_); wrong != 0) fail_folder(wanted_, system_reason(wrong));
  if (const int wrong = sync_folder(wanted_.parent_path()); wrong != 0) {
    renamed(wanted_, temporary_->made());
    fail_folder(wanted_, system_reason(wrong));
  }
}

void Folder::exchange() {
  const fs::path made = temporary_->made();
  const int refused = exchanged(made, wanted_);
  if (refused == EINVAL || refused == ENOSYS) return replace_in_two_steps();
  if (refused != 0) fail_folder(wanted_, system_reason(refused));
  // Whatever came into the old folder up to the last moment is seen now, before anything of it is removed.
  const FolderState old = look_at_folder(made, inputs_);
  const int wrong = old.replaceable() ? sync_folder(wanted_.parent_path()) : 0;
  if (old.replaceable() && wrong == 0) return;
  if (exchanged(made, wanted_) != 0) temporary_->leave();
  fail_folder(wanted_, wrong != 0 ? system_reason(wrong) : late(old));
}

void Folder::replace_in_two_steps() {
  const fs::path made = temporary_->made(), aside = temporary_->aside();
  if (const int wrong = renamed(wanted_, aside); wrong != 0) fail_folder(wanted_, system_reason(wrong));
  const FolderState old = look_at_folder(aside, inputs_);
  int wrong = old.replaceable() ? renamed(made, wanted_) : 0;
  if (old.replaceable() && wrong == 0) {
    wrong = sync_folder(wanted_.parent_path());
    if (wrong == 0) return;
    renamed(wanted_, made);
  }
  if (renamed(aside, wanted_) != 0) temporary_->leave();
  fail_folder(wanted_, wrong != 0 ? system_reason(wrong) : late(old));
}

}  // namespace sagitta
