/** The style sheet of the class page: light, dark and paper. Words and shapes carry every meaning, colours none alone. */
export const classStyle = `
:root{--ink:#1b1b1b;--paper:#fff;--soft:#eef1f4;--rule:#8a939c;--good:#0063a0;--bad:#b34700}
@media (prefers-color-scheme:dark){:root{--ink:#e8e8e8;--paper:#15181b;--soft:#252b31;--rule:#77828d;--good:#64bdf0;--bad:#f0a040}}
*{box-sizing:border-box}
body{margin:0 auto;padding:1.5rem;max-width:68rem;background:var(--paper);color:var(--ink);font:1rem/1.45 system-ui,"Segoe UI",Roboto,"Noto Sans",sans-serif;overflow-wrap:anywhere}
h1{font-size:1.6rem;margin:0}
h2{font-size:1.15rem;margin:1.8rem 0 .5rem}
header p{margin:.2rem 0}
.doubt{border:2px solid var(--bad);padding:.2rem 1rem .6rem;margin-top:1rem}
.doubt h2{margin-top:.6rem}
svg{display:block;width:100%;max-width:44rem;height:auto}
text{fill:var(--ink);font-size:12px}
text.mid{text-anchor:middle}
text.end{text-anchor:end}
.axis{stroke:var(--rule);fill:none}
.even{stroke:var(--rule);stroke-dasharray:5 4;fill:none}
.bar{fill:var(--good)}
.room{fill:var(--soft);stroke:var(--rule)}
.right{fill:var(--good)}
.wrong{stroke:var(--bad);stroke-width:2.4;fill:none}
.wide{overflow-x:auto}
table{border-collapse:collapse;width:100%;min-width:46rem;font-size:.9rem}
th,td{border:1px solid var(--rule);padding:.3rem .45rem;vertical-align:top;text-align:start;font-weight:400}
thead th{background:var(--soft);font-weight:600;overflow-wrap:normal}
@page{size:A4 landscape;margin:12mm}
@media print{
:root{--ink:#000;--paper:#fff;--soft:#eee;--rule:#666;--good:#0063a0;--bad:#a84300}
body{padding:0;max-width:none;font-size:9.5pt}
.wide{overflow:visible}
table{min-width:0}
thead{display:table-header-group}
tr,svg,.doubt{break-inside:avoid}
h2{break-after:avoid}
}
`;
