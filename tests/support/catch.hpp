// The one place that knows which version of the test package is installed.
#pragma once
#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif
