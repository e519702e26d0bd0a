#pragma once

/// The board's drawings and what the cutters make of them, worked out again only when something that they depend on
/// has changed. For one thread at a time.

#include <filesystem>
#include <map>
#include <memory>
#include <vector>

#include "inlay/FigureStore.hpp"
#include "prepared/Drawn.hpp"

namespace sagitta {

struct FittedInlays {
  Drawings drawings;                 ///< empty when they could not be read
  std::map<std::string, Box> boxes;  ///< of the drawings that have something filled, as drawn
  Inlays inlays;                     ///< empty when there are faults
  Faults faults;
};

class InlayFitter {
 public:
  /// `outside`: whether drawings may lie outside the board's folder.
  explicit InlayFitter(Outside outside = Outside::refused) : outside_(outside) {}

  /// Null when it was cancelled. Steps are counted as for fit_inlays().
  std::shared_ptr<const FittedInlays> fit(const Drawn& drawn, const Cancel& cancel = {},
                                          const ProgressCounter& progress = {});
  Outside outside() const { return outside_; }

 private:
  struct Asked {
    std::vector<Inlay> inlays;
    std::vector<Cut> cuts;
    std::optional<Loop> outline;  ///< of the board, where there are cuts
    std::vector<Cutter> cutters;
    std::vector<Marker> markers;
    Hand hand = Hand::right;
    std::map<std::string, double> pocket_depths, piece_thickness;
    double thickness = 0;  ///< of the board, where pocket depths were measured
    std::string folder;
    std::vector<std::filesystem::file_time_type> written;
    bool operator==(const Asked&) const = default;
  };
  Outside outside_;
  Asked asked_;
  FigureStore store_;
  std::shared_ptr<const FittedInlays> answer_;
};

}  // namespace sagitta
