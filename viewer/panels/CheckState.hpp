#pragma once

#include "document/Document.hpp"
#include "document/OtherVersions.hpp"
#include "jobs/Results.hpp"
#include "view/View.hpp"
#include "widgets/FieldRow.hpp"

namespace sagitta::viewer {

/// What the column of checks works with.
struct CheckState {
  Ui& ui;
  Document& document;
  View& view;
  FieldRows& rows;
  Unopened& unopened;
  const Results& results;
  Manner manner;
};

}  // namespace sagitta::viewer
