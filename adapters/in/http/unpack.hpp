#pragma once
// Unpacks gzip (RFC 1952) as it arrives. libcurl's own unpacking takes a stream that is cut short for a whole one, and
// refuses one of several members; this tells the first and reads the second.
#include <memory>
#include <string>
#include <string_view>

struct z_stream_s;

namespace floatwright {

class Unpacker {
 public:
  Unpacker();

  enum class State { More, TooLong, Broken };
  // Appends to `out` what `packed` adds, as long as that is no longer than `limit` in all.
  State take(std::string_view packed, std::string& out, std::size_t limit);
  // Whether what was taken so far ends where a member ends.
  [[nodiscard]] bool is_whole() const { return whole_; }

 private:
  struct End {
    void operator()(z_stream_s* stream) const;
  };
  std::unique_ptr<z_stream_s, End> stream_;
  bool whole_ = false;
};

}  // namespace floatwright
