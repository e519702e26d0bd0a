#include "jobs/NeckReader.hpp"

#include <chrono>
#include <future>
#include <thread>

#include "input/NeckProcess.hpp"

namespace sagitta::viewer {

namespace {

constexpr auto look_up = std::chrono::milliseconds(20);  ///< between two looks at whether something newer waits

/// What the work comes to; nothing when `stopped` came true first. The work is then left to itself: it ends by its own
/// limit of time, and nobody reads its answer.
template <class Work>
auto unless_stopped(Work work, const std::function<bool()>& stopped) -> decltype(work()) {
  std::packaged_task<decltype(work())()> task(std::move(work));
  auto future = task.get_future();
  std::thread(std::move(task)).detach();
  while (future.wait_for(look_up) != std::future_status::ready)
    if (stopped()) return {};
  return future.get();
}

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
  const auto reading = unless_stopped([prepared] { return read_neck_apart(prepared); }, stopped);
  if (!reading) return nullptr;
  asked_ = std::move(asked);
  return answer_ = std::make_shared<const NeckReading>(*reading);
}

std::shared_ptr<const NeckWood> NeckReader::wood(const PreparedBoard& prepared, const std::function<bool()>& stopped) {
  if (!answer_ || !answer_->shape || !is_measured(*answer_->shape)) return nullptr;
  if (wood_ && wood_of_ == answer_) return wood_;
  const auto wood =
      unless_stopped([prepared, place = answer_->shape->place] { return mesh_neck_apart(prepared, place); }, stopped);
  if (!wood) return nullptr;
  wood_of_ = answer_;
  return wood_ = std::make_shared<const NeckWood>(*wood);
}

}  // namespace sagitta::viewer
