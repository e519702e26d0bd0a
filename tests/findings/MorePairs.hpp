#pragma once

// Numbers by hand on the good board: scale 647.7, frets 1, 4, 5, 12, 22 at 36.352, 133.619, 162.474, 323.85, 465.945;
// half width 27.78; drop there 1.2686, so that the edge is 5.0814 high.

#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "Pairs.hpp"

namespace sagitta::test {

inline void add_channel(Board& board, double width) {
  neck_of(board).channel_width = width;
  neck_of(board).channel_from = 10;
  neck_of(board).channel_to = 400;
}

inline void make_block(Board& board, double along, double across, int fret) {
  Inlay& inlay = board.inlays[0];
  inlay.shape = InlayShape::block;
  inlay.along = along;
  inlay.across = across;
  inlay.frets = {fret};
}

inline void drill_side_dot(Board& board, double diameter, double depth) {
  board.side_dots.emplace();
  board.side_dots->frets = {3};
  board.side_dots->diameter = diameter;
  board.side_dots->depth = depth;
}

/// A block of 10 x 8.
inline Cut cut_block(double x, double y, double depth, CutFrom from = CutFrom::top) {
  Cut cut;
  cut.name = from == CutFrom::top ? "notch" : "hollow";
  cut.from = from;
  cut.shape = CutShape::block;
  cut.along = 10, cut.across = 8;
  cut.at = {x, y};
  cut.depth = depth;
  return cut;
}

inline void measure(Board& board, double stretch, int frets) {
  for (int n = 1; n <= frets; ++n) board.measured.slots.push_back(stretch * 25.5 * inch * (1 - std::exp2(-n / 12.0)));
}

/// Pieces of the good board are 1.5 + 0.2 thick; five dots of 6 mm.
inline void add_sheet(Board& board, double length, double thickness) {
  board.sheets.push_back({"shell", length, 20, thickness, Pattern::none});
}

/// A drawing of one square of 4 mm, let in at fret 3 at its own size, with one cutter of this diameter for all of it.
inline void let_in_square(Board& board, double cutter) {
  board.folder = testing::TempDir() + "sagitta-" + std::to_string(::getpid());  // tests run side by side
  std::filesystem::create_directories(board.folder);
  std::ofstream(board.folder + "/square.svg") << "<svg xmlns='http://www.w3.org/2000/svg' width='4mm' height='4mm' "
                                                 "viewBox='0 0 4 4'><path d='M0 0H4V4H0Z' fill='#202020'/></svg>";
  board.inlays[0].shape = InlayShape::artwork;
  board.inlays[0].file = "square.svg";
  board.inlays[0].frets = {3};
  board.inlays[0].along = 4;
  if (cutter == 0) return;
  add_cutters(board, 3, 0.58);
  board.cutters[0].use = {CutterUse::pocket_detail, CutterUse::piece, CutterUse::radius, CutterUse::outline};
  board.cutters[0].diameter = cutter;
}

/// An end that runs at 45 degrees and leaves so much of slot 22, at x = 465.945, up to the treble edge at y = 27.78.
inline void cut_last_slot(Board& board, double left) {
  board.board.heel = Heel::slant;
  board.board.heel_angle = -45;
  board.board.past_last_fret = left - 27.78;
  board.board.ends_cut_slots = true;
}

inline std::vector<Pair> wood_pairs() {
  return {
      {"frets-need-glue", 0.58, 0.57, [](Board& b, double v) { b.wire.barb_width = v; }},
      {"frets-bend-board", 0.58, 0.59, [](Board& b, double v) { b.wire.barb_width = v; }},
      {"chip-left", 6.00, 6.02,  // a dot of 6 mm between the slots of frets 2 and 3
       [](Board& b, double v) {
         const double middle = 25.5 * inch * (1 - (std::exp2(-2 / 12.0) + std::exp2(-3 / 12.0)) / 2);
         b.measured.chips = {{middle, 0, v}};
       }},
      {"short-fret-piece", 8.01, 7.99, cut_last_slot},
      {"wood-behind-last-slot", 0.59, 0.58,
       [](Board& b, double v) { b.board.past_last_fret = v; }},  // half a slot 0.29
      {"side-dots-in-binding", 2.99, 3.00,
       [](Board& b, double v) {
         b.binding = Binding{v, 0, {}, {}};
         drill_side_dot(b, 2, 3);
       }},
      {"side-dots-in-binding", 2.99, 3.00,  // a ledge lower than the hole: 5.3409 - 4 under 5.0814/2 - 1
       [](Board& b, double v) {
         b.binding = Binding{v, 4, {}, {}};
         drill_side_dot(b, 2, 3);
       }},
      {"side-dot-in-ledge", 1.54, 1.55,  // the hole's top is at 5.0814/2 + 1, the ledge's floor at 5.0814 - v
       [](Board& b, double v) {
         b.binding = Binding{1.5, v, {}, {}};
         drill_side_dot(b, 2, 3);
       }},
      {"drawing-simplified", 0.2, 0.3,  // four corners lose (4 - pi) r^2: 0.0086 and 0.0193 mm2
       [](Board& b, double v) { let_in_square(b, v); }},
      {"left-to-detail-cutter", 0, 1,
       [](Board& b, double v) {
         let_in_square(b, 0.5);
         if (v == 0) return;
         b.cutters.push_back(b.cutters[0]);
         b.cutters.back().name = "clearing";
         b.cutters.back().use = {CutterUse::pocket_clear};
         b.cutters.back().diameter = 2;
       }},
      {"sheet-too-thin", 1.70, 1.69, [](Board& b, double v) { add_sheet(b, 80, v); }},
      {"sheet-too-thin", 2.00, 1.99,  // the pieces' 1.70 and a skin of 0.30
       [](Board& b, double v) {
         add_sheet(b, 80, v);
         b.sheets.back().hold = SheetHold::skin;
         b.sheets.back().skin = 0.3;
       }},
      {"no-room-on-sheet", 35.1, 34.8,  // five dots with a web of 1 mm between them and at both ends: 36; two rows: no
       [](Board& b, double v) {
         add_sheet(b, v + 1, 2);
         b.sheets.back().width = 8.1;
         b.sheets.back().margin = b.sheets.back().clamp = 1;
       }},
      {"slot-out-of-tune", 38.11, 38.12,  // 611.348 of string are left; 5 cents of it are 1.7631
       [](Board& b, double v) { b.measured.slots = {v}; }},
      {"slots-drift", 1.0002327, 1.0002329,  // 429.593 from first to last: 0.09997 and 0.10005
       [](Board& b, double v) { measure(b, v, 22); }},
      {"measured-slots-differ", 22, 21, [](Board& b, double v) { measure(b, 1, static_cast<int>(v)); }},
      {"board-overhangs-neck", 54.56, 54.55, [](Board& b, double v) { neck_of(b).nut_width = v; }},
      {"joint-fret-off-body", 324.34, 324.36,
       [](Board& b, double v) {
         neck_of(b).joint_fret = 12;
         neck_of(b).body_at = v;
       }},
      {"pin-in-channel", 5.01, 4.99,  // half the channel 3, the pin's radius 1, and 1 between them
       [](Board& b, double v) {
         add_channel(b, 6);
         b.pins = Pins{2, 2.5, {{100, v}}};
       }},
      {"thin-over-channel", 3.97, 3.96,  // 1.95 of slot, 2 of wood, and 3^2 / (2 304.8) = 0.0148 of drop at its side
       [](Board& b, double v) {
         add_channel(b, 6);
         b.board.thickness = v;
       }},
      {"inlay-sliver", 12.73, 12.70,  // from the middle of space 5 to slot 5: 14.427; half a slot 0.29, half a dot 3
       [](Board& b, double v) {
         b.inlays[0].frets = {5};
         b.inlays[0].shift_along = v;
       }},
      {"inlays-close", 6.61, 6.59,  // 6.1 across with the clearance
       [](Board& b, double v) {
         b.inlays[0].frets = {};
         b.inlays[0].double_frets = {5};
         b.inlays[0].spread = v;
       }},
      {"thin-over-pin", 5.54, 5.56,
       [](Board& b, double v) {
         b.pins = Pins{2, v, {{20, 0}}};
       }},
      {"pin-near-edge", 24.77, 24.79,
       [](Board& b, double v) {
         b.pins = Pins{2, 2.5, {{20, v}}};
       }},
      {"thin-under-cut", 4.85, 4.86, [](Board& b, double v) { b.cuts = {cut_block(20, 0, v)}; }},
      {"thin-over-cut", 5.52, 5.53,  // 4 mm off the middle the board is 6.35 - 4^2 / (2 304.8) = 6.3238 thick
       [](Board& b, double v) { b.cuts = {cut_block(20, 0, v, CutFrom::below)}; }},
      {"thin-between-cuts", 3.05, 3.06,  // the floor at 6.35 - 3 = 3.35
       [](Board& b, double v) {
         b.cuts = {cut_block(20, 0, 3), cut_block(20, 0, v, CutFrom::below)};
       }},
      {"cuts-meet", 3.30, 3.40,
       [](Board& b, double v) {
         b.cuts = {cut_block(20, 0, 3), cut_block(20, 0, v, CutFrom::below)};
       }},
      {"cut-on-inlay", 7.06, 7.04,  // the pocket's radius 3.05 and half of the block's 8
       [](Board& b, double v) {
         // Fret 4 stands at 647.7 (1 - 2^(-1/3)) = 133.620, fret 5 at 162.473: the dot's middle between them.
         b.cuts = {cut_block(148.046, v, 1)};
       }},
      {"side-dot-off-binding", 3.85, 3.84,  // the edge is 5.0814 high, the hole's bottom at 1.5407
       [](Board& b, double v) {
         b.binding = Binding{1.5, v, {}, {}};
         drill_side_dot(b, 2, 1.4);
         b.side_dots->in = DotIn::binding;
       }},
      {"piece-under-top", 2.30, 2.29,  // the blank 6.35 + 0.8 thick, the pocket's floor at 4.85
       [](Board& b, double v) { b.inlays[0].piece_thickness = v; }},
      {"side-dot-near-cut", 2.30, 2.32,  // the dot's top is 5.0814/2 + 1 = 3.5407 up, the pocket's floor 6.35 - v
       [](Board& b, double v) {
         make_block(b, 8, 50, 3);
         b.inlays[0].depth = v;
         drill_side_dot(b, 2, 10);
       }},
      {"thin-at-side-dot", 4.08, 4.09, [](Board& b, double v) { drill_side_dot(b, v, 3); }},
      {"glue-land-narrow", 45.55, 45.57, [](Board& b, double v) { add_channel(b, v); }},
      {"slot-too-tight-in-composite", 0.60, 0.59,  // 0.09 over a tang of 0.51
       [](Board& b, double v) {
         b.blank.material = "paper-phenolic";
         b.slots.width = v;
       }},
      {"fall-large", 0.60, 0.61,
       [](Board& b, double v) {
         b.surface.fall_from_fret = 12;
         b.surface.fall = v;
       }},
      {"thin-under-pocket", 4.84, 4.86,  // the slot is deeper than the pocket that it crosses; the middle of a slot
       [](Board& b, double v) {
         make_block(b, 40, 0.5, 5);
         b.slots.depth = v;
       }},
  };
}

inline void set_order(Board& board, std::vector<Operation> order) { board.order = std::move(order); }

inline sagitta::Setup& add_setup(Board& board, std::vector<Operation> operations) {
  board.setups.emplace_back();
  board.setups.back().operations = std::move(operations);
  return board.setups.back();
}

inline Cutter& add_cutter(Board& board, CutterUse use, double diameter) {
  board.cutters.emplace_back();
  board.cutters.back().name = "one";
  board.cutters.back().use = {use};
  board.cutters.back().diameter = diameter;
  board.cutters.back().cutting_length = 5 * diameter;
  return board.cutters.back();
}

inline std::vector<Pair> work_pairs() {
  return {
      {"proud-in-slot-path", 1.50, 1.51,
       [](Board& b, double v) {
         make_block(b, 40, 8, 5);
         b.inlays[0].piece_thickness = v;
         set_order(b, {Operation::radius, Operation::pockets, Operation::inlay, Operation::slots, Operation::outline});
       }},
      {"outline-before-last", 0, 1,
       [](Board& b, double v) {
         if (v == 1)
           set_order(b,
                     {Operation::pockets, Operation::inlay, Operation::radius, Operation::outline, Operation::slots});
       }},
      {"zero-gone", 0, 1,
       [](Board& b, double v) {
         add_setup(b, {v == 0 ? Operation::pockets : Operation::slots}).z_zero = ZZero::blank_top;
       }},
      {"zero-gone", 0, 1,
       [](Board& b, double v) {
         set_order(b, {Operation::pockets, Operation::inlay, Operation::radius, Operation::outline, Operation::slots});
         add_setup(b, {v == 0 ? Operation::radius : Operation::slots}).zero = Zero::corner;
       }},
      {"no-room-for-outline-cutter", 10.99, 11.01,  // 12 of blank at each side
       [](Board& b, double v) { add_cutter(b, CutterUse::outline, v); }},
      {"cutter-slender", 3.48, 3.49, [](Board& b, double v) { add_cutters(b, v, 0.58); }},
      {"pass-too-deep", 0.58, 0.59,
       [](Board& b, double v) {
         add_cutters(b, 3, 0.58);
         b.cutters[1].pass_depth = v;
       }},
      {"runout-large", 0.030, 0.031,
       [](Board& b, double v) {
         add_cutters(b, 3, 0.54);
         b.cutters[0].runout = v;
       }},
      // 0.03 0.54 / 1.8 = 0.009
      {"runout-large", 0.0089, 0.0091,
       [](Board& b, double v) {
         add_cutters(b, 3, 0.54);
         b.cutters[1].runout = v;
       }},
      {"slot-cutter-narrow", 0.551, 0.549, [](Board& b, double v) { add_cutters(b, 3, v); }},
      {"outline-into-bed", 0.10, 0.09, [](Board& b, double v) { add_setup(b, {Operation::outline}).tape = v; }},
      {"operation-without-setup", 0, 1,
       [](Board& b, double v) {
         std::vector<Operation> done{Operation::pockets, Operation::radius, Operation::outline};
         if (v == 0) done.push_back(Operation::slots);
         add_setup(b, done);
       }},
      {"zero-shifted", 0, 0.1,
       [](Board& b, double v) {
         add_setup(b, {Operation::slots}).z_zero = ZZero::bed;
         b.setups[0].tape = v;
       }},
      {"zero-on-blank", 0, 1,
       [](Board& b, double v) { add_setup(b, {Operation::pockets}).zero = v == 0 ? Zero::nut : Zero::corner; }},
      {"little-clamp-room", 518.15, 518.13,  // the board 482.145, 3 of radius cut and 15 at each end
       [](Board& b, double v) { b.blank.length = v; }},
      {"corner-rounded", 1.20, 1.21,  // r (sqrt 2 - 1) = 0.25 at r = 0.6036
       [](Board& b, double v) {
         make_block(b, 8, 20, 5);
         add_cutter(b, CutterUse::pocket_detail, v);
       }},
      {"radius-ridges", 3.17, 3.15,  // 0.25^2 = 0.02 (2 r - 0.02) at r = 1.5725, a ball of 1.5807 on a radius of 304.8
       [](Board& b, double v) { add_cutter(b, CutterUse::radius, v).shape = CutterShape::ball; }},
      {"radius-ridges", 0.21, 0.24,  // the drop over 27.78 less that over 27.57, and over 27.54: 0.0192 and 0.0220
       [](Board& b, double v) { add_cutter(b, CutterUse::radius, 2 * v); }},
  };
}

inline std::vector<Pair> note_pairs() {
  const auto limited = [](const char* name) { return [name](Board& b, double v) { b.limits[name] = v; }; };
  const auto pieces = [](Board& b, double v) {
    if (v == 0) b.inlays.clear();
  };
  return {
      {"octave-unmarked", 12, 7,
       [](Board& b, double v) {
         b.inlays[0].frets = {3, 5, static_cast<int>(v)};
       }},
      {"marker-off-centre", 0.10, 0.11, [](Board& b, double v) { b.inlays[0].shift_across = v; }},
      {"no-fall-away", 22, 21, [](Board& b, double v) { neck_of(b).joint_fret = static_cast<int>(v); }},
      {"few-pins", 2, 1,
       [](Board& b, double v) {
         b.pins = Pins{2, 2.5, {{20, 0}}};
         if (v == 2) b.pins->at.push_back({450, 0});
       }},
      {"glue-in-channel", 0, 6,
       [](Board& b, double v) {
         if (v > 0) add_channel(b, v);
       }},
      {"tang-nipped", 0, 1.5,
       [](Board& b, double v) {
         if (v > 0) b.binding = Binding{v, 0, {}, {}};
       }},
      {"strings-close", 30.01, 29.99, [](Board& b, double v) { b.strings.nut_spread = v; }},
      // Six pairs, 2 apart: from the first course's middle to the last one's the spread less 2, five spaces of 6.
      {"strings-close", 32.01, 31.99,
       [](Board& b, double v) {
         b.strings.count = 12;
         b.strings.course = 2;
         b.strings.course_gap = 2;
         b.strings.nut_spread = v;
       }},
      {"placement-sensitive", 22, 23, [](Board& b, double v) { b.scale.frets = static_cast<int>(v); }},
      {"width-moves", 0.67, 0.66, limited("width-moves")},  // ebony flat-sawn: 55.56 4 0.09/30 = 0.6667
      {"length-moves", 43.2, 43.4,                          // 0.05 / (7.7e-5 15) = 43.29
       [](Board& b, double v) {
         make_block(b, 8, v, 3);
         b.inlays[0].material = "acrylic";
       }},
      {"land-under-crown", 1.21, 1.19,  // half a crown of 2.4
       [](Board& b, double v) {
         b.scallop = Scallop{12, 22, 0.3, v};
       }},
      // tangent to the arc from inside: (27.78 - r)^2 / (2 (304.8 - r)) + r - 1.2686, and 4th powers, is 1.95 at r
      // = 2.13
      {"edge-below-slot", 2.12, 2.14,
       [](Board& b, double v) {
         b.edges = Edges{v, 0, 30, EdgeStage::hand};
       }},
      {"saddle-height", 7.56, 7.54, limited("saddle-height")},  // 6.35 + 1.2
      {"several-boards", 129.46, 129.48,                        // 2 x 55.56, 6.35 between, 6 at each side
       [](Board& b, double v) { b.blank.width = v; }},
      {"board-weight", 200, 100, limited("board-weight")},
      {"unknown-material", 0, 1, [](Board& b, double v) { b.blank.material = v == 0 ? "ebony" : "bog-oak"; }},
      {"caution-dust", 2, 1, limited("caution-dust")},
      {"caution-fumes", 0, 1, pieces},
      {"caution-small-parts", 0, 1, pieces},
      {"caution-species", 0, 1,
       [](Board& b, double v) {
         b.inlays.clear();
         b.blank.material = v == 0 ? "maple" : "rosewood";
       }},
  };
}

}  // namespace sagitta::test
