#pragma once

#include <string>

namespace sagitta {

/// Every key of a board file for reading on a terminal: table by table, with what it takes, its default and its help.
std::string key_text();

/// The same as Markdown tables, as the README carries them.
std::string key_markdown();

}  // namespace sagitta
