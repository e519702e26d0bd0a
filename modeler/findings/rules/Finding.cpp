#include "rules/Finding.hpp"

namespace sagitta {
std::string_view severity_name(Severity severity) {
  switch (severity) {
    case Severity::stop:
      return "stop";
    case Severity::look:
      return "look";
    case Severity::note:
      break;
  }
  return "note";
}

}  // namespace sagitta
