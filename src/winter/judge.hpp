// What is said about a winter beside its figures.
#pragma once
#include <vector>

#include "winter/scene.hpp"

namespace slabwright::winter {

/// Codes "winter.*". A failure: no way passes. Warnings: floor and second source that fight, ways that were asked for
/// and cannot be run. Notes: no price, no sun.
std::vector<Diagnostic> judged(const Scene& scene, const Winter& winter);

}  // namespace slabwright::winter
