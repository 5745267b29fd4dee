// Refused: conversion from .*int.* to non-scalar|no viable conversion from 'int'
#include "slabwright/ids.hpp"

namespace slabwright {

using NodeId = Id<struct NodeTag>;
NodeId third() {
  const NodeId node = 3;
  return node;
}

}  // namespace slabwright
