#include "slabwright/answer_remedies.hpp"
#include "slabwright/key.hpp"

namespace slabwright {

Record record_of(Remedy& x) {
  static constexpr Key keys[] = {
      key<&Remedy::code>({.meaning = "Of what was said."}),
      key<&Remedy::about>({.meaning = "Of the same."}),
      key<&Remedy::path>({.meaning = "The key that stops it; empty where no single change that was tried ends it."}),
      key<&Remedy::text>({.meaning = "A value that was tried in its place and ends it, as a design file writes it; the "
                                     "items of a list parted by \"; \"."}),
      key<&Remedy::tried>({.meaning = "Keys that were tried, one at a time, in this order."}),
      key<&Remedy::on_paper>({.meaning = "True where no change that a shop would make ends it and this value does in "
                                         "the sums alone."})};
  return {keys, &x};
}

}  // namespace slabwright
