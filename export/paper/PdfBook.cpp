#include "paper/PdfBook.hpp"

#include <cairo-ft.h>
#include <cairo-pdf.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstring>
#include <stdexcept>

#include "font/Font.hpp"
#include "text/PdfText.hpp"

namespace sagitta {
namespace {

constexpr double points_per_mm = 72 / 25.4;
/// Pixels to the mm from which a printed picture looks sharp: 220 to the inch.
constexpr double sharp_pixels = 220 / 25.4;
constexpr double body_size = 2.9, head_size = 4.8;
/// A document's date is part of its bytes. This one says nothing.
constexpr const char* no_date = "2000-01-01T00:00:00Z";

struct PenLook {
  double width, grey;
  bool dashed;
};

PenLook look(Pen pen) {
  switch (pen) {
    case Pen::outline:
      return {0.35, 0, false};
    case Pen::line:
      return {0.18, 0, false};
    case Pen::thin:
      return {0.1, 0, false};
    case Pen::dash:
      return {0.1, 0.35, true};
    case Pen::faint:
      return {0.1, 0.6, false};
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

/// A face straight from the built-in file, so that no other weight or family can take its place.
class Typeface {
 public:
  Typeface(FT_Library library, FontFile file) {
    if (!library || FT_New_Memory_Face(library, file.data(), static_cast<FT_Long>(file.size()), 0, &face_) != 0)
      throw std::runtime_error("the built-in typeface cannot be read");
    face_of_cairo_ = cairo_ft_font_face_create_for_ft_face(face_, FT_LOAD_NO_HINTING);
  }
  ~Typeface() { cairo_font_face_destroy(face_of_cairo_); }
  Typeface(const Typeface&) = delete;
  Typeface& operator=(const Typeface&) = delete;
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

/// A surface while it is painted on, in mm.
struct PdfBook::Canvas {
  cairo_surface_t* surface;
  cairo_t* cairo;
  Typeface regular{library(), regular_font()};
  Typeface strong{library(), semi_bold_font()};
  double height = 0;  ///< of the page

  /// Takes the surface over.
  explicit Canvas(cairo_surface_t* made, double units_per_mm) : surface(made), cairo(cairo_create(made)) {
    cairo_scale(cairo, units_per_mm, units_per_mm);
  }
  Canvas(const Canvas&) = delete;
  Canvas& operator=(const Canvas&) = delete;
  ~Canvas() {
    cairo_destroy(cairo);
    cairo_surface_destroy(surface);
  }

  void paint(const Page& page) {
    height = page.paper.height;
    for (const Mark& mark : page.marks) mark(*this);
  }
  /// Throws when anything has gone wrong with the surface.
  void finish() {
    cairo_surface_finish(surface);
    for (const cairo_status_t status : {cairo_status(cairo), cairo_surface_status(surface)})
      if (status != CAIRO_STATUS_SUCCESS && status != CAIRO_STATUS_SURFACE_FINISHED)
        throw std::runtime_error("the PDF library failed: " + std::string(cairo_status_to_string(status)));
  }
  void go(Point p) { cairo_move_to(cairo, p.x, height - p.y); }
  void draw(Point p) { cairo_line_to(cairo, p.x, height - p.y); }
  void trace(const Loop& segments, bool closed) {
    cairo_new_path(cairo);
    if (segments.empty()) return;
    go(segments.front().a);
    for (const CurveSegment& segment : segments) {
      const auto turn = segment.sweep > 0 ? cairo_arc_negative : cairo_arc;
      if (segment.is_arc())
        turn(cairo, segment.centre.x, height - segment.centre.y, segment.radius, -segment.start,
             -segment.start - segment.sweep);
      else
        draw(segment.b);
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
  void write(Point at, const std::string& text, Text size, double back, double turn) {
    choose(size);
    cairo_set_source_rgb(cairo, 0, 0, 0);
    cairo_save(cairo);
    cairo_translate(cairo, at.x, height - at.y);
    cairo_rotate(cairo, -turn);
    cairo_move_to(cairo, -back, 0);
    cairo_show_text(cairo, text.c_str());
    cairo_restore(cairo);
    cairo_new_path(cairo);
  }
  void stretch(cairo_surface_t* image, const Box& box) {
    cairo_save(cairo);
    cairo_translate(cairo, box.low.x, height - box.high.y);
    cairo_scale(cairo, (box.high.x - box.low.x) / cairo_image_surface_get_width(image),
                (box.high.y - box.low.y) / cairo_image_surface_get_height(image));
    cairo_set_source_surface(cairo, image, 0, 0);
    cairo_paint(cairo);
    cairo_restore(cairo);
  }
};

/// A PNG that was read.
struct PdfBook::Image {
  cairo_surface_t* surface;

  explicit Image(const std::string& png) {
    Unread unread{png};
    surface = cairo_image_surface_create_from_png_stream(hand_out, &unread);
    if (cairo_surface_status(surface) == CAIRO_STATUS_SUCCESS) return;
    cairo_surface_destroy(surface);
    throw std::runtime_error("a picture is no PNG");
  }
  Image(const Image&) = delete;
  Image& operator=(const Image&) = delete;
  ~Image() { cairo_surface_destroy(surface); }
};

PdfBook::PdfBook(std::string title)
    : title_(pdf_text(title)),
      // Letters are as wide on every PDF surface; this one is never written.
      ruler_(std::make_unique<Canvas>(cairo_pdf_surface_create_for_stream(nullptr, nullptr, 1, 1), points_per_mm)) {}

PdfBook::~PdfBook() = default;
PdfBook::PdfBook(PdfBook&&) noexcept = default;

void PdfBook::page(const Paper& paper) { pages_.push_back({paper, {}}); }

void PdfBook::mark(Mark made) { pages_.back().marks.push_back(std::move(made)); }

void PdfBook::line(Point a, Point b, Pen pen) { path({sagitta::line(a, b)}, false, pen); }

void PdfBook::path(const Loop& segments, bool closed, Pen pen) {
  mark([=](Canvas& c) {
    c.trace(segments, closed);
    c.stroke(pen);
  });
}

void PdfBook::fill(const Loop& segments, double grey) {
  mark([=](Canvas& c) {
    c.trace(segments, true);
    cairo_set_source_rgb(c.cairo, grey, grey, grey);
    cairo_fill(c.cairo);
  });
}

void PdfBook::text(Point at, const std::string& text, Text size, Align align, double turn) {
  const double back = align == Align::left ? 0 : width_of(text, size) * (align == Align::centre ? 0.5 : 1);
  mark([=, seen = pdf_text(text)](Canvas& c) { c.write(at, seen, size, back, turn); });
}

double PdfBook::width_of(const std::string& text, Text size) {
  ruler_->choose(size);
  cairo_text_extents_t extents;
  cairo_text_extents(ruler_->cairo, pdf_text(text).c_str(), &extents);
  return extents.x_advance;
}

std::shared_ptr<PdfBook::Image> PdfBook::read(const std::string& png) {
  std::shared_ptr<Image>& image = images_[png];
  if (!image) image = std::make_shared<Image>(png);
  return image;
}

void PdfBook::image(const std::string& png, const Box& box) {
  mark([image = read(png), box](Canvas& c) { c.stretch(image->surface, box); });
}

double PdfBook::shape_of(const std::string& png) {
  cairo_surface_t* image = read(png)->surface;
  return static_cast<double>(cairo_image_surface_get_width(image)) / cairo_image_surface_get_height(image);
}

double PdfBook::sharp_width(const std::string& png) {
  return cairo_image_surface_get_width(read(png)->surface) / sharp_pixels;
}

void PdfBook::clip(const Box& box) {
  mark([=](Canvas& c) {
    cairo_save(c.cairo);
    c.trace(rectangle(box.low, box.high), true);
    cairo_clip(c.cairo);
  });
}

void PdfBook::unclip() {
  mark([](Canvas& c) { cairo_restore(c.cairo); });
}

std::string PdfBook::bytes() const {
  std::string bytes;
  Canvas canvas(cairo_pdf_surface_create_for_stream(collect, &bytes, 1, 1), points_per_mm);
  cairo_pdf_surface_restrict_to_version(canvas.surface, CAIRO_PDF_VERSION_1_5);
  cairo_pdf_surface_set_metadata(canvas.surface, CAIRO_PDF_METADATA_TITLE, title_.c_str());
  cairo_pdf_surface_set_metadata(canvas.surface, CAIRO_PDF_METADATA_CREATOR, "sagitta " SAGITTA_VERSION);
  cairo_pdf_surface_set_metadata(canvas.surface, CAIRO_PDF_METADATA_CREATE_DATE, no_date);
  for (const Page& page : pages_) {
    const Point size = points_per_mm * Point{page.paper.width, page.paper.height};
    cairo_pdf_surface_set_size(canvas.surface, size.x, size.y);
    canvas.paint(page);
    cairo_show_page(canvas.cairo);
  }
  canvas.finish();
  return bytes;
}

Picture PdfBook::picture(std::size_t number, double pixels_per_mm) const {
  const Page& page = pages_.at(number);
  Picture picture;
  picture.width = std::max(1, static_cast<int>(std::lround(page.paper.width * pixels_per_mm)));
  picture.height = std::max(1, static_cast<int>(std::lround(page.paper.height * pixels_per_mm)));
  Canvas canvas(cairo_image_surface_create(CAIRO_FORMAT_RGB24, picture.width, picture.height), pixels_per_mm);
  cairo_set_source_rgb(canvas.cairo, 1, 1, 1);
  cairo_paint(canvas.cairo);
  canvas.paint(page);
  cairo_surface_flush(canvas.surface);
  const unsigned char* row = cairo_image_surface_get_data(canvas.surface);
  for (int y = 0; y < picture.height; ++y, row += cairo_image_surface_get_stride(canvas.surface))
    for (int x = 0; x < picture.width; ++x) {
      std::uint32_t pixel;  // 0x00rrggbb in the machine's order
      std::memcpy(&pixel, row + 4 * x, 4);
      for (const int shift : {16, 8, 0}) picture.pixels.push_back(static_cast<std::uint8_t>(pixel >> shift));
    }
  canvas.finish();
  return picture;
}

}  // namespace sagitta
