// Pictures read back with Python's own struct, zlib and expat, which had no part in making them: PNG by its chunks (W3C
// PNG, second edition, 5.3 and 11.2.2), SVG as XML.
#include "adapters/out/figure/png.hpp"

#include <gmock/gmock.h>

#include "adapters/out/figure/day_drawings.hpp"
#include "adapters/out/figure/svg.hpp"
#include "tests/support/read_back.hpp"
#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;

// Width, height, the sum of every chunk, and how light and dark the picture is.
constexpr const char* kReadPng = R"(import struct, sys, zlib
data = open(sys.argv[1], 'rb').read()
assert data[:8] == b'\x89PNG\r\n\x1a\n', 'no PNG'
at, body = 8, b''
while at < len(data):
    size, kind = struct.unpack('>I4s', data[at:at + 8])
    part = data[at + 8:at + 8 + size]
    assert zlib.crc32(kind + part) == struct.unpack('>I', data[at + 8 + size:at + 12 + size])[0], 'sum of a chunk'
    if kind == b'IHDR': width, height, depth, colour = struct.unpack('>IIBB', part[:10])
    if kind == b'IDAT': body += part
    at += 12 + size
assert kind == b'IEND', 'ends in ' + repr(kind)
rows = zlib.decompress(body)
print(width, 'x', height, 'bits', depth, 'kind', colour, 'bytes', len(rows) == height * (1 + 3 * width))
)";

Drawing of_words() { return {200, 100, {Words{{10, 50}, "1,850 cfs", 13.0, TextAnchor::Start, false}}}; }

TEST(Png, IsAsManyPixelsAsAskedAndWhole) {
  const auto png = as_png(of_words(), 2.0);
  ASSERT_TRUE(png) << png.error().what;
  EXPECT_EQ(read_back(kReadPng, *png), "400 x 200 bits 8 kind 2 bytes True\n");  // kind 2: red, green, blue, not see-through
}

TEST(Png, IsTheSameBytesTwice) { EXPECT_EQ(*as_png(of_words(), 2.0), *as_png(of_words(), 2.0)); }

TEST(Png, OfADrawingIsNotThatOfAnEmptyOne) { EXPECT_GT(as_png(of_words(), 1.0)->size(), as_png({200, 100, {}}, 1.0)->size()); }

TEST(Png, OfNoSizeIsRefused) {
  for (const double pixels : {0.0, -1.0, 1e9, std::numeric_limits<double>::quiet_NaN()}) {
    const auto png = as_png(of_words(), pixels);
    ASSERT_FALSE(png) << pixels;
    EXPECT_THAT(png.error().what, HasSubstr("cannot be drawn"));
  }
}

TEST(Pictures, OfADayAreXmlAsSvg) {
  DayInputs in = sample_inputs();
  DayPlan plan = sample_plan();
  plan.course_at = "Mill <Bridge> & \U0001F3A3 \u05d2\u05e9\u05e8";
  for (const auto& [name, drawing] : day_drawings(plan, in, 552.0)) {
    const std::string said = read_back("import sys, xml.dom.minidom as m\nd = m.parse(sys.argv[1]).documentElement\n"
                                       "print(d.tagName, len(d.getElementsByTagName('polyline')) > 5)",
                                       as_svg(drawing, name));
    EXPECT_EQ(said, "svg True\n") << name;
  }
}

}  // namespace
}  // namespace floatwright::testing
