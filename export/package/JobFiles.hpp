#pragma once

/// The files of one board: solids, meshes, pictures and papers.

#include <functional>
#include <mutex>
#include <string>
#include <vector>

#include "board/Materials.hpp"
#include "jobsheet/JobHtml.hpp"
#include "package/DrawingFiles.hpp"
#include "package/ExportOrder.hpp"
#include "package/JobBodies.hpp"
#include "package/ListedFolder.hpp"
#include "package/Progress.hpp"
#include "rules/Finding.hpp"

namespace sagitta {

/// Whether the kinds hold one that is made of triangles: STL, 3MF, pictures, and the job sheet, which has pictures.
bool wants_meshes(const ExportKinds& kinds);

/// Makes the files of one board. Every function that writes makes some of them, into a list of its own: they may be
/// called side by side, as long as no two of them write STEP. They throw as the Gate does, and FolderError, and
/// Interrupted.
class JobFiles {
 public:
  /// All must outlive this.
  JobFiles(const PreparedBoard& ready, const ExportOrder& order, const Cancel& cancel);

  /// So that who writes it as STEP finds it made.
  void make_solid_of(Stage stage);
  void write_step(Stage stage, ListedFolder& folder);
  void write_meshes(Stage stage, ListedFolder& folder);
  void write_step(Assembly assembly, ListedFolder& folder);
  void write_meshes(Assembly assembly, ListedFolder& folder);

  /// What the neck is made with: the glue face and a gauge of its sides.
  void write_neck(ListedFolder& folder);
  void write_drawings(ListedFolder& folder);

  /// To be called when the meshes of all stages are written: it shows them.
  void write_job_sheet(const std::vector<Finding>& findings, ListedFolder& folder);

 private:
  const Board& board() const;
  MaterialFacts wood_facts() const;
  std::string title(std::string_view what) const;
  void begin(const std::string& what);
  void keep_picture(const std::string& stage, std::string bytes);
  ManifestBody of_board(ManifestBody body) const;
  /// Of the meshes of an assembly: its wood, if it has any, comes first.
  std::vector<ManifestBody> figures_of_all(const std::vector<ThreeMfBody>& bodies, Assembly assembly);
  ManifestFile& add(ListedFolder& folder, std::string_view what, const std::string& kind, const std::string& bytes,
                    std::vector<ManifestBody> bodies) const;
  void add_paper(ListedFolder& folder, const PaperFile& paper) const;

  const PreparedBoard& ready_;
  const ExportOrder& order_;
  JobBodies bodies_;
  const Cancel& cancel_;
  int all_ = 0, done_ = 0;
  Progress progress_;
  std::mutex telling_;
  JobPictures small_pictures_;
};

}  // namespace sagitta
