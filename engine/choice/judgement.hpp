#pragma once
// Every number that is ours and has no source, in one place, so that a guide can put his own in (config/judgement.json
// has the same keys, each with a sentence). The defaults here are the shipped ones; a test holds file and struct together.
// The owner of this room fills it; other rooms take what they need from a const Judgement&.
namespace floatwright {

struct Judgement {};

}  // namespace floatwright
