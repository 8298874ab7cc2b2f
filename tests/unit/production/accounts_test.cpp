// The names under which the ledger keeps accounts, and what each stands for.
#include "host/production/accounts.hpp"

#include <catch2/catch.hpp>

using namespace flutebook::production;
using Kind = AccountKind;

TEST_CASE("every account that documents write has its kind") {
    CHECK(account_kind(account::floor) == Kind::floor);
    CHECK(account_kind(account::loose_scrap) == Kind::loose_scrap);
    CHECK(account_kind(account::bale_yard) == Kind::bale_yard);
    CHECK(account_kind(account::paper_store) == Kind::paper_store);
    CHECK(account_kind(account::adhesive_store) == Kind::adhesive_store);
    CHECK(account_kind(account::finished) == Kind::finished);
    CHECK(account_kind(account::opening) == Kind::opening);
    CHECK(account_kind(account::costs) == Kind::costs);
    CHECK(account_kind(account::revenue) == Kind::revenue);
    CHECK(account_kind(account::unexplained) == Kind::unexplained);
}

TEST_CASE("a mill's account is known by its prefix, whatever the mill is called") {
    CHECK(account_kind(account::of_mill("Northweir")) == Kind::mill);
    CHECK(account_kind(account::of_mill("floor")) == Kind::mill);
}

TEST_CASE("a code that is no other account's name is a machine's") {
    for (const char* code : {"C1", "FG1", "floors", "mil", "Floor"}) {
        CAPTURE(code);
        CHECK(account_kind(code) == Kind::machine);
    }
}
