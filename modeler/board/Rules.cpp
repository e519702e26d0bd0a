/// Rules between keys, each about values that are sound by themselves.

#include <algorithm>
#include <array>
#include <set>

#include "board/Length.hpp"
#include "board/Reading.hpp"
#include "board/SlotCut.hpp"

namespace sagitta {
namespace {

std::string item(const std::string& key, std::size_t index) { return key + "[" + std::to_string(index) + "]"; }

std::string counted(std::size_t count, const std::string& one, const std::string& many) {
  return std::to_string(count) + " " + (count == 1 ? one : many);
}

void check_cents(Reading& reading) {
  const Scale& scale = reading.out.board.scale;
  if (scale.cents.empty() || !reading.good("scale.cents")) return;
  for (std::size_t i = 1; i < scale.cents.size(); ++i) {
    if (scale.cents[i] > scale.cents[i - 1]) continue;
    reading.report_value(
        FaultCode::not_rising, item("scale.cents", i),
        decimal(scale.cents[i]) + " cents does not rise above the " + decimal(scale.cents[i - 1]) + " before it",
        "cents count from the open string; put them in rising order");
  }
  const auto frets = static_cast<std::size_t>(std::max(scale.frets, 0));
  if (!reading.given("scale.frets") || !reading.good("scale.frets") || scale.cents.size() >= frets) return;
  reading.report_value(FaultCode::wrong_count, "scale.cents",
                       counted(scale.cents.size(), "value", "values") + " for " + counted(frets, "fret", "frets"),
                       "give one value for each fret, or fewer frets");
}

void check_gauges(Reading& reading) {
  const Strings& strings = reading.out.board.strings;
  if (!reading.good("strings.gauges") || !reading.good("strings.count")) return;
  if (!reading.given("strings.gauges") || !reading.given("strings.count") ||
      strings.gauges.size() == static_cast<std::size_t>(strings.count))
    return;
  reading.report_value(FaultCode::wrong_count, "strings.gauges",
                       counted(strings.gauges.size(), "gauge", "gauges") + " for " +
                           counted(static_cast<std::size_t>(strings.count), "string", "strings"),
                       "give one for each string, bass first");
}

/// Frets of the board, those of its tongue included.
int frets_of(const Board& board) { return board.scale.frets + (board.tongue ? board.tongue->frets : 0); }

/// One fret number against the last one allowed.
void check_fret(Reading& reading, const std::string& key, int fret, int last) {
  // A board without frets: see check_fretless.
  const bool fretless = reading.out.board.scale.frets == 0;
  if (!reading.given("scale.frets") || !reading.good("scale.frets") || fret <= last || fretless) return;
  reading.report_value(FaultCode::no_such_fret, key,
                       "fret " + std::to_string(fret) + " is beyond the last fret, " + std::to_string(last),
                       "frets run from 1 to " + std::to_string(last));
}

/// The same against the main board's last fret.
void check_fret(Reading& reading, const std::string& key, int fret) {
  check_fret(reading, key, fret, reading.out.board.scale.frets);
}

void check_marked_frets(Reading& reading, const std::string& prefix, const std::vector<int>& singles,
                        const std::vector<int>& pairs, bool spread_given) {
  const std::string single_key = prefix + ".frets", pair_key = prefix + ".double_frets";
  std::set<int> seen;
  const auto walk = [&](const std::string& key, const std::vector<int>& frets) {
    if (!reading.good(key)) return;
    std::set<int> here;
    for (std::size_t i = 0; i < frets.size(); ++i) {
      check_fret(reading, item(key, i), frets[i], frets_of(reading.out.board));
      const bool twice = !here.insert(frets[i]).second;
      if (twice || seen.contains(frets[i])) {
        reading.report_value(FaultCode::named_twice, item(key, i),
                             "fret " + std::to_string(frets[i]) +
                                 (twice ? " is in this list twice" : " is in frets and in double_frets"),
                             "keep it in one place");
      }
    }
    seen.insert(here.begin(), here.end());
  };
  walk(single_key, singles);
  walk(pair_key, pairs);
  if (!reading.good(single_key) || !reading.good(pair_key)) return;
  if (singles.empty() && pairs.empty() && reading.chain.whole) {
    reading.report_value(FaultCode::missing_key, single_key, "there is no fret here to mark",
                         "give frets = [..] or double_frets = [..]");
  } else if (pairs.empty() && spread_given) {
    reading.report_key(FaultCode::not_used, prefix + ".spread",
                       "\"spread\" is not used here: it goes with double_frets", "take the line out");
  }
}

void check_order(Reading& reading) {
  constexpr std::string_view names[] = {"pockets", "inlay", "radius", "slots", "outline", "thickness"};
  const auto& order = reading.out.board.order;
  if (!reading.given("work.order") || !reading.good("work.order")) return;
  std::set<Operation> seen;
  for (std::size_t i = 0; i < order.size(); ++i) {
    const std::string name(names[static_cast<std::size_t>(order[i])]);
    if (!seen.insert(order[i]).second)
      reading.report_value(FaultCode::named_twice, item("work.order", i), "\"" + name + "\" is in the order twice",
                           "keep one");
    if (order[i] == Operation::thickness && i > 0)
      reading.report_value(FaultCode::wrong_order, item("work.order", i),
                           "the blank is brought to thickness before anything else is cut", "put \"thickness\" first");
    if (order[i] == Operation::inlay && !seen.contains(Operation::pockets)) {
      reading.report_value(FaultCode::wrong_order, item("work.order", i),
                           "a piece cannot go in before its pocket is cut", "put \"inlay\" after \"pockets\"");
    }
  }
  for (std::size_t i = 0; i < std::size(names); ++i) {
    const auto operation = static_cast<Operation>(i);
    if (operation == Operation::thickness || seen.contains(operation)) continue;
    reading.report_value(FaultCode::missing_key, "work.order",
                         "\"" + std::string(names[i]) + "\" is missing from the order of work",
                         "name pockets, inlay, radius, slots and outline once each");
  }
}

/// What the operation thickness mills the blank to: no thinner than the board with its sanding.
void check_thickness_to(Reading& reading) {
  const Board& board = reading.out.board;
  const std::string key = "work.thickness_to";
  if (!reading.good(key) || !reading.good("work.order")) return;
  const bool milled = !board.order.empty() && board.order.front() == Operation::thickness;
  if (!milled && reading.given(key) && reading.level(key) <= reading.level("work.order"))
    return reading.report_key(FaultCode::not_used, key,
                              "\"thickness_to\" is not used here: it goes with an order that begins with \"thickness\"",
                              "take the line out, or put \"thickness\" first in work.order");
  if (!milled || !reading.given(key)) return;
  const auto shown = [&](double mm) { return shown_length(mm, board.units); };
  const double finished = board.board.thickness + board.sanding;
  if (reading.given("board.thickness") && reading.good("board.thickness") && *board.thickness_to < finished)
    reading.report_value(FaultCode::not_allowed, key,
                         "a blank milled to " + shown(*board.thickness_to) +
                             " is thinner than the board with its sanding, " + shown(finished),
                         "mill it to " + shown(finished) + " or more");
}

void check_repeats(Reading& reading) {
  const Board& board = reading.out.board;
  for (std::size_t i = 0; i < board.setups.size(); ++i) {
    const auto& operations = board.setups[i].operations;
    for (std::size_t k = 0; k < operations.size(); ++k) {
      if (std::find(operations.begin(), operations.begin() + static_cast<long>(k), operations[k]) ==
          operations.begin() + static_cast<long>(k))
        continue;
      reading.report_value(FaultCode::named_twice, item(item("setups", i) + ".operations", k),
                           "this operation is in the list twice", "keep one");
    }
  }
}

/// Numbers of a list of places that are lengths of the wood, not places: one range each.
template <std::size_t Size>
void check_sizes(Reading& reading, const std::string& key, const std::vector<std::array<double, Size>>& places,
                 const Range& range) {
  if (!reading.good(key)) return;
  const Units units = reading.out.board.units;
  for (std::size_t i = 0; i < places.size(); ++i)
    if (!range.holds(places[i].back()))
      reading.report_value(FaultCode::not_allowed, item(key, i),
                           shown_length(places[i].back(), units) + " is not possible here; allowed is from " +
                               shown_length(range.least, units) + " to " + shown_length(range.most, units),
                           Size == 2 ? "give [x, width]" : "give x and y first, then the size");
}

void check_measured_places(Reading& reading) {
  const Measured& measured = reading.out.board.measured;
  check_sizes(reading, "measured.widths", measured.widths, {5, 600});
  check_sizes(reading, "measured.thickness", measured.thickness, {0.1, 100});
  check_sizes(reading, "measured.chips", measured.chips, {0.05, 100});
  std::set<Operation> seen;
  for (std::size_t i = 0; i < measured.done.size(); ++i)
    if (!seen.insert(measured.done[i]).second)
      reading.report_value(FaultCode::named_twice, item("measured.done", i), "this operation is in the list twice",
                           "keep one");
}

void check_measured(Reading& reading) {
  const Board& board = reading.out.board;
  if (!reading.given("measured.slots") || !reading.good("measured.slots") || !reading.given("scale.frets") ||
      !reading.good("scale.frets"))
    return;
  const int cut = slot_cut(board) == SlotCut::none ? 0 : frets_of(board) + (board.scale.zero_fret ? 1 : 0);
  const auto slots = static_cast<std::size_t>(cut);
  if (board.measured.slots.size() == slots) return;
  reading.report_value(
      FaultCode::wrong_count, "measured.slots",
      counted(board.measured.slots.size(), "place", "places") + " measured, but the board has " +
          counted(slots, "slot", "slots"),
      board.scale.zero_fret ? "give one for each slot, the zero fret's first" : "give one for each slot");
}

/// The larger distance of an edge from the middle line at the nut, as far as the keys say it.
std::optional<double> larger_edge_at_nut(const Board& board) {
  const Shape& shape = board.board;
  if (shape.nut_width) return *shape.nut_width / 2;
  const std::optional<LengthPair> margin = shape.edge_margin ? shape.edge_margin : shape.nut_margin;
  if (!margin || board.strings.nut_spread <= 0) return std::nullopt;
  return board.strings.nut_spread / 2 + std::max(margin->first, margin->second);
}

void check_radius(Reading& reading) {
  const Board& board = reading.out.board;
  const auto radius = board.surface.radius_at_nut;
  const auto edge = larger_edge_at_nut(board);
  if (!radius || !edge || *radius > *edge) return;
  const std::string inches = radius_hint(board, *radius);
  reading.report_value(FaultCode::no_surface, "surface.radius_at_nut",
                       "a radius of " + shown_length(*radius, board.units) +
                           " is under the distance of the edge from the middle line at the nut, " +
                           shown_length(*edge, board.units),
                       inches.empty() ? "make the radius larger or the board narrower" : inches);
}

void check_nut(Reading& reading) {
  const Board& board = reading.out.board;
  const bool seat_known = reading.good("nut.seat") && reading.good("scale.zero_fret");
  if (!seat_known) return;
  if (board.nut.seat == NutSeat::none && board.scale.zero_fret && reading.given("nut.distance")) {
    reading.report_key(FaultCode::not_used, "nut.distance",
                       "\"distance\" is not used here: it goes with seat = \"slot\" or \"shelf\"",
                       "take the line out, or give the nut a seat");
  }
  if (board.nut.seat != NutSeat::none && board.scale.zero_fret && reading.given("nut.compensation")) {
    reading.report_key(FaultCode::not_used, "nut.compensation",
                       "\"compensation\" is not used here: with a zero fret the nut does not end the strings",
                       "take the line out");
  }
}

/// The general range of past_last_fret is that of all boards together.
void check_past_last(Reading& reading) {
  const Board& board = reading.out.board;
  const double past = board.board.past_last_fret;
  if (!reading.given("board.past_last_fret") || !reading.good("board.past_last_fret")) return;
  const bool bare = board.scale.frets == 0 && reading.given("scale.frets");
  const bool uncut = slot_cut(board) == SlotCut::none;
  const Range range = bare ? Range{1, 3000} : Range{board.board.ends_cut_slots ? -60 : 0.1, 300, uncut};
  if (range.holds(past)) return;
  const Units units = board.units;
  reading.report_value(FaultCode::not_allowed, "board.past_last_fret",
                       shown_length(past, units) + " is not possible here; allowed is from " +
                           shown_length(range.least, units) + " to " + shown_length(range.most, units),
                       past < 0.1 && !bare ? "give ends_cut_slots = true where the end shall cut slots" : "");
}

void check_courses(Reading& reading) {
  const Strings& strings = reading.out.board.strings;
  if (!reading.good("strings.course") || !reading.good("strings.count") || !reading.given("strings.count")) return;
  if (strings.course == 1) {
    if (!reading.given("strings.course_gap")) return;
    reading.out.board.strings.course_gap.reset();
    if (reading.level("strings.course_gap") <= reading.level("strings.course"))
      reading.report_key(FaultCode::not_used, "strings.course_gap",
                         "\"course_gap\" is not used here: it goes with a course of 2 or more", "take the line out");
    return;
  }
  if (strings.count % strings.course != 0 || strings.count < 2 * strings.course) {
    reading.report_value(FaultCode::wrong_count, "strings.count",
                         counted(static_cast<std::size_t>(strings.count), "string", "strings") + " do not make " +
                             "two or more courses of " + std::to_string(strings.course),
                         "count is the number of strings, not of courses");
  }
  if (!reading.given("strings.course_gap") && reading.chain.whole)
    reading.report_value(FaultCode::missing_key, "strings.course_gap",
                         "\"course_gap\" is missing: a course of 2 or more needs it",
                         "give the distance of the strings inside a course, centre to centre");
}

void check_frets(Reading& reading) {
  const Board& board = reading.out.board;
  if (reading.given("scale.square_fret") && reading.good("scale.square_fret"))
    check_fret(reading, "scale.square_fret", board.scale.square_fret);
  if (board.board.width_at_fret && reading.good("board.width_at_fret"))
    check_fret(reading, "board.width_at_fret", static_cast<int>((*board.board.width_at_fret)[0]));
  if (board.surface.fall_from_fret) check_fret(reading, "surface.fall_from_fret", *board.surface.fall_from_fret);
  for (std::size_t i = 0; i < board.inlays.size(); ++i) {
    const std::string prefix = item("inlays", i);
    check_marked_frets(reading, prefix, board.inlays[i].frets, board.inlays[i].double_frets,
                       reading.given(prefix + ".spread"));
  }
  if (board.side_dots) {
    check_marked_frets(reading, "side_dots", board.side_dots->frets, board.side_dots->double_frets,
                       reading.given("side_dots.spread"));
  }
}

void check_scallop(Reading& reading) {
  const auto& scallop = reading.out.board.scallop;
  if (!scallop || !reading.good("scallop.from_fret") || !reading.good("scallop.to_fret")) return;
  check_fret(reading, "scallop.to_fret", scallop->to_fret);
  if (!reading.given("scallop.from_fret") || !reading.given("scallop.to_fret")) return;
  if (scallop->from_fret < scallop->to_fret) return;
  reading.report_value(FaultCode::not_allowed, "scallop.to_fret",
                       "there is no space between slot " + std::to_string(scallop->from_fret) + " and slot " +
                           std::to_string(scallop->to_fret),
                       "make to_fret larger than from_fret");
}

void check_worked_edges(Reading& reading) {
  const auto& edges = reading.out.board.edges;
  if (!edges || !reading.good("edges.roll") || !reading.good("edges.bevel")) return;
  if (edges->roll > 0 && edges->bevel > 0)
    return reading.report_value(FaultCode::given_twice, "edges.bevel", "an edge is rolled or bevelled, not both",
                                "take out roll or bevel");
  const auto unused = [&](const std::string& key, const std::string& with) {
    if (reading.given("edges." + key))
      reading.report_key(FaultCode::not_used, "edges." + key, "\"" + key + "\" is not used here: it goes with " + with,
                         "take the line out");
  };
  if (edges->bevel == 0) unused("bevel_angle", "bevel");
  if (edges->bevel == 0 && edges->roll == 0) unused("stage", "roll or bevel");
}

}  // namespace

void check_rules(Reading& reading) {
  check_cents(reading);
  check_gauges(reading);
  check_courses(reading);
  check_past_last(reading);
  check_frets(reading);
  check_cuts(reading);
  check_edges(reading);
  check_order(reading);
  check_thickness_to(reading);
  check_repeats(reading);
  check_measured(reading);
  check_measured_places(reading);
  check_radius(reading);
  check_nut(reading);
  check_scallop(reading);
  check_worked_edges(reading);
}

}  // namespace sagitta
