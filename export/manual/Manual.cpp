#include "manual/Manual.hpp"

#include "manual/Completion.hpp"
#include "manual/ManPage.hpp"

namespace sagitta {

const std::vector<std::string>& manual_forms() {
  static const std::vector<std::string> forms{"man", "bash", "zsh", "fish"};
  return forms;
}

std::string manual_text(const ProgramTable& program, const std::string& form) {
  if (form == "man") return man_page(program);
  if (form == "bash") return bash_completion(program);
  if (form == "zsh") return zsh_completion(program);
  return form == "fish" ? fish_completion(program) : std::string();
}

}  // namespace sagitta
