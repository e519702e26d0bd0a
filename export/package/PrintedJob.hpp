#pragma once

/// Everything that a hand-off folder has on paper.

#include <vector>

#include "drawing/BoardDrawing.hpp"
#include "jobsheet/JobHtml.hpp"
#include "mesh/Mesh.hpp"
#include "package/DrawingFiles.hpp"
#include "plane/Cancel.hpp"

namespace sagitta {

/// A stage's picture for the job sheet: the bytes of a PNG.
std::string job_picture(const Board& board, const Mesh& mesh);

/// The drawings' books and the job sheet, as write_hand_off() writes them with triangles within `deviation`. Throws
/// Interrupted when the token is asked to stop.
std::vector<PrintedBook> printed_job(const PreparedBoard& ready, const DrawingOptions& options, double deviation,
                                     const Cancel& cancel);

}  // namespace sagitta
