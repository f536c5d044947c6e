#include "adapters/out/figure/ink.hpp"

#include <fmt/format.h>

#include <string_view>

namespace floatwright {
namespace {

// Without hinting, which depends on the machine's settings: the same page comes out everywhere.
void measure_as_designed(PangoContext* context) {
  const FontOptions options(cairo_font_options_create());
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context, options.get());
  pango_context_set_round_glyph_positions(context, FALSE);
}

// The family's own arrow in place of the one that keys can type.
std::string typeset(const std::string& text) {
  constexpr std::string_view kTyped = " -> ", kArrow = " \u2192 ";
  std::string out = text;
  for (std::size_t at = out.find(kTyped); at != std::string::npos; at = out.find(kTyped, at + 1))
    out.replace(at, kTyped.size(), kArrow);
  return out;
}

}  // namespace

Ink::Ink(cairo_t* pen) : pen_(pen), context_(pango_cairo_create_context(pen)), layout_(nullptr) {
  measure_as_designed(context_.get());
  pango_context_set_language(context_.get(), pango_language_from_string("en"));
  layout_.reset(pango_layout_new(context_.get()));
  pango_layout_set_wrap(layout_.get(), PANGO_WRAP_WORD_CHAR);
  cairo_set_source_rgb(pen_, 0.0, 0.0, 0.0);
}

void Ink::lay(const std::string& text, double width, const Style& style) const {
  const FontDescription font(pango_font_description_new());
  pango_font_description_set_family(font.get(), kFamily);
  pango_font_description_set_absolute_size(font.get(), style.size * PANGO_SCALE);
  pango_font_description_set_weight(font.get(), style.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description(layout_.get(), font.get());
  pango_layout_set_width(layout_.get(), width < 0.0 ? -1 : static_cast<int>(width * PANGO_SCALE));
  pango_layout_set_ellipsize(layout_.get(), style.most_lines > 0 ? PANGO_ELLIPSIZE_END : PANGO_ELLIPSIZE_NONE);
  pango_layout_set_height(layout_.get(), style.most_lines > 0 ? -style.most_lines : -1);
  const std::string shown = typeset(text);
  pango_layout_set_text(layout_.get(), shown.data(), static_cast<int>(shown.size()));
}

TextSize Ink::size(const std::string& text, double width, const Style& style) const {
  lay(text, width, style);
  int w = 0, h = 0;
  pango_layout_get_size(layout_.get(), &w, &h);
  return {static_cast<double>(w) / PANGO_SCALE, static_cast<double>(h) / PANGO_SCALE};
}

TextSize Ink::size(const std::string& text, const Style& style) const {
  return size(text, -1.0, {style.size, style.bold, 0});
}

double Ink::line_height(const Style& style) const { return size("0", style).height; }

void Ink::text(double x, double y, double width, const std::string& text, const Style& style) {
  lay(text, width, style);
  cairo_move_to(pen_, x, y);
  pango_cairo_update_layout(pen_, layout_.get());
  pango_cairo_show_layout(pen_, layout_.get());
  cairo_new_path(pen_);  // pango leaves its last point behind
}

void Ink::rule(double x0, double y0, double x1, double y1, double thickness) {
  cairo_set_line_width(pen_, thickness);
  cairo_move_to(pen_, x0, y0);
  cairo_line_to(pen_, x1, y1);
  cairo_stroke(pen_);
}

void Ink::box(double x, double y, double width, double height, double thickness) {
  cairo_set_line_width(pen_, thickness);
  cairo_rectangle(pen_, x, y, width, height);
  cairo_stroke(pen_);
}

bool font_is_there(const char* family) {
  const FontMap map(pango_cairo_font_map_new());
  PangoFontFamily** families = nullptr;
  int count = 0;
  pango_font_map_list_families(map.get(), &families, &count);
  bool found = false;
  for (int i = 0; i < count; ++i) found = found || std::string_view(pango_font_family_get_name(families[i])) == family;
  g_free(families);
  return found;
}

Failure font_missing(const char* what) {
  return {fmt::format("{}: the font {} is not on this machine; install the package fonts-dejavu-core", what, kFamily),
          kExitNoInput};
}

}  // namespace floatwright
