#include "jobs/Worker.hpp"

#include <sys/resource.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <utility>

#include "board/ShapeKeys.hpp"
#include "jobs/Building.hpp"
#include "solid/Failure.hpp"

namespace sagitta::viewer {

namespace {

constexpr int worker_nice = 10;  ///< the picture goes first
constexpr double slow = 0.3;     ///< seconds; what takes less is worth seeing although it is no longer the newest

double now() {
  using namespace std::chrono;
  return duration<double>(steady_clock::now().time_since_epoch()).count();
}

}  // namespace

Worker::Worker(std::function<void()> wake) : wake_(std::move(wake)), thread_([this] { run(); }) {}

Worker::~Worker() {
  {
    const std::lock_guard lock(mutex_);
    ending_ = true;
    cancel_.request();
  }
  changed_.notify_all();
  thread_.join();
}

void Worker::submit(Order order) {
  {
    const std::lock_guard lock(mutex_);
    waiting_ = std::move(order);
    if (yields()) cancel_.request();
  }
  changed_.notify_all();
}

ModelPtr Worker::take() {
  const std::lock_guard lock(mutex_);
  return std::exchange(made_, nullptr);
}

bool Worker::yields() const {
  return stops_ == Stops::at_once || (stops_ == Stops::when_slow && now() - since_ > slow);
}

void Worker::cancel() {
  const std::lock_guard lock(mutex_);
  cancel_.request();
}

Progress Worker::progress() const {
  const std::lock_guard lock(mutex_);
  if (!busy_) return {};
  const int expected = progress_.expected();
  const bool counted = stops_ == Stops::when_slow && expected > 0;
  return {what_, now() - since_, counted ? std::min(1.0, 1.0 * progress_.done() / expected) : -1};
}

bool Worker::idle() const {
  const std::lock_guard lock(mutex_);
  return !busy_ && !waiting_ && !made_;
}

std::uint64_t Worker::finished() const {
  const std::lock_guard lock(mutex_);
  return finished_;
}

void Worker::run() {
  ::setpriority(PRIO_PROCESS, static_cast<id_t>(::syscall(SYS_gettid)), worker_nice);
  std::unique_lock lock(mutex_);
  for (;;) {
    changed_.wait(lock, [this] { return ending_ || waiting_; });
    if (ending_) return;
    const Order order = std::move(*waiting_);
    waiting_.reset();
    cancel_ = Cancel();
    progress_ = ProgressCounter();
    busy_ = true;
    lock.unlock();
    if (const auto wrong = failure_of([&] { carry_out(order); })) give_up(order, *wrong);
    lock.lock();
    busy_ = false;
    stops_ = Stops::never;
    finished_ = order.generation;
    lock.unlock();
    wake_();
    lock.lock();
  }
}

void Worker::begin(const std::string& what, Stops stops) {
  const std::lock_guard lock(mutex_);
  what_ = what, since_ = now(), stops_ = stops;
  if (stops == Stops::at_once && waiting_) cancel_.request();
}

bool Worker::stopped() const {
  const std::lock_guard lock(mutex_);
  return ending_ || cancel_.wanted();
}

void Worker::publish(Model model) {
  {
    const std::lock_guard lock(mutex_);
    made_ = std::make_shared<const Model>(std::move(model));
  }
  wake_();
}

void Worker::give_up(const Order& order, const std::string& why) {
  Model model;
  if (last_.generation == order.generation) model = last_;  // what is made stays
  model.generation = order.generation;
  model.reading = order.reading;
  model.board = order.board;
  model.trouble = why;
  model.settled = true;
  publish(last_ = model);
}

void Worker::carry_out(const Order& order) {
  const auto index = [](Stage s) { return static_cast<std::size_t>(s); };
  const bool drawn = std::any_of(order.board.inlays.begin(), order.board.inlays.end(),
                                 [](const Inlay& inlay) { return takes(inlay, "file"); });
  begin(drawn ? "Fitting the drawings" : "Laying out the board", Stops::when_slow);
  auto begun = begin_model(order, &last_, fitter_, cancel_, progress_);
  if (!begun) return;
  Model model = std::move(*begun);
  const auto settle = [&] {
    take_release(model);
    model.settled = true;
    publish(last_ = model);
  };
  if (!model.prepared) return settle();
  const auto fill = [&](Stage stage, double deviation) {
    const StageModel* there = model.at(stage);
    if (there && there->deviation <= deviation) return;
    if (const auto made = make_stage(*model.prepared, stage, deviation, cancel_, model.trouble, model.faults))
      model.stages[index(stage)] = made;
  };
  begin("Cutting: " + std::string(name(order.stage)), Stops::never);
  fill(order.stage, order.moving ? moving_deviation : resting_deviation);
  publish(last_ = model);
  if (order.moving) return;
  for (const Stage stage : stages_of(order.board)) {
    begin("Cutting: " + std::string(name(stage)), Stops::at_once);
    if (stopped()) return;
    fill(stage, resting_deviation);
    if (stopped()) return;
    publish(last_ = model);
  }
  begin("Exact solid: " + std::string(name(order.stage)), Stops::at_once);
  if (stopped()) return;
  if (const StageModel* shown = model.at(order.stage)) model.exact = make_exact(*shown, model.trouble);
  if (!order.board.neck || order.board.neck->file.empty()) return settle();
  publish(last_ = model);
  begin("Reading the neck's file", Stops::at_once);
  const auto neck = neck_.read(*model.prepared, [this] { return stopped(); });
  if (stopped()) return;
  if (neck != model.neck) take_neck(model, neck, nullptr);
  begin("Laying the neck under the board", Stops::at_once);
  const auto wood = neck_.wood(*model.prepared, [this] { return stopped(); });
  if (stopped()) return;
  if (wood != model.neck_wood) take_neck(model, neck, wood);
  settle();
}

}  // namespace sagitta::viewer
