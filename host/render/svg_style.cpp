// A cause has a colour and a hatch of its own, so that colour never stands alone.
#include "host/render/svg_style.hpp"

#include <fmt/format.h>

#include <array>

namespace flutebook::render {

namespace {

struct Hatch {
    const char *cause, *colour, *marks;
};

// On a square of 8 units.
constexpr std::array<Hatch, 8> hatches{{
    {"side-trim", "trim", R"(<path class="hatch" stroke-width="1.6" d="M-1 7 7-1M3 11 11 3"/>)"},
    {"roll-ends", "ends", R"(<path class="hatch" stroke-width="1.6" d="M-1 1 7 9M3-3 11 5"/>)"},
    {"corrugator-run", "run", R"(<path class="hatch" stroke-width="2.6" d="M-1 7 7-1M3 11 11 3"/>)"},
    {"order-change", "change", R"(<path class="hatch" stroke-width="1.6" d="M0 0V8M4 0V8"/>)"},
    {"setup", "setup",
     R"(<circle class="hatch-dot" cx="2" cy="2" r="1.5"/><circle class="hatch-dot" cx="6" cy="6" r="1.5"/>)"},
    {"rejects", "rejects", R"(<path class="hatch" stroke-width="1.3" d="M0 0 8 8M8 0 0 8"/>)"},
    {"cut-out", "cut", R"(<path class="hatch" stroke-width="1.6" d="M0 2H8M0 6H8"/>)"},
    {"surplus", "surplus", R"(<path class="hatch" stroke-width="1" d="M0 4H8M4 0V8"/>)"},
}};

}  // namespace

const char* colours() {
    return R"(
:root { color-scheme: light dark; --sheet: #ffffff; --well: #f6f8f8; --ink: #15212a; --ink-2: #46545e;
  --ink-3: #5c6972; --line: #dde3e5; --line-2: #b6c1c6; --accent: #0a5a66; --accent-wash: #e2eff0;
  --warn: #7c5000; --warn-wash: #fbf2dd; --kraft: #d3ad7b; --kraft-line: #60401a; --joined: #b98f5a;
  --on-board: #1d1204; --slot: #23707a; }
@media (prefers-color-scheme: dark) { :root { --sheet: #161d21; --well: #1b2328; --ink: #e6ebec; --ink-2: #b3bfc5;
  --ink-3: #94a2a9; --line: #283238; --line-2: #45525a; --accent: #6cc3cc; --accent-wash: #15323a; --warn: #e0b457;
  --warn-wash: #332a14; --kraft: #906d40; --kraft-line: #f0d3a8; --joined: #7d5d34; --on-board: #ffffff;
  --slot: #62b5bf; } }
@media print { :root { color-scheme: light; --sheet: #fff; --well: #f6f8f8; --ink: #000; --ink-2: #333; --ink-3: #555;
  --line: #ddd; --line-2: #aaa; --accent: #0a5a66; --accent-wash: #e2eff0; --warn: #7c5000; --warn-wash: #fbf2dd;
  --kraft: #d3ad7b; --kraft-line: #60401a; --joined: #b98f5a; --on-board: #1d1204; --slot: #23707a; } }
)";
}

const char* drawing_style() {
    return R"(
.drawing { display: block; max-width: 100%; height: auto; }
.drawing text { fill: var(--ink-2); font: 400 11.5px -apple-system, "Segoe UI", "Liberation Sans", Arial, sans-serif;
  font-variant-numeric: tabular-nums; }
.drawing .size { font-size: 10.5px; }
.drawing .mid { text-anchor: middle; } .drawing .end { text-anchor: end; }
.drawing .title { fill: var(--ink); font-weight: 650; }
.drawing .on-board { fill: var(--on-board); paint-order: stroke; stroke: var(--kraft); stroke-width: 3px;
  stroke-linejoin: round; }
.drawing .board { fill: var(--kraft); } .drawing .joined { fill: var(--joined); }
.drawing .edge { fill: none; stroke: var(--kraft-line); stroke-width: 1; stroke-linejoin: round; }
.drawing .shade { fill: #000; }
.drawing .cut { stroke: var(--ink); stroke-width: 1.2; fill: none; }
.drawing .crease { stroke: var(--kraft-line); stroke-width: 1; stroke-dasharray: 4 3; fill: none; }
.drawing .slot { stroke: var(--slot); stroke-width: 1.2; fill: none; }
.drawing .dimension { stroke: var(--ink-3); stroke-width: 1; fill: none; }
.drawing .ground { fill: var(--sheet); }
)";
}

const char* loss_style() {
    return R"(
:root { --c-trim: #b8741a; --c-ends: #8f6a2c; --c-run: #a8402b; --c-change: #c4634a; --c-setup: #5f4b9b;
  --c-rejects: #7f6fb6; --c-cut: #23707a; --c-surplus: #5d6b74; }
@media (prefers-color-scheme: dark) { :root { --c-trim: #e0a24a; --c-ends: #c2a062; --c-run: #e3806a;
  --c-change: #eba08e; --c-setup: #ab9ae0; --c-rejects: #bfb3e6; --c-cut: #62b5bf; --c-surplus: #9aa7ae; } }
@media print { :root { --c-trim: #b8741a; --c-ends: #8f6a2c; --c-run: #a8402b; --c-change: #c4634a; --c-setup: #5f4b9b;
  --c-rejects: #7f6fb6; --c-cut: #23707a; --c-surplus: #5d6b74; } }
.drawing .lost { stroke: currentColor; stroke-width: 1; }
.drawing .hatch { stroke: currentColor; fill: none; } .drawing .hatch-dot { fill: currentColor; }
.drawing .t-trim { color: var(--c-trim); } .drawing .t-ends { color: var(--c-ends); }
.drawing .t-run { color: var(--c-run); } .drawing .t-change { color: var(--c-change); }
.drawing .t-setup { color: var(--c-setup); } .drawing .t-rejects { color: var(--c-rejects); }
.drawing .t-cut { color: var(--c-cut); } .drawing .t-surplus { color: var(--c-surplus); }
)";
}

std::string hatch_colour(const std::string& cause) {
    for (const Hatch& hatch : hatches)
        if (cause == hatch.cause) return hatch.colour;
    return "surplus";
}

std::string hatch_pattern(const std::string& cause, const std::string& id) {
    const char* marks = hatches.back().marks;
    for (const Hatch& hatch : hatches)
        if (cause == hatch.cause) marks = hatch.marks;
    return fmt::format(R"(<pattern id="{}" class="t-{}" width="8" height="8" patternUnits="userSpaceOnUse">)"
                       R"(<rect class="ground" width="8" height="8"/>{}</pattern>)",
                       id, hatch_colour(cause), marks);
}

}  // namespace flutebook::render
