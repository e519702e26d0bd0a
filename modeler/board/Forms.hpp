#pragma once

/// Ways of saying one thing with different keys, of which a board file uses one.

#include <span>
#include <string_view>

namespace sagitta {

struct Form {
  std::string_view keys;    ///< all of them are needed, separated by spaces
  std::string_view extras;  ///< may be added
};

struct FormGroup {
  std::string_view table;
  std::string_view thing;  ///< what they say: "the width of the board"
  std::span<const Form> forms;
  bool needed = false;              ///< one of them must be there
  std::string_view only_with = {};  ///< the value of `shape` that the group is about; empty: always
};

std::span<const FormGroup> form_groups();

}  // namespace sagitta
