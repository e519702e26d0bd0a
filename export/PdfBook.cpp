#include "export/PdfBook.hpp"

#include <cairo-ft.h>
#include <cairo-pdf.h>

#include <algorithm>
#include <cctype>
#include <cstring>
#include <map>
#include <stdexcept>

namespace sagitta {
namespace {

constexpr double points_per_mm = 72 / 25.4;
constexpr double body_size = 2.9, head_size = 4.8;
/// A document's date is part of its bytes. This one says nothing.
constexpr const char* no_date = "2000-01-01T00:00:00Z";
constexpr const char* regular_file = "/usr/share/fonts/opentype/inter/Inter-Regular.otf";
constexpr const char* strong_file = "/usr/share/fonts/opentype/inter/Inter-SemiBold.otf";

constexpr Paper papers[] = {
    {"A4", 297, 210}, {"A3", 420, 297}, {"Letter", 279.4, 215.9}, {"Tabloid", 431.8, 279.4}};

struct PenLook {
  double width, grey;
  bool dashed;
};

PenLook look(Pen pen) {
  switch (pen) {
    case Pen::outline: return {0.35, 0, false};
    case Pen::line: return {0.18, 0, false};
    case Pen::thin: return {0.1, 0, false};
    case Pen::dash: return {0.1, 0.35, true};
    case Pen::faint: return {0.1, 0.6, false};
  }
  return {0.1, 0, false};
}

cairo_status_t collect(void* into, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(into)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

/// What is left of the bytes of a PNG.
struct Unread {
  const std::string& bytes;
  std::size_t at = 0;
};

cairo_status_t hand_out(void* from, unsigned char* to, unsigned int count) {
  Unread& unread = *static_cast<Unread*>(from);
  if (count > unread.bytes.size() - unread.at) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(to, unread.bytes.data() + unread.at, count);
  unread.at += count;
  return CAIRO_STATUS_SUCCESS;
}

/// A face straight from its file, so that no other weight or family can take its place; where the file is missing,
/// whatever the system calls sans.
class Face {
 public:
  Face(FT_Library library, const char* file, cairo_font_weight_t weight) {
    if (library && FT_New_Face(library, file, 0, &face_) == 0)
      face_of_cairo_ = cairo_ft_font_face_create_for_ft_face(face_, FT_LOAD_NO_HINTING);
    else
      face_of_cairo_ = cairo_toy_font_face_create("sans", CAIRO_FONT_SLANT_NORMAL, weight);
  }
  ~Face() { cairo_font_face_destroy(face_of_cairo_); }
  Face(const Face&) = delete;
  Face& operator=(const Face&) = delete;
  cairo_font_face_t* get() const { return face_of_cairo_; }

 private:
  FT_Face face_ = nullptr;  ///< the library owns it
  cairo_font_face_t* face_of_cairo_ = nullptr;
};

/// One library for the whole program: cairo keeps faces after a document is done.
FT_Library library() {
  static FT_Library kept = [] {
    FT_Library made = nullptr;
    return FT_Init_FreeType(&made) == 0 ? made : nullptr;
  }();
  return kept;
}

}  // namespace

struct PdfBook::Canvas {
  std::string bytes;
  cairo_surface_t* surface = nullptr;
  cairo_t* cairo = nullptr;
  Face regular{library(), regular_file, CAIRO_FONT_WEIGHT_NORMAL};
  Face strong{library(), strong_file, CAIRO_FONT_WEIGHT_BOLD};
  double height = 0;
  bool begun = false;
  std::map<std::string, cairo_surface_t*> images;  ///< by their bytes

  ~Canvas() {
    for (const auto& [bytes_of_image, image] : images) cairo_surface_destroy(image);
    if (cairo) cairo_destroy(cairo);
    if (surface) cairo_surface_destroy(surface);
  }
  void go(Point p) { cairo_move_to(cairo, p.x, height - p.y); }
  void draw(Point p) { cairo_line_to(cairo, p.x, height - p.y); }
  void trace(const Loop& pieces, bool closed) {
    cairo_new_path(cairo);
    if (pieces.empty()) return;
    go(pieces.front().a);
    for (const Piece& piece : pieces) {
      const auto turn = piece.sweep > 0 ? cairo_arc_negative : cairo_arc;
      if (piece.is_arc())
        turn(cairo, piece.centre.x, height - piece.centre.y, piece.radius, -piece.start, -piece.start - piece.sweep);
      else
        draw(piece.b);
    }
    if (closed) cairo_close_path(cairo);
  }
  void stroke(Pen pen) {
    const PenLook how = look(pen);
    const double dashes[] = {4, 1.2, 0.8, 1.2};
    cairo_set_source_rgb(cairo, how.grey, how.grey, how.grey);
    cairo_set_line_width(cairo, how.width);
    cairo_set_dash(cairo, dashes, how.dashed ? 4 : 0, 0);
    cairo_stroke(cairo);
  }
  void choose(Text size) {
    cairo_set_font_face(cairo, size == Text::body ? regular.get() : strong.get());
    cairo_set_font_size(cairo, size == Text::head ? head_size : body_size);
  }
  cairo_surface_t* image(const std::string& png) {
    const auto found = images.find(png);
    if (found != images.end()) return found->second;
    Unread unread{png};
    cairo_surface_t* read = cairo_image_surface_create_from_png_stream(hand_out, &unread);
    if (cairo_surface_status(read) != CAIRO_STATUS_SUCCESS) {
      cairo_surface_destroy(read);
      throw std::runtime_error("a picture is no PNG");
    }
    return images[png] = read;
  }
};

const Paper* paper_named(std::string_view name) {
  const auto same = [](char a, char b) { return std::tolower(static_cast<unsigned char>(a)) == std::tolower(b); };
  for (const Paper& paper : papers)
    if (std::equal(name.begin(), name.end(), paper.name.begin(), paper.name.end(), same)) return &paper;
  return nullptr;
}

PdfBook::PdfBook(const std::string& title) : canvas_(std::make_unique<Canvas>()) {
  Canvas& c = *canvas_;
  c.surface = cairo_pdf_surface_create_for_stream(collect, &c.bytes, 1, 1);
  cairo_pdf_surface_restrict_to_version(c.surface, CAIRO_PDF_VERSION_1_5);
  cairo_pdf_surface_set_metadata(c.surface, CAIRO_PDF_METADATA_TITLE, title.c_str());
  cairo_pdf_surface_set_metadata(c.surface, CAIRO_PDF_METADATA_CREATOR, "sagitta " SAGITTA_VERSION);
  cairo_pdf_surface_set_metadata(c.surface, CAIRO_PDF_METADATA_CREATE_DATE, no_date);
}

PdfBook::~PdfBook() = default;

void PdfBook::page(const Paper& paper) {
  Canvas& c = *canvas_;
  if (c.begun) cairo_show_page(c.cairo);
  c.begun = true;
  paper_ = paper;
  c.height = paper.height;
  cairo_pdf_surface_set_size(c.surface, paper.width * points_per_mm, paper.height * points_per_mm);
  if (!c.cairo) {
    c.cairo = cairo_create(c.surface);
    cairo_scale(c.cairo, points_per_mm, points_per_mm);
  }
}

void PdfBook::line(Point a, Point b, Pen pen) { path({sagitta::line(a, b)}, false, pen); }

void PdfBook::path(const Loop& pieces, bool closed, Pen pen) {
  canvas_->trace(pieces, closed);
  canvas_->stroke(pen);
}

void PdfBook::fill(const Loop& pieces, double grey) {
  canvas_->trace(pieces, true);
  cairo_set_source_rgb(canvas_->cairo, grey, grey, grey);
  cairo_fill(canvas_->cairo);
}

void PdfBook::text(Point at, const std::string& text, Text size, Align align, double turn) {
  Canvas& c = *canvas_;
  const double back = align == Align::left ? 0 : width_of(text, size) * (align == Align::centre ? 0.5 : 1);
  c.choose(size);
  cairo_set_source_rgb(c.cairo, 0, 0, 0);
  cairo_save(c.cairo);
  cairo_translate(c.cairo, at.x, c.height - at.y);
  cairo_rotate(c.cairo, -turn);
  cairo_move_to(c.cairo, -back, 0);
  cairo_show_text(c.cairo, text.c_str());
  cairo_restore(c.cairo);
  cairo_new_path(c.cairo);
}

double PdfBook::width_of(const std::string& text, Text size) {
  canvas_->choose(size);
  cairo_text_extents_t extents;
  cairo_text_extents(canvas_->cairo, text.c_str(), &extents);
  return extents.x_advance;
}

void PdfBook::image(const std::string& png, const Box& box) {
  Canvas& c = *canvas_;
  cairo_surface_t* image = c.image(png);
  cairo_save(c.cairo);
  cairo_translate(c.cairo, box.low.x, c.height - box.high.y);
  cairo_scale(c.cairo, (box.high.x - box.low.x) / cairo_image_surface_get_width(image),
              (box.high.y - box.low.y) / cairo_image_surface_get_height(image));
  cairo_set_source_surface(c.cairo, image, 0, 0);
  cairo_paint(c.cairo);
  cairo_restore(c.cairo);
}

double PdfBook::shape_of(const std::string& png) {
  cairo_surface_t* image = canvas_->image(png);
  return static_cast<double>(cairo_image_surface_get_width(image)) / cairo_image_surface_get_height(image);
}

void PdfBook::clip(const Box& box) {
  cairo_save(canvas_->cairo);
  canvas_->trace(rectangle(box.low, box.high), true);
  cairo_clip(canvas_->cairo);
}

void PdfBook::unclip() { cairo_restore(canvas_->cairo); }

std::string PdfBook::finished() {
  Canvas& c = *canvas_;
  if (c.begun) cairo_show_page(c.cairo);
  cairo_surface_finish(c.surface);
  if (cairo_surface_status(c.surface) != CAIRO_STATUS_SUCCESS || (c.cairo && cairo_status(c.cairo) != CAIRO_STATUS_SUCCESS))
    throw std::runtime_error("the PDF library failed: " + std::string(cairo_status_to_string(cairo_surface_status(c.surface))));
  return c.bytes;
}

}  // namespace sagitta
