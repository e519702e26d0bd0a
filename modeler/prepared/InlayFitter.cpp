#include "prepared/InlayFitter.hpp"

#include "inlay/Flatten.hpp"

namespace sagitta {

std::shared_ptr<const FittedInlays> InlayFitter::fit(const Drawn& drawn, const Cancel& cancel,
                                                     const ProgressCounter& progress) {
  const Board& board = drawn.board;
  Asked asked{board.inlays,
              board.cuts,
              {},
              board.cutters,
              drawn.layout.markers,
              board.hand,
              board.measured.pocket_depths,
              board.measured.piece_thickness,
              board.measured.pocket_depths.empty() ? 0 : board.board.thickness,
              board.folder,
              {}};
  if (!board.cuts.empty()) asked.outline = drawn.layout.outline;
  const auto note_hour = [&](const std::string& file) {
    std::error_code missing;
    asked.written.push_back(std::filesystem::last_write_time(std::filesystem::path(board.folder) / file, missing));
  };
  for (const Inlay& inlay : board.inlays) note_hour(inlay.file);
  for (const Cut& cut : board.cuts) note_hour(cut.file);
  if (answer_ && asked == asked_) return answer_;
  // A file is known by its place in the list and by its hour.
  if (asked.written != asked_.written || asked.folder != asked_.folder) store_.forget();
  FittedInlays fitted;
  auto drawings = read_drawings(board, outside_);
  if (auto* faults = std::get_if<Faults>(&drawings)) {
    fitted.faults = std::move(*faults);
  } else {
    fitted.drawings = std::get<Drawings>(std::move(drawings));
    for (const auto& [file, artwork] : fitted.drawings)
      if (!artwork.regions.empty()) fitted.boxes[file] = bounds(artwork);
    auto inlays = fit_inlays(board, drawn.layout, fitted.drawings, cancel, progress, &store_);
    if (cancel.wanted()) return nullptr;
    if (auto* wrong = std::get_if<Faults>(&inlays))
      fitted.faults = std::move(*wrong);
    else
      fitted.inlays = std::get<Inlays>(std::move(inlays));
  }
  asked_ = std::move(asked);
  return answer_ = std::make_shared<const FittedInlays>(std::move(fitted));
}

}  // namespace sagitta
