#include "jobs/Paperwork.hpp"

#include "cad/Interrupt.hpp"
#include "drawing/Paper.hpp"
#include "mesh/Mesh.hpp"
#include "package/PrintedJob.hpp"
#include "solid/Failure.hpp"
#include "trial/TrialFiles.hpp"

namespace sagitta::viewer {

namespace {

constexpr double pixels_across = 1400;      ///< of a page's picture
constexpr double preview_deviation = 0.02;  ///< mm; more than a picture of a stage shows

std::vector<PrintedBook> books(const PreparedBoard& ready, const Paper& paper, bool trial, const Cancel& cancel) {
  if (!trial) return printed_job(ready, {false, paper, {}, {}}, preview_deviation, cancel);
  const auto made = trial_of(ready);
  if (const auto* problems = std::get_if<Problems>(&made)) throw std::runtime_error(problems->front().message);
  std::vector<PrintedBook> one;
  one.push_back({"trial-sheet.pdf", trial_book(ready, std::get<Trial>(made), paper)});
  return one;
}

}  // namespace

Paperwork::~Paperwork() {
  {
    const std::lock_guard lock(mutex_);
    ending_ = true;
    cancel_.request();
  }
  changed_.notify_all();
  if (thread_.joinable()) thread_.join();
}

void Paperwork::want(const Board& board, const std::string& paper, bool trial, std::function<void()> wake) {
  const std::lock_guard lock(mutex_);
  Order order{board, paper, trial};
  if (asked_ == order) return;
  asked_ = std::move(order);
  made_.reset();
  waiting_ = true;
  cancel_.request();
  wake_ = std::move(wake);
  if (!thread_.joinable()) thread_ = std::thread([this] { run(); });
  changed_.notify_all();
}

std::shared_ptr<const PrintedPages> Paperwork::pages() const {
  const std::lock_guard lock(mutex_);
  return made_;
}

bool Paperwork::busy() const {
  const std::lock_guard lock(mutex_);
  return waiting_ || busy_;
}

void Paperwork::run() {
  std::unique_lock lock(mutex_);
  while (true) {
    changed_.wait(lock, [this] { return waiting_ || ending_; });
    if (ending_) return;
    waiting_ = false, busy_ = true;
    cancel_ = Cancel();
    const Order order = *asked_;
    const Cancel cancel = cancel_;
    lock.unlock();
    auto printed = std::make_shared<PrintedPages>();
    if (const auto wrong = failure_of([&] { *printed = print(order, cancel); })) printed->trouble = *wrong;
    lock.lock();
    busy_ = false;
    if (waiting_ || ending_) continue;
    made_ = std::move(printed);
    if (wake_) wake_();
  }
}

PrintedPages Paperwork::print(const Order& order, const Cancel& cancel) {
  PrintedPages printed;
  try {
    BoardFile file;
    file.board = order.board;
    const auto prepared = prepare(std::move(file));
    if (std::holds_alternative<Problems>(prepared)) {
      printed.trouble = "The board has problems: see the list of checks.";
      return printed;
    }
    const Paper* named = paper_named(order.paper);
    const Paper paper = named ? *named : *paper_named("A4");
    for (const PrintedBook& book : books(std::get<PreparedBoard>(prepared), paper, order.trial, cancel)) {
      printed.documents[book.file] = book.book.bytes();
      for (std::size_t i = 0; i < book.book.pages(); ++i) {
        stop_if_wanted(cancel);
        printed.pages.push_back({book.file, static_cast<int>(i) + 1, static_cast<int>(book.book.pages()),
                                 book.book.picture(i, pixels_across / paper.width)});
      }
    }
  } catch (const Interrupted&) {
    printed.pages.clear();
  }
  return printed;
}

}  // namespace sagitta::viewer
