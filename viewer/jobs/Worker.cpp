#include "jobs/Worker.hpp"

#include <sys/resource.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <chrono>
#include <utility>

#include "jobs/Building.hpp"

namespace sagitta::viewer {

namespace {

constexpr int worker_nice = 10;  ///< the picture goes first

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
    if (stoppable_) cancel_.request();
  }
  changed_.notify_all();
}

ModelPtr Worker::take() {
  const std::lock_guard lock(mutex_);
  return std::exchange(made_, nullptr);
}

void Worker::cancel() {
  const std::lock_guard lock(mutex_);
  cancel_.request();
}

Progress Worker::progress() const {
  const std::lock_guard lock(mutex_);
  return busy_ ? Progress{what_, now() - since_} : Progress{};
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
    busy_ = true;
    lock.unlock();
    carry_out(order);
    lock.lock();
    busy_ = stoppable_ = false;
    finished_ = order.generation;
    lock.unlock();
    wake_();
    lock.lock();
  }
}

void Worker::begin(const std::string& what, bool may_be_stopped) {
  const std::lock_guard lock(mutex_);
  what_ = what, since_ = now(), stoppable_ = may_be_stopped;
  if (may_be_stopped && waiting_) cancel_.request();
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

void Worker::carry_out(const Order& order) {
  const auto index = [](Stage s) { return static_cast<std::size_t>(s); };
  begin("Laying out the board", false);
  Model model = begin_model(order.generation, order.board, &last_, fitter_);
  if (!model.layout) {
    model.settled = true;
    last_ = model;
    return publish(model);
  }
  const auto fill = [&](Stage stage, double deviation) {
    const StageModel* there = model.at(stage);
    if (there && there->deviation <= deviation) return;
    if (const auto made = make_stage(model, stage, deviation, cancel_, model.trouble, model.faults))
      model.stages[index(stage)] = made;
  };
  begin("Cutting: " + std::string(name(order.stage)), false);
  fill(order.stage, order.moving ? moving_deviation : resting_deviation);
  publish(last_ = model);
  if (order.moving) return;
  for (const Stage stage : stages_of(order.board)) {
    begin("Cutting: " + std::string(name(stage)), true);
    if (stopped()) return;
    fill(stage, resting_deviation);
    if (stopped()) return;
    publish(last_ = model);
  }
  begin("Exact solid: " + std::string(name(order.stage)), true);
  if (stopped()) return;
  if (const StageModel* shown = model.at(order.stage)) model.exact = make_exact(*shown, model.trouble);
  if (!order.board.neck || order.board.neck->file.empty()) {
    model.settled = true;
    return publish(last_ = model);
  }
  publish(last_ = model);
  begin("Reading the neck's file", true);
  const auto neck = neck_.read(order.board, *model.layout, [this] { return stopped(); });
  if (stopped()) return;
  if (neck != model.neck) take_neck(model, neck);
  model.settled = true;
  publish(last_ = model);
}

}  // namespace sagitta::viewer
