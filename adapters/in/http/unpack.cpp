#include "adapters/in/http/unpack.hpp"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <new>

namespace floatwright {
namespace {

constexpr int kGzipOnly = 16 + MAX_WBITS;  // zlib.h: 16 more than the window's bits

}  // namespace

void Unpacker::End::operator()(z_stream_s* stream) const {
  inflateEnd(stream);
  delete stream;
}

Unpacker::Unpacker() : stream_(new z_stream{}) {
  if (inflateInit2(stream_.get(), kGzipOnly) != Z_OK) throw std::bad_alloc{};
}

Unpacker::State Unpacker::take(std::string_view packed, std::string& out, std::size_t limit) {
  std::array<char, 16384> piece;
  // zlib does not write through next_in, it only lacks the const.
  stream_->next_in = reinterpret_cast<Bytef*>(const_cast<char*>(packed.data()));
  stream_->avail_in = static_cast<uInt>(packed.size());
  bool full = false;  // then zlib may hold more than it had room to give
  while (stream_->avail_in > 0 || full) {
    if (whole_ && inflateReset(stream_.get()) != Z_OK) return State::Broken;
    whole_ = false;
    stream_->next_out = reinterpret_cast<Bytef*>(piece.data());
    stream_->avail_out = static_cast<uInt>(piece.size());
    const int code = inflate(stream_.get(), Z_NO_FLUSH);
    if (code != Z_OK && code != Z_STREAM_END && code != Z_BUF_ERROR) return State::Broken;
    const std::size_t got = piece.size() - stream_->avail_out;
    if (got > limit - std::min(limit, out.size())) return State::TooLong;
    out.append(piece.data(), got);
    whole_ = code == Z_STREAM_END;
    full = !whole_ && stream_->avail_out == 0;
  }
  return State::More;
}

}  // namespace floatwright
