# The second compiler, with its own warnings.
include(${CMAKE_CURRENT_LIST_DIR}/common.cmake)
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O1" CACHE STRING "")
