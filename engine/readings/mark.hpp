#pragma once
// What is said of one reading beside its number, and a set of such marks as small as a number, since there is one set
// for each of hundreds of thousands of rows.
#include <bit>
#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <iterator>

namespace floatwright {

enum class Mark : std::uint8_t {
  Provisional,
  Approved,
  Revised,
  Estimated,
  Ice,        // value, if any, is kept for display and is never flow
  Equipment,  // likewise
  Backwater,  // likewise
  Discontinued,
  Unavailable,
  Stale,         // set here, not by a service
  SuspectSpike,  // set here, not by a service
  Unknown        // a code not in our list: its text is kept in GaugeSeries::unknown_codes
};

class Marks {
 public:
  constexpr Marks() = default;
  constexpr Marks(std::initializer_list<Mark> marks) {
    for (const Mark mark : marks) insert(mark);
  }
  // One bit a mark, in the order of the enumerators: what is kept on disk.
  [[nodiscard]] static constexpr Marks from_bits(std::uint16_t bits) {
    Marks out;
    out.bits_ = bits;
    return out;
  }
  [[nodiscard]] constexpr std::uint16_t bits() const { return bits_; }

  constexpr void insert(Mark mark) { bits_ = static_cast<std::uint16_t>(bits_ | bit(mark)); }
  constexpr void insert(Marks more) { bits_ = static_cast<std::uint16_t>(bits_ | more.bits_); }
  [[nodiscard]] constexpr bool contains(Mark mark) const { return (bits_ & bit(mark)) != 0; }
  [[nodiscard]] constexpr bool empty() const { return bits_ == 0; }
  [[nodiscard]] constexpr std::size_t size() const { return static_cast<std::size_t>(std::popcount(bits_)); }
  friend constexpr bool operator==(Marks, Marks) = default;

  // In the order of the enumerators.
  class Iterator {
   public:
    using value_type = Mark;
    using difference_type = std::ptrdiff_t;
    using iterator_category = std::input_iterator_tag;
    using pointer = const Mark*;
    using reference = Mark;
    constexpr Iterator() = default;
    constexpr explicit Iterator(unsigned rest) : rest_(rest) {}
    constexpr Mark operator*() const { return static_cast<Mark>(std::countr_zero(rest_)); }
    constexpr Iterator& operator++() {
      rest_ &= rest_ - 1;
      return *this;
    }
    constexpr Iterator operator++(int) {
      const Iterator before = *this;
      ++*this;
      return before;
    }
    friend constexpr bool operator==(Iterator, Iterator) = default;

   private:
    unsigned rest_ = 0;
  };
  [[nodiscard]] constexpr Iterator begin() const { return Iterator{bits_}; }
  [[nodiscard]] constexpr Iterator end() const { return Iterator{}; }

 private:
  static constexpr unsigned bit(Mark mark) { return 1u << static_cast<unsigned>(mark); }
  std::uint16_t bits_ = 0;
};

}  // namespace floatwright
