// How what came of the winter is shown; beside winter.hpp, whose page is full.
#pragma once
#include "slabwright/fields.hpp"
#include "slabwright/winter.hpp"

namespace slabwright {

Record record_of(PlaceInWinter&);
Record record_of(WayFails&);
Record record_of(WayMonth&);
Record record_of(Comfort&);
Record record_of(SourceWinter&);
Record record_of(Sweating&);
Record record_of(TenWinters&);
Record record_of(ShopHeat&);
Record record_of(WayResult&);
Record record_of(HoldCost&);
Record record_of(TriedWay&);
Record record_of(Search&);
Record record_of(DoorInWinter&);
Record record_of(PayBack&);
Record record_of(BillFit&);
/// Without `search`, `fit` and `series`, which have a record of their own where they are there.
Record record_of(Winter&);

}  // namespace slabwright
