#pragma once

/// The words of a PDF's pages and their places, as poppler reads them.

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>

#include "CommandLine.hpp"

namespace sagitta::test {

struct Word {
  std::string text;
  double left = 0, top = 0, right = 0, bottom = 0;  ///< points, from the page's upper left corner
};

struct Page {
  double width = 0, height = 0;
  std::vector<Word> words;
};

inline std::vector<Page> pages_of(const fs::path& pdf) {
  std::vector<Page> pages;
  std::istringstream lines(shell("pdftotext -bbox '" + pdf.string() + "' -").out);
  for (std::string line; std::getline(lines, line);) {
    Page page;
    Word word;
    char text[256] = "";
    if (std::sscanf(line.c_str(), " <page width=\"%lf\" height=\"%lf\"", &page.width, &page.height) == 2)
      pages.push_back(page);
    else if (std::sscanf(line.c_str(), " <word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" yMax=\"%lf\">%255[^<]",
                         &word.left, &word.top, &word.right, &word.bottom, text) == 5) {
      word.text = text;
      pages.at(pages.size() - 1).words.push_back(word);
    }
  }
  return pages;
}

/// Poppler's boxes hold ascenders and descenders; lines of text stand closer than that. The ink keeps to this part.
inline bool overlap(const Word& a, const Word& b) {
  const double rise = 0.25 * std::min(a.bottom - a.top, b.bottom - b.top);
  const double wide = std::min(a.right, b.right) - std::max(a.left, b.left);
  const double high = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
  return wide > 0.2 && high > rise;
}

/// No word leaves the paper or lies on another. 5 mm is what printers leave blank (common practice, no source).
inline void expect_readable(const Page& page, const std::string& what) {
  constexpr double blank = 5 * 72 / 25.4;
  for (std::size_t i = 0; i < page.words.size(); ++i) {
    const Word& word = page.words[i];
    EXPECT_TRUE(word.left > blank && word.top > blank && word.right < page.width - blank &&
                word.bottom < page.height - blank)
        << what << ": \"" << word.text << "\" leaves the paper";
    for (std::size_t k = 0; k < i; ++k)
      EXPECT_FALSE(overlap(word, page.words[k]))
          << what << ": \"" << word.text << "\" lies on \"" << page.words[k].text << "\"";
  }
}

}  // namespace sagitta::test
