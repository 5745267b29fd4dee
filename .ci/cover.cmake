# The same programs, counting which lines their inputs reach: tests/tools/fuzz.py --cover .build/cover
include(${CMAKE_CURRENT_LIST_DIR}/common.cmake)
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(CMAKE_CXX_FLAGS "-fprofile-instr-generate -fcoverage-mapping" CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELEASE "-O1" CACHE STRING "")
set(SLABWRIGHT_JOINED ON CACHE BOOL "")
set(SLABWRIGHT_TESTS OFF CACHE BOOL "")
set(SLABWRIGHT_FUZZ ON CACHE BOOL "")
