#pragma once

/// The page about frets: places, wire, measured slots.

#include <optional>
#include <string>

#include "document/Document.hpp"
#include "jobs/Results.hpp"
#include "requests/Request.hpp"
#include "widgets/LengthText.hpp"
#include "widgets/Ui.hpp"

namespace sagitta::viewer {

/// The page about each fret: what it shows and what is half typed on it.
enum class FretPage { places, wire, measured };
struct Measuring {
  FretPage page = FretPage::places;
  std::optional<std::size_t> row, next, refused;  ///< being typed, to be typed next, not taken
  std::string text, initial, why;
};

/// Each slot's place, its wire, and where it was measured.
Requests draw_fret_page(Ui& ui, Document& document, Measuring& measuring, const Results& results, const Manner& manner);

}  // namespace sagitta::viewer
