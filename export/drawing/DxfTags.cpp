#include "drawing/DxfTags.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

#include "text/DrawingNumber.hpp"
#include "text/DxfString.hpp"

namespace sagitta {
namespace {

/// Stands in the header until the last handle is known. No text can hold it: control characters are turned into spaces.
constexpr const char* seed_mark = "\x01";

void table(DxfTags& tags, const DxfFrame& frame, const char* name, const char* handle, int count) {
  tags.text(0, "TABLE").text(2, name);
  if (frame.r2000) tags.text(5, handle).text(330, "0").text(100, "AcDbSymbolTable");
  tags.whole(70, count);
}

void end_table(DxfTags& tags) { tags.text(0, "ENDTAB"); }

/// One record of a table. `handle` empty: the next free one.
void record(DxfTags& tags, const DxfFrame& frame, const char* kind, const char* owner, const char* subclass,
            const std::string& name, const char* handle = "") {
  tags.text(0, kind);
  if (frame.r2000) {
    if (*handle)
      tags.text(5, handle);
    else
      tags.handle();
    tags.text(330, owner).text(100, "AcDbSymbolTableRecord").text(100, subclass);
  }
  tags.text(2, name).whole(70, 0);
}

void header(DxfTags& tags, const DxfFrame& frame) {
  tags.text(0, "SECTION").text(2, "HEADER");
  tags.text(9, "$ACADVER").text(1, frame.r2000 ? "AC1015" : "AC1009");
  if (frame.r2000) {
    tags.text(9, "$DWGCODEPAGE").text(3, "ANSI_1252");
    tags.text(9, "$HANDSEED").text(5, seed_mark);
    tags.text(9, "$INSUNITS").whole(70, 4);
    tags.text(9, "$MEASUREMENT").whole(70, 1);
  }
  tags.text(9, "$INSBASE").point(10, {});
  tags.text(9, "$EXTMIN").point(10, frame.extents.low);
  tags.text(9, "$EXTMAX").point(10, frame.extents.high);
  tags.text(9, "$LUNITS").whole(70, 2);
  tags.text(0, "ENDSEC");
  if (frame.r2000) tags.text(0, "SECTION").text(2, "CLASSES").text(0, "ENDSEC");
}

void view_table(DxfTags& tags, const DxfFrame& frame) {
  const Point size = frame.extents.high - frame.extents.low;
  table(tags, frame, "VPORT", "8", 1);
  record(tags, frame, "VPORT", "8", "AcDbViewportTableRecord", "*Active");
  tags.flat_point(10, {0, 0})
      .flat_point(11, {1, 1})
      .flat_point(12, between(frame.extents.low, frame.extents.high, 0.5));
  tags.flat_point(13, {0, 0}).flat_point(14, {10, 10}).flat_point(15, {10, 10});
  tags.text(16, "0").text(26, "0").text(36, "1").text(17, "0").text(27, "0").text(37, "0");
  tags.number(40, std::max(size.y, size.x / 2)).number(41, 2).number(42, 50).text(43, "0").text(44, "0");
  tags.text(50, "0").text(51, "0").whole(71, 0).whole(72, 100).whole(73, 1).whole(74, 3);
  tags.whole(75, 0).whole(76, 0).whole(77, 0).whole(78, 0);
  end_table(tags);
}

void line_types(DxfTags& tags, const DxfFrame& frame) {
  const auto type = [&](const char* name, const char* handle, const char* what) {
    record(tags, frame, "LTYPE", "5", "AcDbLinetypeTableRecord", name, handle);
    tags.text(3, what).whole(72, 65).whole(73, 0).number(40, 0);
  };
  table(tags, frame, "LTYPE", "5", frame.r2000 ? 3 : 1);
  if (frame.r2000) {
    type("ByBlock", "14", "");
    type("ByLayer", "15", "");
  }
  type(frame.r2000 ? "Continuous" : "CONTINUOUS", "16", "Solid line");
  end_table(tags);
}

void layer_table(DxfTags& tags, const DxfFrame& frame) {
  const char* plain = frame.r2000 ? "Continuous" : "CONTINUOUS";
  table(tags, frame, "LAYER", "2", static_cast<int>(frame.layers.size()) + 1);
  const auto layer = [&](const std::string& name, int colour, const char* handle) {
    record(tags, frame, "LAYER", "2", "AcDbLayerTableRecord", name, handle);
    tags.whole(62, colour).text(6, plain);
    if (frame.r2000) tags.whole(370, -3).text(390, "F");
  };
  layer("0", 7, "10");
  for (const DxfLayer& each : frame.layers) layer(each.name, each.colour, "");
  end_table(tags);
}

void style_table(DxfTags& tags, const DxfFrame& frame) {
  table(tags, frame, "STYLE", "3", 1);
  record(tags, frame, "STYLE", "3", "AcDbTextStyleTableRecord", frame.r2000 ? "Standard" : "STANDARD", "11");
  tags.text(40, "0").text(41, "1").text(50, "0").whole(71, 0).text(42, "2.5").text(3, "txt").text(4, "");
  end_table(tags);
}

void other_tables(DxfTags& tags, const DxfFrame& frame) {
  table(tags, frame, "VIEW", "6", 0), end_table(tags);
  table(tags, frame, "UCS", "7", 0), end_table(tags);
  table(tags, frame, "APPID", "9", 1);
  record(tags, frame, "APPID", "9", "AcDbRegAppTableRecord", "ACAD", "12");
  end_table(tags);
  if (!frame.r2000) return;
  table(tags, frame, "DIMSTYLE", "A", 1);
  tags.text(100, "AcDbDimStyleTable");
  tags.text(0, "DIMSTYLE").text(105, "27").text(330, "A").text(100, "AcDbSymbolTableRecord");
  tags.text(100, "AcDbDimStyleTableRecord").text(2, "Standard").whole(70, 0);
  end_table(tags);
  table(tags, frame, "BLOCK_RECORD", "1", 2);
  for (const auto& [name, handle, layout] :
       {std::array{"*Model_Space", model_space, "22"}, std::array{"*Paper_Space", "1B", "1E"}}) {
    tags.text(0, "BLOCK_RECORD").text(5, handle).text(330, "1").text(100, "AcDbSymbolTableRecord");
    tags.text(100, "AcDbBlockTableRecord").text(2, name).text(340, layout);
  }
  end_table(tags);
}

void blocks(DxfTags& tags) {
  tags.text(0, "SECTION").text(2, "BLOCKS");
  for (const auto& [name, record, begin, end, paper] :
       {std::array{"*Model_Space", model_space, "20", "21", ""}, std::array{"*Paper_Space", "1B", "1C", "1D", "1"}}) {
    tags.text(0, "BLOCK").text(5, begin).text(330, record).text(100, "AcDbEntity");
    if (*paper) tags.whole(67, 1);
    tags.text(8, "0").text(100, "AcDbBlockBegin").text(2, name).whole(70, 0).point(10, {}).text(3, name).text(1, "");
    tags.text(0, "ENDBLK").text(5, end).text(330, record).text(100, "AcDbEntity");
    if (*paper) tags.whole(67, 1);
    tags.text(8, "0").text(100, "AcDbBlockEnd");
  }
  tags.text(0, "ENDSEC");
}

void page_layout(DxfTags& tags, const DxfFrame& frame, const char* handle, const char* name, const char* record,
                 int order) {
  tags.text(0, "LAYOUT")
      .text(5, handle)
      .text(330, "1A")
      .text(100, "AcDbPlotSettings")
      .text(1, "")
      .text(2, "none_device");
  tags.text(4, "").text(6, "").text(40, "0").text(41, "0").text(42, "0").text(43, "0").text(44, "0").text(45, "0");
  tags.text(46, "0").text(47, "0").text(48, "0").text(49, "0").text(140, "0").text(141, "0").text(142, "1");
  tags.text(143, "1").whole(70, order == 0 ? 1024 : 0).whole(72, 1).whole(73, 0).whole(74, 5).text(7, "").whole(75, 16);
  tags.text(147, "1").text(148, "0").text(149, "0").text(100, "AcDbLayout").text(1, name).whole(70, 1).whole(71, order);
  tags.flat_point(10, {0, 0}).flat_point(11, {420, 297}).point(12, {}).point(14, frame.extents.low);
  tags.point(15, frame.extents.high).text(146, "0").point(13, {}).point(16, {1, 0});
  tags.text(17, "0").text(27, "1").text(37, "0").whole(76, 0).text(330, record);
}

void objects(DxfTags& tags, const DxfFrame& frame) {
  const auto dictionary = [&](const char* handle, const char* owner) {
    tags.text(0, "DICTIONARY").text(5, handle).text(330, owner).text(100, "AcDbDictionary").whole(281, 1);
  };
  tags.text(0, "SECTION").text(2, "OBJECTS");
  dictionary("C", "0");
  tags.text(3, "ACAD_GROUP").text(350, "D").text(3, "ACAD_LAYOUT").text(350, "1A");
  tags.text(3, "ACAD_PLOTSTYLENAME").text(350, "E");
  dictionary("D", "C");
  dictionary("1A", "C");
  tags.text(3, "Model").text(350, "22").text(3, "Layout1").text(350, "1E");
  page_layout(tags, frame, "22", "Model", model_space, 0);
  page_layout(tags, frame, "1E", "Layout1", "1B", 1);
  tags.text(0, "ACDBDICTIONARYWDFLT").text(5, "E").text(330, "C").text(100, "AcDbDictionary").whole(281, 1);
  tags.text(3, "Normal").text(350, "F").text(100, "AcDbDictionaryWithDefault").text(340, "F");
  tags.text(0, "ACDBPLACEHOLDER").text(5, "F").text(330, "E");
  tags.text(0, "ENDSEC");
}

}  // namespace

DxfTags& DxfTags::text(int code, const std::string& value) {
  char head[16];
  text_.append(head, std::snprintf(head, sizeof head, "%3d\n", code));
  text_ += value == seed_mark ? value : dxf_string(value);
  text_ += '\n';
  return *this;
}

DxfTags& DxfTags::number(int code, double value) { return text(code, drawn_number(value)); }

DxfTags& DxfTags::whole(int code, int value) { return text(code, std::to_string(value)); }

DxfTags& DxfTags::point(int code, Point p) { return flat_point(code, p).text(code + 20, "0"); }

DxfTags& DxfTags::flat_point(int code, Point p) { return number(code, p.x).number(code + 10, p.y); }

DxfTags& DxfTags::handle() {
  char handle[16];
  std::snprintf(handle, sizeof handle, "%X", next_++);
  return text(5, handle);
}

std::string DxfTags::finished() const {
  std::string whole = text_;
  char seed[16];
  std::snprintf(seed, sizeof seed, "%X", next_);
  if (const std::size_t at = whole.find(seed_mark); at != std::string::npos) whole.replace(at, 1, seed);
  return whole;
}

void open_dxf(DxfTags& tags, const DxfFrame& frame) {
  header(tags, frame);
  tags.text(0, "SECTION").text(2, "TABLES");
  if (frame.r2000) view_table(tags, frame);
  line_types(tags, frame);
  layer_table(tags, frame);
  style_table(tags, frame);
  other_tables(tags, frame);
  tags.text(0, "ENDSEC");
  if (frame.r2000) blocks(tags);
  tags.text(0, "SECTION").text(2, "ENTITIES");
}

void close_dxf(DxfTags& tags, const DxfFrame& frame) {
  tags.text(0, "ENDSEC");
  if (frame.r2000) objects(tags, frame);
  tags.text(0, "EOF");
}

}  // namespace sagitta
