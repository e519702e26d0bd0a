/// A library to be loaded before a program (LD_PRELOAD): the n-th call of one kind that touches a folder fails.
///
///   FAIL_CALL=write|fsync|close|rename|open|mkdir|link   which kind
///   FAIL_AT=n                                            from 1; 0: none
///   FAIL_ERROR=number                                    the errno it fails with
///   FAIL_BELOW=/folder                                   only calls that touch files below it
///   FAIL_COUNT=/file                                     how many such calls there were is written here in the end
///   NO_EXCHANGE=1                                        renameat2() knows no exchange, as on older file systems

#include <dlfcn.h>
#include <fcntl.h>
#include <limits.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <atomic>
#include <cerrno>

namespace {

std::atomic<long> calls{0};

const char* setting(const char* name) {
  const char* value = getenv(name);
  return value ? value : "";
}

template <typename Function>
Function* next(const char* name) {
  return reinterpret_cast<Function*>(dlsym(RTLD_NEXT, name));
}

bool below(const char* path) {
  const char* folder = setting("FAIL_BELOW");
  return *folder && path && strncmp(path, folder, strlen(folder)) == 0;
}

bool below(int file) {
  char link[64], path[PATH_MAX];
  snprintf(link, sizeof link, "/proc/self/fd/%d", file);
  const ssize_t length = readlink(link, path, sizeof path - 1);
  if (length <= 0) return false;
  path[length] = 0;
  return below(path);
}

/// Whether this call is the one that fails; errno is set then.
template <typename What>
bool fails(const char* kind, What what) {
  if (strcmp(setting("FAIL_CALL"), kind) != 0 || !below(what)) return false;
  if (++calls != atol(setting("FAIL_AT"))) return false;
  errno = atoi(setting("FAIL_ERROR"));
  return true;
}

__attribute__((destructor)) void tell_count() {
  const char* path = setting("FAIL_COUNT");
  if (!*path) return;
  if (FILE* file = fopen(path, "w")) {
    fprintf(file, "%ld", calls.load());
    fclose(file);
  }
}

}  // namespace

extern "C" {

ssize_t write(int file, const void* bytes, size_t size) {
  if (fails("write", file)) return -1;
  return next<ssize_t(int, const void*, size_t)>("write")(file, bytes, size);
}

int fsync(int file) {
  if (fails("fsync", file)) return -1;
  return next<int(int)>("fsync")(file);
}

int close(int file) {
  const bool failing = fails("close", file);
  const int error = errno;
  const int closed = next<int(int)>("close")(file);  // close(2): the descriptor is gone also when an error is told
  if (!failing) return closed;
  errno = error;
  return -1;
}

int rename(const char* from, const char* to) {
  if (fails("rename", to)) return -1;
  return next<int(const char*, const char*)>("rename")(from, to);
}

int renameat2(int from_folder, const char* from, int to_folder, const char* to, unsigned int flags) {
  if (*setting("NO_EXCHANGE")) return errno = EINVAL, -1;
  if (fails("rename", to)) return -1;
  return next<int(int, const char*, int, const char*, unsigned int)>("renameat2")(from_folder, from, to_folder, to,
                                                                                  flags);
}

int mkdir(const char* path, mode_t mode) {
  if (fails("mkdir", path)) return -1;
  return next<int(const char*, mode_t)>("mkdir")(path, mode);
}

int linkat(int from_folder, const char* from, int to_folder, const char* to, int flags) {
  if (fails("link", to)) return -1;
  return next<int(int, const char*, int, const char*, int)>("linkat")(from_folder, from, to_folder, to, flags);
}

int open(const char* path, int flags, ...) {
  mode_t mode = 0;
  if (flags & (O_CREAT | O_TMPFILE)) {
    va_list rest;
    va_start(rest, flags);
    mode = va_arg(rest, mode_t);
    va_end(rest);
  }
  if (fails("open", path)) return -1;
  return next<int(const char*, int, ...)>("open")(path, flags, mode);
}
}
