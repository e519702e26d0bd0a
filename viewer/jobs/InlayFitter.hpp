#pragma once

/// The board's drawings and what the cutters make of them, worked out again only when something that they depend on
/// has changed.

#include <filesystem>
#include <memory>
#include <vector>

#include "inlay/FigureStore.hpp"

namespace sagitta::viewer {

struct FittedInlays {
  Drawings drawings;                 ///< empty when they could not be read
  std::map<std::string, Box> boxes;  ///< of the drawings that have something filled, as drawn
  Inlays inlays;                     ///< empty when there are faults
  Faults faults;
};

class InlayFitter {
 public:
  /// Null when it was cancelled. Steps are counted as for fit_inlays().
  std::shared_ptr<const FittedInlays> fit(const Board& board, const Layout& layout, const Cancel& cancel,
                                          const Tally& tally);

 private:
  struct Asked {
    std::vector<Inlay> inlays;
    std::vector<Cutter> cutters;
    std::vector<Marker> markers;
    Hand hand = Hand::right;
    std::string folder;
    std::vector<std::filesystem::file_time_type> written;
    bool operator==(const Asked&) const = default;
  };
  Asked asked_;
  FigureStore store_;
  std::shared_ptr<const FittedInlays> answer_;
};

}  // namespace sagitta::viewer
