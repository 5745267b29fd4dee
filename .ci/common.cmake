# What every build shares. The files beside this one are used as: cmake -C .ci/asan.cmake -S . -B .build/asan
set(CMAKE_GENERATOR Ninja CACHE INTERNAL "")
find_program(ccache ccache)
if(ccache)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${ccache} CACHE STRING "")
endif()
