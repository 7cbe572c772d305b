#include "sheet/report.h"

namespace wellproof {

std::string_view report_style() {
  return R"css(
:root { --ink: #20262c; --soft: #56606a; --line: #c9ced3; --wash: #f3f1ea; --deep: #00598f; --alarm: #9c2f00;
  color-scheme: light; }
* { box-sizing: border-box; }
html { background: #fff; }
body { margin: 0 auto; padding: 2.2rem 1.4rem 4rem; max-width: 52rem; color: var(--ink);
  font: 1rem/1.5 Charter, "Bitstream Charter", "Iowan Old Style", Cambria, Georgia, serif; }
h1 { font-size: 1.9rem; line-height: 1.15; margin: 0 0 .3rem; font-weight: 600; overflow-wrap: anywhere; }
h2 { font-size: 1.2rem; margin: 2.4rem 0 .7rem; padding-top: .5rem; border-top: 3px double var(--ink); }
h3 { font-size: 1rem; margin: 1.6rem 0 .3rem; }
p { margin: .4rem 0 .8rem; max-width: 42rem; }
.site, .note { color: var(--soft); }
.note { font-size: .88rem; }
.verdict { margin: 1.4rem 0 1.2rem; padding: .9rem 1.1rem; background: var(--wash); border-left: .55rem solid var(--deep); }
.verdict.fails { border-left: .55rem double var(--alarm); }
.verdict strong { display: block; font-size: 1.35rem; letter-spacing: .06em; color: var(--deep); }
.verdict.fails strong { color: var(--alarm); }
.verdict p { margin: .3rem 0 0; }
table { border-collapse: collapse; width: 100%; font: .84rem/1.4 system-ui, "Segoe UI", "Helvetica Neue", Arial, sans-serif;
  font-variant-numeric: tabular-nums; }
th { text-align: left; font-weight: 600; color: var(--soft); border-bottom: 1.5px solid var(--ink); padding: .25rem .7rem .25rem 0;
  vertical-align: bottom; }
td { border-bottom: 1px solid var(--line); padding: .4rem .7rem .4rem 0; vertical-align: top; }
td.n, th.n { text-align: right; white-space: nowrap; }
td.key { font-weight: 600; white-space: nowrap; }
td.value { white-space: nowrap; text-align: right; font-weight: 600; font-size: .95rem; }
td .why { display: block; color: var(--soft); margin-top: .15rem; }
td .way { display: block; margin-top: .25rem; padding-left: .6rem; border-left: 3px double var(--alarm); }
td.pen { width: 4.2rem; }
td.pen::after { content: ""; display: block; height: 1.15rem; border-bottom: 1px dotted var(--soft); }
.tag { display: inline-block; font-size: .74rem; padding: 0 .35rem; border: 1px solid currentColor; margin-left: .3rem; }
.fails .tag, .tag.fails { color: var(--alarm); border-width: 1.5px; font-weight: 600; }
figure { margin: 1.2rem 0 1.6rem; }
figcaption { font-size: .88rem; color: var(--soft); max-width: 42rem; }
svg { display: block; width: 100%; height: auto; font: 11px system-ui, "Segoe UI", "Helvetica Neue", Arial, sans-serif; }
svg text { fill: var(--soft); }
svg text.axis { font-weight: 600; }
svg text.name { fill: var(--ink); paint-order: stroke; stroke: #fff; stroke-width: 3px; stroke-linejoin: round; }
svg .grid line { stroke: #e3e5e8; stroke-width: .8; }
svg .frame { fill: none; stroke: #8a929a; stroke-width: 1; }
svg .leader { fill: none; stroke-width: .7; stroke-opacity: .6; }
svg .hatch { stroke: #b9a77c; stroke-width: 1.4; stroke-opacity: .55; }
svg .dot { fill: #fff; stroke: #20262c; stroke-width: 1.8; }
ul.mind { padding-left: 1.1rem; max-width: 44rem; }
ul.mind li { margin: .35rem 0; }
ol.events { columns: 2; column-gap: 2rem; font-size: .84rem; padding-left: 1.6rem; margin: .3rem 0;
  font-family: system-ui, "Segoe UI", "Helvetica Neue", Arial, sans-serif; }
ol.events li { break-inside: avoid; }
code { font: .85em ui-monospace, "DejaVu Sans Mono", Consolas, monospace; overflow-wrap: anywhere; }
p.replay { max-width: none; overflow-x: auto; white-space: nowrap; color: var(--soft); }
@media (max-width: 40rem) { ol.events { columns: 1; } .wide { overflow-x: auto; } .wide svg { min-width: 34rem; } }
@page { margin: 15mm 14mm 16mm; }
@media print {
  html { font-size: 9.5pt; }
  body { padding: 0; max-width: none; }
  p, ul.mind, figcaption { max-width: none; }
  h2 { break-after: avoid; margin-top: 1.6rem; }
  h3 { break-after: avoid; }
  tr, figure, li, .verdict, .run { break-inside: avoid; }
  thead { display: table-header-group; }
  .newpage { break-before: page; }
  .verdict { background: none; border-top: 1px solid var(--ink); border-bottom: 1px solid var(--ink); }
  svg, .verdict { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
)css";
}

}  // namespace wellproof
