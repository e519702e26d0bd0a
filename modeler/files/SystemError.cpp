#include "files/SystemError.hpp"

#include <cerrno>
#include <cstring>

namespace sagitta {

std::string system_reason(int error) {
  switch (error) {
    case ENOSPC:
    case EDQUOT:
      return "the disk is full; make room or name a place on another disk";
    case EACCES:
    case EPERM:
      return "you may not write there; name a folder of your own";
    case EROFS:
      return "that disk can only be read; name a place on another disk";
    case EFBIG:
      return "files may not grow that large here; name a place on another disk";
    case ENAMETOOLONG:
      return "the name is too long";
    case ENOTEMPTY:
    case EEXIST:
      return "something else wrote into it meanwhile; name another place";
    case EBUSY:
    case EXDEV:
      return "it is the top folder of a disk; name a folder below it";
    case ENOTDIR:
      return "a part of that path is a file, not a folder";
    case ENOENT:
      return "a part of that path does not exist";
    case EISDIR:
      return "it is a folder, not a file";
    case EOPNOTSUPP:
      return "it is a pipe or a device, not a file";
    default:
      return std::strerror(error);
  }
}

}  // namespace sagitta
