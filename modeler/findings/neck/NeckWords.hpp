#pragma once

/// What is said of a neck that was read from its file.

#include <string>

#include "neck/NeckShape.hpp"
#include "rules/Judge.hpp"

namespace sagitta {

/// Which face was found, how the board was moved to it, how sure that is and how much of the board was compared.
std::string place_words(const NeckShape& shape, const Judge& judge);

/// That the neck fits once it is scaled: another unit was meant than the file says.
std::string unit_words(const NeckShape& shape);

/// Why nothing is measured: no place, several, or too little of the board on it.
std::string unsure_words(const NeckShape& shape);

/// "; its middle is ..": what the two sides were told apart by, where nothing in the file tells.
std::string sharing_words(const NeckShape& shape);

/// "6.35 mm wide, 10 mm deep, and runs from x = .. to .., open at the nut end".
std::string channel_words(const FoundChannel& channel, const Judge& judge);

}  // namespace sagitta
