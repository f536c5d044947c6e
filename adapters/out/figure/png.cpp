#include "adapters/out/figure/png.hpp"

#include <fmt/format.h>

#include <cmath>

#include "adapters/out/figure/draw_drawing.hpp"

namespace floatwright {
namespace {

constexpr double kMostPixels = 8192.0;  // either way

cairo_status_t append(void* to, const unsigned char* bytes, unsigned int count) {
  static_cast<std::string*>(to)->append(reinterpret_cast<const char*>(bytes), count);
  return CAIRO_STATUS_SUCCESS;
}

bool can_be_drawn(double pixels) { return pixels >= 1.0 && pixels <= kMostPixels; }

void draw(cairo_surface_t* surface, const Drawing& drawing, double pixels_per_point) {
  const Pen pen(cairo_create(surface));
  cairo_set_source_rgb(pen.get(), 1.0, 1.0, 1.0);
  cairo_paint(pen.get());
  cairo_scale(pen.get(), pixels_per_point, pixels_per_point);
  Ink ink(pen.get());
  draw_drawing(ink, drawing, 0.0, 0.0);
}

}  // namespace

Result<std::string> as_png(const Drawing& drawing, double pixels_per_point) {
  const double width = std::ceil(drawing.width * pixels_per_point), height = std::ceil(drawing.height * pixels_per_point);
  if (!can_be_drawn(width) || !can_be_drawn(height))
    return tl::unexpected(Failure{fmt::format("PNG: a picture of {} by {} pixels cannot be drawn; 1 to {} can", width,
                                              height, kMostPixels),
                                  kExitUsage});
  if (!font_is_there(kFamily)) return tl::unexpected(font_missing("PNG"));
  const Surface surface(
      cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(width), static_cast<int>(height)));
  draw(surface.get(), drawing, pixels_per_point);
  std::string bytes;
  cairo_status_t status = cairo_surface_status(surface.get());
  if (status == CAIRO_STATUS_SUCCESS) status = cairo_surface_write_to_png_stream(surface.get(), append, &bytes);
  if (status != CAIRO_STATUS_SUCCESS)
    return tl::unexpected(Failure{fmt::format("PNG: {}", cairo_status_to_string(status)), kExitWriteFailed});
  return bytes;
}

}  // namespace floatwright
