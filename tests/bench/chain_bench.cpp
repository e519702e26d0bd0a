// How long each step takes on the standard board, and how much faster plan, lift and mesh are than the kernel's own
// ways to the same solid and mesh, in the same run. The last lines print the ratios (SPEED.md).

#include <benchmark/benchmark.h>

#include <BRepMesh_IncrementalMesh.hxx>
#include <BRepTools.hxx>
#include <algorithm>
#include <fstream>
#include <iostream>
#include <map>
#include <sstream>

#include "Places.hpp"
#include "board/BoardFile.hpp"
#include "made/Made.hpp"
#include "mesh/Mesh.hpp"
#include "oracle/Boolean.hpp"
#include "oracle/Quadrature.hpp"
#include "solid/Solid.hpp"
#include "solid/StepCopy.hpp"

namespace sagitta {
namespace {

std::string standard_text() {
  std::ifstream file(places::tests() + "/bench/standard.toml");
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

Board read(const std::string& text) { return read_board_text(text, "standard.toml", ".").board; }

struct Standard {
  std::string text = standard_text();
  Board board = read(text);
  Layout layout = std::get<Layout>(lay_out(board));
  Surface surface = surface_of(board, layout);
  Plan plan = std::get<Plan>(make_plan(board, layout, surface, Stage::board));
  Shell shell = lift(plan);
};

const Standard& standard() {
  static const Standard all;
  return all;
}

TopoDS_Solid exact_solid() {
  const Standard& s = standard();
  return make_solid(lift(std::get<Plan>(make_plan(s.board, s.layout, s.surface, Stage::board))));
}

oracle::Work work() { return oracle::work_at(standard().board, standard().layout, standard().surface, Stage::board); }

void reading(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(read(standard().text));
}
void layout(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(lay_out(standard().board));
}
void planning(benchmark::State& state) {
  const Standard& s = standard();
  for (auto _ : state) benchmark::DoNotOptimize(make_plan(s.board, s.layout, s.surface, Stage::board));
}
void lifting(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(lift(standard().plan));
}
void solid(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(make_solid(standard().shell));
}
void mesh(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(make_mesh(standard().shell));
}
void step_written_and_read(benchmark::State& state) {
  const TopoDS_Solid one = make_solid(standard().shell);
  for (auto _ : state) benchmark::DoNotOptimize(through_step(one, "bench"));
}
void quadrature(benchmark::State& state) {
  const oracle::Work cuts = work();
  for (auto _ : state) benchmark::DoNotOptimize(oracle::quadrature(cuts));
}
void exact_board(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(exact_solid());
}
/// How far the triangles of both meshers may stray, mm.
constexpr double race_deviation = 0.01;
void mesh_of_race(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(make_mesh(standard().shell, race_deviation));
}
/// The kernel's mesher on the same solid, on one thread. It may turn by up to one radian within a triangle, so that
/// only the deviation counts.
void kernel_mesh(benchmark::State& state) {
  const TopoDS_Solid one = make_solid(standard().shell);
  for (auto _ : state) {
    BRepMesh_IncrementalMesh(one, race_deviation, false, 1, false);
    state.PauseTiming();
    BRepTools::Clean(one);
    state.ResumeTiming();
  }
}
void booleans(benchmark::State& state) {
  const oracle::Route route{state.range(0) != 0, state.range(1) != 0, state.range(2) != 0, false};
  const oracle::Work cuts = work();
  for (auto _ : state) benchmark::DoNotOptimize(oracle::booleans(cuts, route));
}

BENCHMARK(reading)->Unit(benchmark::kMillisecond);
BENCHMARK(layout)->Unit(benchmark::kMillisecond);
BENCHMARK(planning)->Unit(benchmark::kMillisecond);
BENCHMARK(lifting)->Unit(benchmark::kMillisecond);
BENCHMARK(solid)->Unit(benchmark::kMillisecond);
BENCHMARK(mesh)->Unit(benchmark::kMillisecond);
BENCHMARK(step_written_and_read)->Unit(benchmark::kMillisecond);
BENCHMARK(quadrature)->Unit(benchmark::kMillisecond);
BENCHMARK(exact_board)->Unit(benchmark::kMillisecond)->UseRealTime()->MinTime(2);
BENCHMARK(mesh_of_race)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime()->MinTime(1);
BENCHMARK(kernel_mesh)->Unit(benchmark::kMillisecond)->MeasureProcessCPUTime()->MinTime(1);
BENCHMARK(booleans)
    ->ArgNames({"two_steps", "parallel", "boxes"})
    ->ArgsProduct({{0, 1}, {0, 1}, {0, 1}})
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->Iterations(2);

/// Keeps the shortest time of each family, real or of the processor as it was measured, while the console shows all.
class Race : public benchmark::ConsoleReporter {
 public:
  Race() : ConsoleReporter(OO_Tabular) {}  // colour escapes would stand at the beginning of the ratios' lines
  void ReportRuns(const std::vector<Run>& runs) override {
    ConsoleReporter::ReportRuns(runs);
    for (const Run& run : runs) {
      if (run.run_type != Run::RT_Iteration) continue;
      const double took =
          run.run_name.time_type == "process_time" ? run.GetAdjustedCPUTime() : run.GetAdjustedRealTime();
      const auto [it, fresh] = best_.emplace(run.run_name.function_name, took);
      if (!fresh) it->second = std::min(it->second, took);
    }
  }
  /// "ratio NAME VALUE": how many times as long the peer takes.
  void print_ratios(std::ostream& out) const {
    print_ratio(out, "exact-board", "booleans", "exact_board");
    print_ratio(out, "mesh", "kernel_mesh", "mesh_of_race");
  }

 private:
  void print_ratio(std::ostream& out, const char* name, const char* peer, const char* own) const {
    if (best_.contains(peer) && best_.contains(own))
      out << "ratio " << name << " " << best_.at(peer) / best_.at(own) << "\n";
  }

  std::map<std::string, double> best_;
};

/// Both routes must give the same wood, or the race says nothing.
bool same_wood() {
  const double exact = oracle::quadrature(work()).value;
  const double lifted = mass_properties(exact_solid()).volume, cut = oracle::booleans(work()).volume;
  std::cout << "volume " << exact << " mm3; lift off by " << lifted / exact - 1 << ", booleans off by "
            << cut / exact - 1 << "\n";
  return std::abs(lifted / exact - 1) < 1e-6 && std::abs(cut / exact - 1) < 1e-6;
}

}  // namespace
}  // namespace sagitta

int main(int count, char** arguments) {
  benchmark::Initialize(&count, arguments);
  if (benchmark::ReportUnrecognizedArguments(count, arguments)) return 1;
  if (!sagitta::same_wood()) return 1;
  sagitta::Race race;
  benchmark::RunSpecifiedBenchmarks(&race);
  race.print_ratios(std::cout);
  return 0;
}
