/** The test sheet as plain text and as a page to print. */
import { escaped } from '../../refit/sheets/node.ts';
import type { TestLine, TestSheet } from './test-sheet.ts';

export function testSheetText({ machine, made, due, before, lines }: TestSheet): string {
  return `${[
    `Test sheet of the stop circuit: ${machine}`,
    `Made ${made}. Due again ${due}, and after every change.`,
    'Done by: ____________________  on: ____________________',
    ...before,
    '',
    ...lines.flatMap(({ number, part, act, expected, caution, barred }) => [
      `${number}. ${part}`,
      ...(caution ? [`   First: ${caution}`] : []),
      ...(barred
        ? [`   ${act}`, `   Why: ${expected}`]
        : [`   Do: ${act}`, `   Must: ${expected}`, '   Date, signature: ____________________']),
    ]),
  ].join('\n')}\n`;
}

/** Lines of one part stand together under its name. */
function parts(lines: readonly TestLine[]): readonly (readonly [part: string, lines: readonly TestLine[]])[] {
  const found: [string, TestLine[]][] = [];
  for (const line of lines) {
    const last = found.at(-1);
    if (last?.[0] === line.part) last[1].push(line);
    else found.push([line.part, [line]]);
  }
  return found;
}

const STYLE = `
@page{size:A4;margin:12mm}
*{box-sizing:border-box}
body{font:9.5pt/1.3 system-ui,sans-serif;margin:0 auto;max-width:186mm;padding:4mm;color:#000;background:#fff}
h1{font-size:14pt;margin:0 0 2mm}
dl{display:grid;grid-template-columns:repeat(auto-fit,minmax(36mm,1fr));gap:1.5mm;margin:0 0 2mm}
dl div:first-child{grid-column:1/-1;min-height:0}
dl div{border:.3mm solid #444;border-radius:1mm;padding:1mm 1.5mm;min-height:11mm}
dt{font-size:7.5pt}
dd{margin:0;font-weight:700}
ul{margin:0 0 2mm;padding-left:4mm}
table{border-collapse:collapse;width:100%}
th,td{border:.25mm solid #444;padding:.8mm 1.2mm;text-align:left;vertical-align:top}
thead th{font-size:8pt}
tbody th{background:#eee;print-color-adjust:exact;-webkit-print-color-adjust:exact}
td:first-child{width:8mm;text-align:right}
td:nth-child(3){width:36%}
.sign{width:27mm}
.first{font-weight:700;margin:0 0 .6mm}
.barred td:nth-child(n+2){border-left:1.2mm solid #000}
.barred p{margin:0}
tr{break-inside:avoid}
tbody tr:first-child{break-after:avoid}
thead{display:table-header-group}
@media print{body{padding:0}}
@media screen and (max-width:600px){table,thead,tbody,tr,td,th{display:block;width:auto}thead{display:none}td:nth-child(n){width:auto;text-align:left;border-top:0}.sign{width:auto;min-height:12mm}}
`;

function row({ number, act, expected, caution, barred }: TestLine): string {
  if (barred)
    return `<tr class="barred"><td>${number}</td><td colspan="3"><p><strong>✕ ${escaped(act)}</strong></p><p>${escaped(expected)}</p></td></tr>`;
  const first = caution ? `<p class="first">First: ${escaped(caution)}</p>` : '';
  return `<tr><td>${number}</td><td>${first}${escaped(act)}</td><td>${escaped(expected)}</td><td class="sign"></td></tr>`;
}

/** A4. Everything from the refit is escaped; there is no script in it. */
export function testSheetHtml({ machine, made, due, before, lines }: TestSheet): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>Test sheet: ${escaped(machine)}</title>
<style>${STYLE}</style>
</head>
<body>
<h1>Test sheet of the stop circuit</h1>
<dl>
<div><dt>Machine</dt><dd>${escaped(machine)}</dd></div>
<div><dt>Sheet made</dt><dd>${escaped(made)}</dd></div>
<div><dt>Due again, and after every change</dt><dd>${escaped(due)}</dd></div>
<div><dt>Tested by</dt><dd></dd></div>
<div><dt>Tested on</dt><dd></dd></div>
</dl>
<ul>
${before.map((each) => `<li>${escaped(each)}</li>`).join('\n')}
</ul>
<table>
<thead><tr><th>No.</th><th>Do</th><th>What must happen</th><th>Date, signature</th></tr></thead>
${parts(lines)
  .map(
    ([part, own]) =>
      `<tbody><tr><th colspan="4" scope="rowgroup">${escaped(part)}</th></tr>\n${own.map(row).join('\n')}\n</tbody>`,
  )
  .join('\n')}
</table>
</body>
</html>
`;
}
