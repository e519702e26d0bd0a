#pragma once

/// The job sheet as PDF pages.

#include <string>

#include "jobsheet/JobHtml.hpp"
#include "jobsheet/JobSheet.hpp"
#include "paper/PdfBook.hpp"

namespace sagitta {

/// The sheet on paper, what JobHtml makes a page of: the same words, the same pictures. A stage without a picture is
/// named in words.
PdfBook job_book(const JobSheet& sheet, const JobPictures& pictures, const Paper& paper);

}  // namespace sagitta
