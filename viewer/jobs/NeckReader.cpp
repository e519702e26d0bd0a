#include "jobs/NeckReader.hpp"

#include <chrono>
#include <future>
#include <thread>

#include "input/NeckProcess.hpp"

namespace sagitta::viewer {

namespace {

constexpr auto look_up = std::chrono::milliseconds(20);  ///< between two looks at whether something newer waits

}  // namespace

std::shared_ptr<const NeckReading> NeckReader::read(const PreparedBoard& prepared,
                                                    const std::function<bool()>& stopped) {
  const Board& board = prepared.board();
  if (!board.neck || board.neck->file.empty()) return nullptr;
  Asked asked{std::filesystem::path(board.folder) / board.neck->file, {}, board_seat(prepared)};
  std::error_code missing;
  asked.written = std::filesystem::last_write_time(asked.path, missing);
  const bool hopeless = answer_ && !answer_->shape && asked.same_file(asked_);
  if (answer_ && (asked == asked_ || hopeless)) return answer_;
  // Left to itself when something newer comes: it ends by its own limit of time, and nobody reads its answer.
  std::packaged_task<std::optional<NeckReading>()> task([prepared] { return read_neck_apart(prepared); });
  auto future = task.get_future();
  std::thread(std::move(task)).detach();
  while (future.wait_for(look_up) != std::future_status::ready)
    if (stopped()) return nullptr;
  const auto reading = future.get();
  if (!reading) return nullptr;
  asked_ = std::move(asked);
  return answer_ = std::make_shared<const NeckReading>(*reading);
}

}  // namespace sagitta::viewer
