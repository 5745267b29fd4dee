#if __has_include(<catch2/catch_session.hpp>)
#include <catch2/catch_session.hpp>
int main(int count, char* words[]) { return Catch::Session().run(count, words); }
#else
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
#endif
