#include "solid/NeckFile.hpp"

#include <BRepAlgoAPI_Common.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakeWire.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <Bnd_Box.hxx>
#include <GC_MakeArcOfCircle.hxx>
#include <GProp_GProps.hxx>
#include <IntCurvesFace_ShapeIntersector.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <STEPControl_Reader.hxx>
#include <Standard_Failure.hxx>
#include <TColStd_SequenceOfAsciiString.hxx>
#include <TopExp_Explorer.hxx>
#include <algorithm>
#include <cmath>
#include <optional>

#include "board/Length.hpp"
#include "solid/NeckFaces.hpp"
#include "solid/PlacedNeck.hpp"
#include "solid/StepEdges.hpp"

namespace sagitta {
namespace {

/// Faces that touch are no interference: the board's prism begins this much above the glue face. mm.
constexpr double clear_of_glue = 0.01;
/// Places where the rod channel's floor is looked for.
constexpr int floor_looks = 24;
/// A neck that is scaled by another unit fits as well as this, on the average over both edges. mm.
constexpr double fits_other_unit = 0.5;
/// A corner further than this off an edge that ends there was changed alone: the kernel takes up less as a tolerance,
/// which is looked at too. mm.
constexpr double corner_off_line = 0.5;
/// A hit of a line through the neck this close to the glue face is the glue face. mm.
constexpr double at_face = 0.05;

TopoDS_Shape prism(const Loop& outline, double from, double to) {
  const auto lifted = [&](Point p) { return gp_Pnt(p.x, p.y, from); };
  BRepBuilderAPI_MakeWire wire;
  for (const CurveSegment& segment : outline) {
    if (segment.is_arc())
      wire.Add(BRepBuilderAPI_MakeEdge(
          GC_MakeArcOfCircle(lifted(segment.a), lifted(segment.at(0.5)), lifted(segment.b)).Value()));
    else
      wire.Add(BRepBuilderAPI_MakeEdge(lifted(segment.a), lifted(segment.b)));
  }
  return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(wire.Wire(), true).Face(), gp_Vec(0, 0, to - from));
}

double common_volume(const TopoDS_Shape& neck, const TopoDS_Shape& board) {
  Bnd_Box space;
  BRepBndLib::Add(board, space);
  double volume = 0;
  for (TopExp_Explorer it(neck, TopAbs_SOLID); it.More(); it.Next()) {
    Bnd_Box box;
    BRepBndLib::AddOptimal(it.Current(), box, false, false);
    if (box.IsOut(space)) continue;
    BRepAlgoAPI_Common common(it.Current(), board);
    if (!common.IsDone()) continue;
    GProp_GProps figures;
    BRepGProp::VolumeProperties(common.Shape(), figures);
    volume += std::max(0.0, figures.Mass());
  }
  return volume;
}

std::string unit_of(STEPControl_Reader& reader) {
  TColStd_SequenceOfAsciiString lengths, angles, solid_angles;
  reader.FileUnits(lengths, angles, solid_angles);
  return lengths.IsEmpty() ? "" : lengths.First().ToCString();
}

/// What the file's unit of length is, in mm, where its name is one of the usual.
double mm_of(const std::string& unit) {
  for (const auto& [name, mm] :
       {std::pair{"INCH", 25.4}, {"FOOT", 304.8}, {"MILLI", 1.0}, {"CENTI", 10.0}, {"DECI", 100.0}})
    if (unit.find(name) != std::string::npos) return mm;
  return unit.find("METRE") != std::string::npos ? 1000 : 1;
}

int count(const TopoDS_Shape& shape, TopAbs_ShapeEnum what) {
  int found = 0;
  for (TopExp_Explorer it(shape, what); it.More(); it.Next()) ++found;
  return found;
}

NeckReading failed(const std::string& why) { return {{}, why}; }

/// Depths under the glue face at which an upright line through the neck crosses its faces, by rising depth.
std::vector<double> crossings(IntCurvesFace_ShapeIntersector& neck, double x, double y) {
  neck.Perform(gp_Lin(gp_Pnt(x, y, 0), gp_Dir(0, 0, -1)), -at_face, 1000);
  std::vector<double> depths;
  for (int i = 1; neck.IsDone() && i <= neck.NbPnt(); ++i) depths.push_back(neck.WParameter(i));
  std::sort(depths.begin(), depths.end());
  return depths;
}

void measure_depths(NeckShape& neck, const TopoDS_Shape& wood, const BoardSeat& seat) {
  IntCurvesFace_ShapeIntersector lines;
  lines.Load(wood, clear_of_glue / 10);
  for (const double x : seat.depth_at) {
    const std::vector<double> depths = crossings(lines, x, 0);
    neck.depths.push_back(depths.empty() ? 0 : std::max(0.0, depths.back()));
  }
  const auto channel = channel_in(neck);
  if (!channel) return;
  for (int i = 0; i < floor_looks; ++i) {
    const double x = channel->from + (channel->to - channel->from) * (i + 0.5) / floor_looks;
    for (const double depth : crossings(lines, x, 0))
      if (depth > at_face) {
        neck.floors.push_back({x, depth});
        break;
      }
  }
}

/// How far the glue face rises above its plane within the board.
double highest(const NeckShape& neck, const BoardSeat& seat) {
  double most = 0;
  for (const auto& outline : neck.outlines)
    for (const Place3& p : outline)
      if (p[0] >= seat.nut_end && p[0] <= seat.heel_end) most = std::max(most, p[2]);
  return neck.planar ? 0 : most;
}

/// Where the wood on either side of the neck begins, by lines along the neck just outside the board at some depths;
/// nothing where the neck has no body.
std::optional<double> body_start(const TopoDS_Shape& wood, const BoardSeat& seat) {
  constexpr double beside = 3, past_end = 150;  // mm
  constexpr double depths[] = {0.5, 2, 5, 10, 15, 25};
  const double from = seat.heel_end / 3, reach = seat.heel_end + past_end - from;
  IntCurvesFace_ShapeIntersector lines;
  lines.Load(wood, clear_of_glue / 10);
  std::optional<double> first;
  for (const int side : {0, 1})
    for (const double depth : depths) {
      const double y =
          (side == 0 ? -1 : 1) * (std::max(seat.edge(side, from), seat.edge(side, seat.heel_end)) + beside);
      lines.Perform(gp_Lin(gp_Pnt(from, y, -depth), gp::DX()), 0, reach);
      for (int i = 1; lines.IsDone() && i <= lines.NbPnt(); ++i)
        first = std::min(first.value_or(1e300), from + lines.WParameter(i));
    }
  return first;
}

/// How many times larger the neck would have to be to fit the board, where its file gives lengths in another unit than
/// it was drawn in; 1: none of the usual units makes it fit.
double times_larger(const TopoDS_Shape& shape, const BoardSeat& seat) {
  for (const double times : {25.4, 1 / 25.4, 10.0, 0.1, 1000.0, 0.001}) {
    std::vector<FaceCandidate> candidates;
    for (const NeckFaceGroup& group : neck_faces(shape, seat.compare_to / 2 / times)) {
      candidates.push_back(group.candidate);
      FaceCandidate& face = candidates.back();
      for (auto& outline : face.outlines)
        for (Place3& p : outline)
          for (double& each : p) each *= times;
      for (double& each : face.middle) each *= times;
      face.area *= times * times, face.depth *= times;
    }
    BoardSeat free = seat;
    free.file_nut.reset(), free.file_heel.reset();
    const auto found = find_place(candidates, free);
    if (found && found->place.fit < fits_other_unit && found->place.compared >= least_compared) return times;
  }
  return 1;
}

NeckReading neck_of(STEPControl_Reader& reader, const BoardSeat& seat) {
  const TopoDS_Shape read = reader.OneShape();
  if (read.IsNull() || count(read, TopAbs_FACE) == 0) return failed("the neck's file holds no faces");
  const TopoDS_Shape shape = solids_of(read);
  if (count(shape, TopAbs_SOLID) == 0)
    return failed("the neck's file holds surfaces but no solid: which side of them is wood cannot be told");
  const std::vector<NeckFaceGroup> groups = neck_faces(shape, seat.compare_to / 2);
  std::vector<FaceCandidate> candidates;
  for (const NeckFaceGroup& group : groups) candidates.push_back(group.candidate);
  const auto found = find_place(candidates, seat);
  NeckShape neck;
  neck.unit = unit_of(reader);
  if (neck.unit.empty()) return failed("the neck's file does not say in which unit its lengths are");
  if (!found) {
    neck.place.sure = false, neck.place.compared = 0;
    neck.times = times_larger(shape, seat);
    return {neck, ""};
  }
  const NeckFaceGroup& group = groups[found->candidate];
  if (ends_off_lines(reader) * mm_of(neck.unit) > corner_off_line)
    return failed("the neck's file is damaged: a corner lies off the line of an edge that ends there");
  if (!group.closed) return failed("the neck's file is damaged: faces or edges of its solid are missing");
  if (group.open > place_tolerance)
    return failed("the neck's file is damaged: the borders of its glue face miss each other by up to " +
                  decimal(std::round(1000 * group.open) / 1000) + " mm");
  neck.planar = group.planar;
  neck.edge_rounding = group.rounding;
  neck.place = found->place;
  if (!neck.place.sure) neck.times = times_larger(shape, seat);
  for (const auto& outline : group.candidate.outlines) {
    neck.outlines.emplace_back();
    for (const Place3& p : outline) neck.outlines.back().push_back(moved(neck.place, p));
  }
  const PlacedNeck wood = placed(shape, neck.place, seat);
  neck.boards = wood.boards;
  neck.solids = count(wood.wood, TopAbs_SOLID);
  neck.faces = count(wood.wood, TopAbs_FACE);
  measure_depths(neck, wood.wood, seat);
  neck.body_from = body_start(wood.wood, seat);
  const double floor = highest(neck, seat) + clear_of_glue;
  neck.interference = common_volume(wood.wood, prism(seat.outline, floor, seat.thickness));
  return {neck, ""};
}

}  // namespace

NeckReading read_neck(const std::string& path, const BoardSeat& seat) try {
  Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer));
  STEPControl_Reader reader;
  if (reader.ReadFile(path.c_str()) != IFSelect_RetDone)
    return failed("the neck's file cannot be read as STEP: it is not one, or it is cut short");
  if (has_broken_geometry(reader)) return failed("the neck's file is damaged: some of its numbers cannot be read");
  if (reader.TransferRoots() == 0) return failed("the neck's file holds nothing that could be read");
  return neck_of(reader, seat);
} catch (const Standard_Failure&) {
  return failed("the geometry kernel gave up on the neck's file");
} catch (const std::exception&) {
  return failed("the neck's file could not be read in the memory that was allowed");
}

}  // namespace sagitta
