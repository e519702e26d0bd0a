/// Prints how the window keeps up: frames while dragging, input to picture, idle processor time, start. With software
/// drawing on two cores at 1280x800 the bars are 33 ms, 100 ms, 1 % and 1.5 s.

#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <cstdio>

#include "gui/GripHand.hpp"

namespace {

using namespace sagitta::test;
namespace viewer = sagitta::viewer;

double now() {
  using namespace std::chrono;
  return duration<double>(steady_clock::now().time_since_epoch()).count();
}

double processor() {
  rusage used{};
  ::getrusage(RUSAGE_SELF, &used);
  const auto seconds = [](const timeval& t) {
    return static_cast<double>(t.tv_sec) + 1e-6 * static_cast<double>(t.tv_usec);
  };
  return seconds(used.ru_utime) + seconds(used.ru_stime);
}

double middle(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values.empty() ? 0 : values[values.size() / 2];
}
double high(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values.empty() ? 0 : values[values.size() * 95 / 100];
}

/// Times of a drag: each frame's, and from each step to its picture. Milliseconds.
struct DragTimes {
  std::vector<double> frames, pictures;

  /// After the hand has moved: frames until the picture is of the board as it is now.
  void step(Hand& hand) {
    const double start = now();
    bool shown = false;
    for (int k = 0; k < 40 && !shown; ++k) {
      hand.frames(1);
      frames.push_back(hand.app().frame_time());
      shown = hand.desk().results.good->board == hand.board();
    }
    pictures.push_back(1000 * (now() - start));
  }
  void print(const char* what) const {
    std::printf("frame while %-13s median %6.1f ms   95 %% under %6.1f ms\n", what, middle(frames), high(frames));
    std::printf("input to new picture      median %6.1f ms   95 %% under %6.1f ms\n", middle(pictures), high(pictures));
  }
};

/// Drags the radius at the nut step by step.
void drag(Hand& hand) {
  DragTimes times;
  hand.drag("Decisions/surface.radius_at_nut", 10, 0, false);
  const viewer::Seen field = hand.see("Decisions/surface.radius_at_nut");
  const float x = (field.low.x + field.high.x) / 2 + 10, y = (field.low.y + field.high.y) / 2;
  for (int i = 1; i <= 60; ++i) {
    hand.move(x + static_cast<float>(i), y);
    times.step(hand);
  }
  hand.release();
  times.print("dragging");
}

/// Drags a grip of a small drawing's frame, a few pixels at a time.
void drag_grip(GripHand& hand, const char* grip, const char* what) {
  DragTimes times;
  const ImVec2 from = hand.grip(grip);
  hand.drag_from(from.x, from.y, 12, 4, false);
  for (int i = 1; i <= 40; ++i) {
    hand.move(from.x + 12 + static_cast<float>(2 * i), from.y + 4 + static_cast<float>(i));
    times.step(hand);
  }
  hand.release();
  hand.wait();
  times.print(what);
}

void turn(Hand& hand) {
  std::vector<double> frames;
  for (int i = 0; i < 40; ++i) {
    hand.desk().view.camera = hand.desk().view.camera.orbited(6, 1);
    hand.move(700 + static_cast<float>(i), 300);
    hand.frames(1);
    frames.push_back(hand.app().frame_time());
  }
  std::printf("frame while turning       median %6.1f ms   95 %% under %6.1f ms\n", middle(frames), high(frames));
}

void idle(Hand& hand) {
  hand.wait();
  const double start = now(), used = processor();
  while (now() - start < 5) hand.rest_and_frame(5 - (now() - start));
  std::printf("idle                      %6.2f %% of one processor\n", 100 * (processor() - used) / (now() - start));
}

void start_and_decisions() {
  HandSpec spec{"heron-six"};
  spec.debug = false, spec.settle = false;
  const double start = now();
  Hand hand(spec);
  hand.until([&] {
    return hand.desk().results.good && hand.app().picture().drawn() > 0 &&
           hand.desk().results.at(hand.desk().view.stage);
  });
  hand.frames(1);
  std::printf("start to first picture    %6.2f s\n", now() - start);
  hand.wait();
  hand.open_group(4);
  drag(hand);
  turn(hand);
  idle(hand);
}

void drawing_in_hand() {
  HandSpec spec{"heron-six"};
  spec.debug = false;
  GripHand hand(spec);
  hand.choose();
  drag_grip(hand, "turning grip", "a grip turns");
  drag_grip(hand, "sizing grip 2", "a grip sizes");
  idle(hand);
}

}  // namespace

int main() {
  if (!have_display()) return 1;
  start_and_decisions();
  drawing_in_hand();
  return 0;
}
