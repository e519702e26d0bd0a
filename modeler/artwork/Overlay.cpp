#include "artwork/Overlay.hpp"

#include <algorithm>
#include <map>

#include "artwork/Polygons.hpp"

namespace sagitta {
namespace {

class Layers {
 public:
  Layers(const std::vector<OverlaySource>& sources, Keep keep, const Resolution& resolution, Effort& effort)
      : sources_(sources), keep_(keep), resolution_(resolution), effort_(effort) {
    for (std::size_t i = 0; i < sources.size(); ++i)
      for (const Outline& outline : *sources[i].outlines) {
        outlines_.push_back(&outline);
        source_.push_back(i);
        box_.add(outline.box.low);
        box_.add(outline.box.high);
      }
  }

  std::optional<Overlay> run() {
    auto found = clusters(outlines_, resolution_.touch, effort_);
    if (!found) return std::nullopt;
    clusters_ = std::move(*found);
    std::map<std::size_t, std::vector<std::size_t>> groups;
    for (std::size_t i = 0; i < outlines_.size(); ++i) groups[clusters_.cluster[i]].push_back(i);
    for (const auto& [first, members] : groups) {
      const auto turns = turns_around(first);
      if (!turns) return std::nullopt;
      if (clusters_.touched[first])
        keep_cluster(members, *turns);
      else
        keep_alone(first, *turns);
    }
    return std::move(out_);
  }

 private:
  using Turns = std::vector<int>;  ///< by source

  /// How often each source winds about a cluster, by outlines that are not in it.
  std::optional<Turns> turns_around(std::size_t member) {
    Turns turns(sources_.size());
    const Outline& inner = *outlines_[member];
    if (!effort_.spend(static_cast<double>(outlines_.size()))) return std::nullopt;
    for (std::size_t i = 0; i < outlines_.size(); ++i) {
      if (clusters_.cluster[i] == clusters_.cluster[member] || !holds(outlines_[i]->box, inner.box)) continue;
      if (!effort_.spend(4 * static_cast<double>(outlines_[i]->corners.size()))) return std::nullopt;
      turns[source_[i]] += winding(*outlines_[i], witness(inner, *outlines_[i], 4 * resolution_.chord));
    }
    return turns;
  }

  bool is_in(std::size_t source, const Turns& turns) const { return filled(turns[source], sources_[source].rule); }

  bool is_kept(const Turns& turns) const {
    std::size_t count = 0;
    for (std::size_t i = 0; i < sources_.size(); ++i) count += is_in(i, turns);
    if (keep_ == Keep::any) return count > 0;
    if (keep_ == Keep::both) return count == sources_.size();
    return count == 1 && is_in(0, turns);
  }

  void keep_alone(std::size_t member, const Turns& outside) {
    const Outline& outline = *outlines_[member];
    Turns inside = outside;
    inside[source_[member]] += outline.area > 0 ? 1 : -1;
    const bool in = is_kept(inside);
    if (in == is_kept(outside)) return;
    out_.outlines.push_back(in == (outline.area > 0) ? outline : reversed(outline));
  }

  void keep_cluster(const std::vector<std::size_t>& members, const Turns& turns) {
    std::map<std::size_t, ClusterPart> by_source;
    for (const std::size_t i : members) by_source[source_[i]].outlines.push_back(outlines_[i]);
    for (auto& [source, part] : by_source) {
      part.around = turns[source];
      part.rule = sources_[source].rule;
    }
    if (!settled_elsewhere(by_source, turns)) cut(by_source, turns);
  }

  /// Sources that are not in the cluster may say that nothing of it is seen.
  bool settled_elsewhere(const std::map<std::size_t, ClusterPart>& by_source, const Turns& turns) const {
    for (std::size_t i = 0; i < sources_.size(); ++i) {
      if (by_source.count(i)) continue;
      const bool in = is_in(i, turns);
      if (keep_ == Keep::any && in) return true;
      if (keep_ == Keep::both && !in) return true;
      if (keep_ == Keep::first && in != (i == 0)) return true;
    }
    return false;
  }

  void cut(const std::map<std::size_t, ClusterPart>& by_source, const Turns& turns) {
    std::vector<ClusterPart> parts;
    if (keep_ == Keep::first && !by_source.count(0)) parts.push_back({{}, turns[0], sources_[0].rule});
    for (const auto& [source, part] : by_source) parts.push_back(part);
    const auto cut = cut_polygons(parts, keep_, box_, resolution_);
    if (cut) {
      out_.changed = true;
      out_.outlines.insert(out_.outlines.end(), cut->begin(), cut->end());
      return;
    }
    for (const Outline* outline : parts.front().outlines) out_.outlines.push_back(*outline);
  }

  const std::vector<OverlaySource>& sources_;
  Keep keep_;
  const Resolution& resolution_;
  Effort& effort_;
  std::vector<const Outline*> outlines_;
  std::vector<std::size_t> source_;
  Clusters clusters_;
  Box box_;
  Overlay out_;
};

}  // namespace

std::optional<Overlay> overlay(const std::vector<OverlaySource>& sources, Keep keep, const Resolution& resolution,
                               Effort& effort) {
  return Layers(sources, keep, resolution, effort).run();
}

}  // namespace sagitta
