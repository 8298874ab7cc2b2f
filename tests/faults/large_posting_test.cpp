// A posting too large for memory is written to the disk before it is committed, and the disk is full then.
#include <catch2/catch.hpp>

#include "ledger/proof/verify.hpp"
#include "tests/faults/deeds.hpp"
#include "tests/faults/running_victim.hpp"
#include "tests/faults/small_disk.hpp"

using namespace flutebook::ledger;
using namespace flutebook::fixture;

TEST_CASE("a disk that fills up in the middle of sixty thousand rows keeps none of them") {
    if (!SmallDisk::can_be_made()) {
        WARN("not root: no small disk can be mounted");
        return;
    }
    SmallDisk disk(std::size_t{6} << 20U);
    make_ledger(disk.file(), 99, 300);
    const auto before = contents(disk.file());
    const auto end = run_victim({"post", disk.file(), "5", "60000", "60000"});
    INFO(end.errors);
    CHECK(end.exit_code == 3);
    CHECK(end.done == 0);
    CHECK(end.errors == disk.file() +
                            ": no space is left on the disk: nothing of the unfinished write was kept; make room "
                            "and do it again\n");
    CHECK(contents(disk.file()) == before);
    CHECK(verify(Store::open_for_reading(disk.file())).holds());
}
