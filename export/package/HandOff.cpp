#include "package/HandOff.hpp"

#include <deque>
#include <latch>
#include <nlohmann/json.hpp>

#include "package/FaultReport.hpp"
#include "package/JobFiles.hpp"
#include "package/ListedFolder.hpp"
#include "package/Repeat.hpp"
#include "plane/ParallelFor.hpp"

namespace sagitta {
namespace {

/// The jobs of one folder, side by side. Their files are listed as if they had been made one after the other: of each
/// stage the solid, then its meshes and pictures; the same of the assemblies; the neck; the papers.
class Jobs {
 public:
  Jobs(JobFiles& files, const ExportOrder& order, const std::vector<Finding>& findings, Folder& folder)
      : files_(files), order_(order), findings_(findings), folder_(folder), meshes_(meshes_wanted()) {
    for (const Stage stage : order.stages) plan(stage);
    for (const Assembly assembly : order.assemblies) plan(assembly);
    ListedFolder& neck = list();
    steps_.push_back([this, &neck] { files_.write_neck(neck); });
    ListedFolder& papers = list();
    others_.push_back([this, &papers] {
      files_.write_drawings(papers);
      meshes_.wait();
      files_.write_job_sheet(findings_, papers);
    });
  }

  /// STEP is written by one thread, as the kernel can do it only so; it is the longest job and begins first. The others
  /// make the solids ahead of it. Papers come last: the job sheet waits for the pictures, which by then are begun.
  ListedFolder run() {
    std::vector<std::function<void()>> jobs{[this] {
      for (const auto& step : steps_) step();
    }};
    if (order_.kinds.step)
      for (const Stage stage : order_.stages) jobs.push_back([this, stage] { files_.make_solid_of(stage); });
    jobs.insert(jobs.end(), others_.begin(), others_.end());
    parallel_for(static_cast<int>(jobs.size()), [&](int i) { jobs[static_cast<std::size_t>(i)](); });
    ListedFolder all(folder_);
    for (ListedFolder& part : lists_) all.append(std::move(part));
    return all;
  }

 private:
  std::ptrdiff_t meshes_wanted() const {
    return wants_meshes(order_.kinds) ? static_cast<std::ptrdiff_t>(order_.stages.size()) : 0;
  }

  ListedFolder& list() { return lists_.emplace_back(folder_); }

  void plan(Stage stage) {
    if (order_.kinds.step) steps_.push_back([this, stage, &to = list()] { files_.write_step(stage, to); });
    if (!wants_meshes(order_.kinds)) return;
    others_.push_back([this, stage, &to = list()] {
      const CountDown done{meshes_};
      files_.write_meshes(stage, to);
    });
  }

  void plan(Assembly assembly) {
    if (order_.kinds.step) steps_.push_back([this, assembly, &to = list()] { files_.write_step(assembly, to); });
    if (wants_meshes(order_.kinds))
      others_.push_back([this, assembly, &to = list()] { files_.write_meshes(assembly, to); });
  }

  /// Whatever comes of a stage's meshes, nobody waits for them longer.
  struct CountDown {
    std::latch& meshes;
    ~CountDown() { meshes.count_down(); }
  };

  JobFiles& files_;
  const ExportOrder& order_;
  const std::vector<Finding>& findings_;
  Folder& folder_;
  std::latch meshes_;
  std::deque<ListedFolder> lists_;
  std::vector<std::function<void()>> steps_, others_;
};

}  // namespace

void write_hand_off(const PreparedBoard& ready, const std::vector<Finding>& findings, const ExportOrder& order,
                    Folder& folder, const Cancel& cancel) {
  const PreparedBoard part = part_of(ready, order.drawing.part);
  const std::string options = options_json(order).dump();
  keep_on_fault(ready.planned(), findings, options, folder.path(), [&] {
    JobFiles files(part, order, cancel);
    ListedFolder listed = Jobs(files, order, findings, folder).run();
    if (listed.empty())
      throw NothingToWrite("there is nothing to write: what is asked for has no files of these kinds");
    listed.finish(ready.planned(), findings, options);
  });
}

}  // namespace sagitta
