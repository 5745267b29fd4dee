// Refused: no match for .*operator==|invalid operands to binary expression
#include "slabwright/ids.hpp"

namespace slabwright {

using NodeId = Id<struct NodeTag>;
using BranchId = Id<struct BranchTag>;
bool same(NodeId node, BranchId branch) { return node == branch; }

}  // namespace slabwright
