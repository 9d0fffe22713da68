/** The style sheet of the HTML report: light, dark and paper. Colours keep 4.5:1 for text; words carry every meaning. */
export const htmlStyle = `
:root{--ink:#1b1b1b;--paper:#fff;--soft:#f2f4f6;--rule:#b9c0c7;--good:#0072b2;--bad:#d55e00;--unsure:#8a6d00}
@media (prefers-color-scheme:dark){:root{--ink:#e8e8e8;--paper:#15181b;--soft:#20252a;--rule:#4a535c;--good:#56b4e9;--bad:#e69f00;--unsure:#f0e442}}
*{box-sizing:border-box}
body{margin:0 auto;padding:1.5rem;max-width:64rem;background:var(--paper);color:var(--ink);font:1rem/1.45 system-ui,"Segoe UI",Roboto,"Noto Sans",sans-serif;overflow-wrap:anywhere}
h1{font-size:1.7rem;margin:0}
header p{margin:.2rem 0 1rem}
h2{font-size:1.15rem;margin:1.6rem 0 .5rem;border-bottom:2px solid var(--rule);padding-bottom:.15rem}
.warning{border:2px solid var(--bad);padding:.4rem .7rem;font-weight:600}
dl{margin:0}
dl div{display:grid;grid-template-columns:minmax(8rem,22%) 1fr;gap:.2rem 1rem;padding:.15rem 0}
dt{font-weight:600}
dd{margin:0}
.wide{overflow-x:auto;margin:.7rem 0}
table{border-collapse:collapse;width:100%;min-width:34rem;table-layout:fixed;font-size:.9rem}
caption{text-align:start;font-weight:600;padding:.2rem 0}
th,td{border:1px solid var(--rule);padding:.3rem .45rem;vertical-align:top;text-align:start}
th{background:var(--soft)}
td div+div{margin-top:.15rem;font-size:.92em}
td.good{border-inline-start:5px solid var(--good)}
td.bad{border-inline-start:5px double var(--bad)}
td.bad div:first-child{font-weight:600}
td.unsure{border-inline-start:5px dashed var(--unsure)}
td.struck div:first-child{text-decoration:line-through}
svg{display:block;max-width:100%;margin-top:.25rem}
.axis{stroke:var(--rule);stroke-width:1}
.range{fill:var(--soft);stroke:var(--good);stroke-width:1.2}
.mark{stroke:var(--ink);stroke-width:2.4;fill:none}
.sign{display:grid;grid-template-columns:1fr 1fr;gap:.6rem 2rem}
.sign p{margin:0;font-size:.85rem}
.sign .line{display:block;height:2.4rem;border-bottom:1px solid var(--ink);margin-bottom:.2rem}
footer{margin-top:2rem;border-top:1px solid var(--rule);font:.8rem ui-monospace,monospace}
@page{size:A4;margin:14mm 14mm 18mm}
@media print{
:root{--ink:#000;--paper:#fff;--soft:#eee;--rule:#888;--good:#0072b2;--bad:#a84300;--unsure:#6b5500}
html{font-size:9pt}
body{padding:0;max-width:none}
thead{display:table-header-group}
tr,.sign p,dl div{break-inside:avoid}
h2{break-after:avoid}
.wide{overflow:visible}
table{min-width:0}
}
`;
