#pragma once
// A place or a velocity of a line in the water, in numbers of one kind: metres or metres a second in the frame of the
// rod, along the stream, down, and across the stream to the side that is cast to.
namespace floatwright {

template <class Real>
struct Triple {
  Real along, down, across;

  friend Triple operator+(const Triple& a, const Triple& b) {
    return {a.along + b.along, a.down + b.down, a.across + b.across};
  }
  friend Triple operator-(const Triple& a, const Triple& b) {
    return {a.along - b.along, a.down - b.down, a.across - b.across};
  }
  friend Triple operator*(const Real& k, const Triple& a) { return {k * a.along, k * a.down, k * a.across}; }
  friend Real dot(const Triple& a, const Triple& b) {
    return a.along * b.along + a.down * b.down + a.across * b.across;
  }
};

}  // namespace floatwright
