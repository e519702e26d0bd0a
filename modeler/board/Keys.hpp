#pragma once

/// What every key of a board file means, for reading: from the field table.

#include <string>
#include <string_view>
#include <vector>

#include "board/Fields.hpp"

namespace sagitta {

/// "mm", "list of mm", "degrees", "whole number", "text", ...: what stands behind the equals sign.
std::string unit_text(const Field& field);
/// "0, or 0.1 to 150", "\"arc\" or \"level\"", or empty when every value is allowed.
std::string range_text(const Field& field);
/// "3.2 mm", "required", "required with profile = \"compound\"", "required, or nut_margin and heel_margin, or ..".
std::string default_text(const Field& field);

/// The text of `sagitta keys`: aligned columns, table by table. `only`: a table ("scale"), else a key of every table
/// that has it ("depth"), or one key ("slots.depth"); empty: all. Empty where there is none of that name.
std::string keys_text(std::string_view only = {});

/// The fields that `only` stands for, as keys_text() takes it.
std::vector<const Field*> fields_named(std::string_view only);

/// Every name that fields_named() knows, each once.
std::vector<std::string> field_names();

/// The reference of the board file in Markdown, as the README holds it.
std::string keys_markdown();

}  // namespace sagitta
