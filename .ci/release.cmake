# The program as it is used. -D SLABWRIGHT_TESTS=ON adds its tests, -D SLABWRIGHT_BENCH=ON the timings.
include(${CMAKE_CURRENT_LIST_DIR}/common.cmake)
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(SLABWRIGHT_TESTS OFF CACHE BOOL "")
set(SLABWRIGHT_JOINED ON CACHE BOOL "")
