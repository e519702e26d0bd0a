#include "board/Practice.hpp"

#include <algorithm>
#include <iterator>

namespace sagitta {
namespace {

constexpr Practice rows[] = {
    {"scale.length", 340, 870, "A longer scale makes the strings tighter and the spaces wider at the same pitch."},
    {"scale.bass", 600, 900, "A longer bass string is tighter and clearer at the same thickness."},
    {"scale.treble", 560, 660, "A shorter treble string is slacker and breaks later."},
    {"scale.square_fret", 5, 12,
     "Frets slant away from the square one to both sides: where it stands, the hand stands most."},
    {"scale.frets", 12, 24, "The last spaces are the narrowest; they must still take a fingertip."},
    {"strings.nut_spread", 28, 46,
     "Too narrow, and fingers touch the next string; too wide, and the hand must stretch."},
    {"strings.saddle_spread", 40, 62, "It is the bridge that is bought or made that decides it."},
    {"board.thickness", 5, 7,
     "Thinner leaves little wood under slots and pockets and bends as frets are pressed; thicker raises the strings."},
    {"board.edge_margin", 2.5, 5, "With less the outer string slips over the edge when it is pulled."},
    {"board.nut_width", 35, 55, "It is the width that the hand knows an instrument by."},
    {"board.heel_width", 50, 65, "It must fit the neck that it is glued to."},
    {"board.past_last_fret", 5, 15, "Wood behind the last slot keeps it from chipping out."},
    {"surface.radius_at_nut", 184, 508,
     "A smaller radius suits chords, a larger one low strings and bends, on which a small one chokes."},
    {"surface.radius_at_heel", 254, 610, "Larger than at the nut, so that strings that spread lie along the surface."},
    {"surface.fall", 0.25, 0.5,
     "It keeps the strings clear of the last frets where the neck's end rises under tension."},
    {"nut.width", 3.2, 6.4,
     "The nut that is bought or cut decides it; a loose one shifts, a tight one splits the end."},
    {"nut.depth", 2, 4, "A seat in the board keeps the nut upright under the strings."},
    {"nut.compensation", 0, 1,
     "A string that is pressed near the nut sounds sharp; a nut nearer to the frets takes it back."},
    {"wire.tang_depth", 1.5, 1.9, "Measure the wire: the slot is cut by it."},
    {"wire.tang_width", 0.5, 0.55, "Measure the wire without its barbs: the slot holds the wire by a few hundredths."},
    {"wire.crown_width", 1.9, 2.9, "A wider crown wears later, a narrower one sounds cleaner."},
    {"wire.crown_height", 0.9, 1.45, "A higher crown can be levelled more often."},
    {"wire.overhang", 1, 3, "Wire over the edge is nipped and filed flush once the frets sit."},
    {"wire.end_bevel", 20, 35, "A steeper bevel leaves more width to play on, a flatter one is kinder to the hand."},
    {"slots.width", 0.55, 0.62,
     "Tang and 0.03 to 0.05 mm: tighter bends the board backwards with every fret, wider lets the frets lift."},
    {"slots.depth", 1.9, 2.4,
     "Tang and 0.25 to 0.5 mm, under the edges too: the crown must sit on the wood, air under the tang does no harm."},
    {"slots.edge_left", 1, 2.5, "Enough wood that the tip of a blind slot does not show at the edge."},
    {"inlays.diameter", 4, 7, "A dot must stay clear of the slots of the narrowest space that it stands in."},
    {"inlays.depth", 1.2, 2, "As deep as what sanding to the radius leaves of the piece at its edges."},
    {"inlays.clearance", 0.03, 0.1, "Room for the glue: thin glue wants little, filled glue more."},
    {"inlays.piece_thickness", 1.3, 2.2, "A little proud of the pocket; the radius is sanded over both."},
    {"side_dots.diameter", 1.5, 3, "Seen from above at arm's length, and clear of the slots."},
    {"side_dots.depth", 2, 4, "Deep enough for glue to hold a short rod."},
    {"binding.width", 1.2, 2,
     "The core is narrower by it on each side; the tang is nipped back, the crown rides over."},
    {"pins.diameter", 1.5, 3, "Two of them, far apart, keep the board from sliding on the glue."},
    {"finish.sanding", 0.05, 0.3,
     "What the cutter's marks need to come off; every depth counts from the finished surface."},
    {"scallop.depth", 0.5, 1.5, "The finger touches the string alone; a hard press bends it sharp."},
    {"edges.roll", 0.5, 2, "An edge that is played in; it takes width from the outer string's room."},
    {"height.relief", 0.1, 0.3, "A string swings widest in its middle: the frets lie lower there."},
    {"height.action_fret", 12, 12, "The trade measures it there."},
    {"neck.angle", 0, 4, "A high bridge needs the neck set back."},
    {"cutters.runout", 0, 0.03, "Wide slots come from it first: a 0.58 mm cutter with 0.03 mm of it cuts 0.61."},
    {"sheets.thickness", 1, 2.5, "Shell under 1 mm shows what lies below it; an arched board takes more at the edges."},
};

}  // namespace

const Practice* practice_of(std::string_view key) {
  const Practice* found =
      std::find_if(std::begin(rows), std::end(rows), [&](const Practice& row) { return row.key == key; });
  return found == std::end(rows) ? nullptr : found;
}

const Practice* begin_practice() { return std::begin(rows); }
const Practice* end_practice() { return std::end(rows); }

}  // namespace sagitta
