#include "package/PrintedJob.hpp"

#include "board/Materials.hpp"
#include "cad/Interrupt.hpp"
#include "drawing/BoardDrawing.hpp"
#include "input/BoardFindings.hpp"
#include "jobsheet/JobPdf.hpp"
#include "lift/Shell.hpp"
#include "paper/PngFile.hpp"

namespace sagitta {
namespace {

constexpr int picture_width = 720;  // pixels

}  // namespace

std::string job_picture(const Board& board, const Mesh& mesh) {
  return png_bytes(paint({{&mesh, on_paper(material(board, board.blank.material).colour)}}, picture_width));
}

std::vector<PrintedBook> printed_job(const PreparedBoard& ready, const DrawingOptions& options, double deviation,
                                     const Cancel& cancel) {
  std::vector<PrintedBook> books = printed_books(ready, options);
  JobPictures pictures;
  for (const Stage stage : stages_of(ready.board())) {
    stop_if_wanted(cancel);
    pictures[std::string(name(stage))] = job_picture(ready.board(), make_mesh(ready.shell(stage), deviation, cancel));
  }
  stop_if_wanted(cancel);
  books.push_back({"job-sheet.pdf", job_book(job_sheet(ready, board_findings(ready)), pictures, options.paper)});
  return books;
}

}  // namespace sagitta
