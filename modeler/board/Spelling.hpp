#pragma once

/// The nearest correct word to a word that is misspelt.

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace sagitta {

/// Letters to add, drop, change or swap with a neighbour to get from one word to the other.
int edit_distance(std::string_view a, std::string_view b);

/// The word that was probably meant: the nearest, else the first that begins so; empty when there is neither.
std::string nearest_word(std::string_view word, const std::vector<std::string>& known);

/// The words of a list separated by single spaces.
std::vector<std::string> words(std::string_view list);

}  // namespace sagitta
