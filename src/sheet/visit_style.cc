#include "sheet/visit_sheet.h"

namespace wellproof {

std::string_view visit_style() {
  return R"css(
:root { color-scheme: light; }
* { box-sizing: border-box; }
html { background: #fff; font-size: 10pt; }
body { margin: 0 auto; padding: 1rem; max-width: 50rem; color: #000;
  font: 1rem/1.28 "Liberation Sans", "DejaVu Sans", Helvetica, Arial, sans-serif; overflow-wrap: anywhere; }
header { display: flex; justify-content: space-between; gap: 1rem; border-bottom: 2px solid #000; padding-bottom: .2rem; }
h1 { font-size: 1.35rem; line-height: 1.1; margin: 0; }
.site, .page { margin: 0; font-size: .86rem; }
.page { text-align: right; white-space: nowrap; }
h2 { font-size: 1.02rem; margin: .55rem 0 .2rem; border-bottom: 1px solid #000; break-after: avoid; }
h3 { font-size: .96rem; margin: 0 0 .1rem; }
p { margin: .12rem 0; }
small { font-size: .82em; }
.note { font-size: .8rem; }
.verdict { margin: .35rem 0 0; padding: .2rem .45rem; border: 1.5px solid #000; font-size: .84rem; }
.two { display: grid; grid-template-columns: 1fr 1fr; gap: 0 1rem; align-items: start; }
.tests { columns: 2; column-gap: 1rem; }
.test { break-inside: avoid; padding: .15rem 0 .4rem; }
.test p { font-size: .86rem; }
.number { display: inline-block; min-width: 1.25em; padding: 0 .15em; text-align: center; border: 1.5px solid #000; }
ul.ticks { list-style: none; margin: 0; padding: 0; font-size: .86rem; }
ul.ticks li { position: relative; padding: .07rem 0 .07rem 1.35em; }
ul.ticks li::before { content: ""; position: absolute; left: 0; top: .2em; width: .85em; height: .85em;
  border: 1.2px solid #000; }
ul.back { margin-top: .15rem; border-left: 4px solid #000; padding-left: .4rem; }
span.pen { display: inline-block; width: 5.2em; border-bottom: 1px solid #000; margin-left: .3em; height: 1em; }
table { border-collapse: collapse; width: 100%; font-size: .84rem; }
th { text-align: left; font-weight: normal; font-size: .8rem; border-bottom: 1px solid #000; }
td { border-bottom: .6px solid #777; padding: .2rem .2rem; vertical-align: middle; }
.n { text-align: right; white-space: nowrap; }
.mark { font-weight: bold; }
td.pen { width: 4.6em; border-left: .6px solid #777; }
th.pen { padding-left: .4rem; }
td.box { width: 1.35em; position: relative; }
td.box::before { content: ""; display: block; width: .85em; height: .85em; border: 1.2px solid #000; }
.band { font-weight: bold; }
.sign { margin-top: .4rem; }
.notes { margin-top: .4rem; border: 1px solid #000; height: 4.2rem; padding: .1rem .2rem; font-size: .8rem; }
.sign td { height: 2.7rem; border: 1px solid #000; vertical-align: top; width: 25%; font-size: .8rem; }
.second { margin-top: 2rem; }
@media (max-width: 40rem) { .two { grid-template-columns: 1fr; } .tests { columns: 1; } }
@page { margin: 11mm 11mm 10mm; }
@media print {
  body { padding: 0; max-width: none; }
  .second { break-before: page; margin-top: 0; }
  tr, li { break-inside: avoid; }
}
)css";
}

}  // namespace wellproof
