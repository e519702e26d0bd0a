#pragma once

/// The forms in which a program tells what it understands: its manual page, and completions for three shells.

#include <string>

#include "manual/ProgramTable.hpp"

namespace sagitta {

/// "man", "bash", "zsh", "fish".
const std::vector<std::string>& manual_forms();

/// The text of that form; "" for a word that is no form.
std::string manual_text(const ProgramTable& program, const std::string& form);

}  // namespace sagitta
