#pragma once

/// The families of findings about the board against its neck.

#include "rules/Judge.hpp"
#include "rules/Subject.hpp"

namespace sagitta {

void judge_neck(const Subject& subject, Judge& judge);       ///< the board against the neck
void judge_neck_file(const Subject& subject, Judge& judge);  ///< the board against the neck's STEP file
void judge_channel(const Subject& subject, Judge& judge);    ///< the neck's channel
void judge_heights(const Subject& subject, Judge& judge);    ///< strings, bridge and neck's angle; wood under the rod

/// Where the cuts of the board leave the least wood over the neck's rod channel. Lengths in mm.
struct OverChannel {
  double left = 0;
  Point at;
  FeatureId where;
  std::string feature;  ///< what is cut there
};
/// Nothing without a channel, or where nothing is cut over it.
std::optional<OverChannel> least_over_channel(const Subject& subject);

}  // namespace sagitta
