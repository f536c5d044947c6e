#pragma once
// Owners for what cairo and pango hand out: given back when they go out of scope.
#include <cairo.h>
#include <pango/pangocairo.h>

#include <memory>

namespace floatwright {

template <auto give_back>
struct GiveBack {
  template <class T>
  void operator()(T* thing) const {
    give_back(thing);
  }
};

using Surface = std::unique_ptr<cairo_surface_t, GiveBack<cairo_surface_destroy>>;
using Pen = std::unique_ptr<cairo_t, GiveBack<cairo_destroy>>;
using FontMap = std::unique_ptr<PangoFontMap, GiveBack<g_object_unref>>;
using TextContext = std::unique_ptr<PangoContext, GiveBack<g_object_unref>>;
using Layout = std::unique_ptr<PangoLayout, GiveBack<g_object_unref>>;
using FontDescription = std::unique_ptr<PangoFontDescription, GiveBack<pango_font_description_free>>;
using FontOptions = std::unique_ptr<cairo_font_options_t, GiveBack<cairo_font_options_destroy>>;

}  // namespace floatwright
