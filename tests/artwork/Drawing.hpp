#pragma once

/// Small drawings for tests, and what is measured on them.

#include <gtest/gtest.h>

#include <string>

#include "artwork/Curve.hpp"
#include "artwork/ReadArtwork.hpp"

namespace sagitta::test {

inline double area(const DrawnRegion& region) {
  double sum = 0;
  for (const PathLoop& loop : region.outlines) sum += sagitta::area(loop);
  return sum;
}

inline double area(const Artwork& art) {
  double sum = 0;
  for (const DrawnRegion& region : art.regions) sum += area(region);
  return sum;
}

inline Box bounds(const Artwork& art) {
  Box box;
  for (const DrawnRegion& region : art.regions)
    for (const PathLoop& loop : region.outlines) {
      const Box part = sagitta::bounds(loop);
      box.add(part.low);
      box.add(part.high);
    }
  return box;
}

/// All that is said, for looking for a word.
inline std::string words(const Faults& faults) {
  std::string all;
  for (const Fault& fault : faults) all += fault.message + " | " + fault.hint + "\n";
  return all;
}

/// 100 x 100 mm, one unit a mm.
inline std::string page(const std::string& inside, const std::string& attributes = "") {
  return "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"100mm\" "
         "height=\"100mm\" viewBox=\"0 0 100 100\" " +
         attributes + ">\n" + inside + "\n</svg>";
}

inline Artwork good(const ArtworkOrFaults& read, const std::string& about) {
  if (const Faults* faults = std::get_if<Faults>(&read)) {
    ADD_FAILURE() << about << "\nwas refused: " << words(*faults);
    return {};
  }
  return std::get<Artwork>(read);
}

/// What holds of any artwork: outlines closed, head to tail, outer ones counter-clockwise by the largest.
inline void expect_sound(const Artwork& art, const std::string& about) {
  for (const DrawnRegion& region : art.regions) {
    EXPECT_GT(area(region), 0) << about;
    EXPECT_EQ(region.colour.size(), 7U) << about;
    for (const PathLoop& loop : region.outlines)
      for (std::size_t i = 0; i < loop.size(); ++i)
        EXPECT_EQ(end_of(loop[i]), start_of(loop[(i + 1) % loop.size()])) << about;
  }
}

}  // namespace sagitta::test
