/** How the sheets look: black on white, A4, a block never parted over two pages where it fits on one. */
export const SHEET_STYLE = `
@page { size: A4; margin: 12mm 12mm 14mm; }
.survey-sheets { background: #fff; color: #111; max-width: 186mm; margin: 0 auto; font: 9.5pt/1.3 system-ui, sans-serif; overflow-wrap: anywhere; }
.survey-sheets * { box-sizing: border-box; }
.survey-sheets h1 { font-size: 16pt; margin: 0 0 2mm; }
.survey-sheets h2 { font-size: 12pt; margin: 5mm 0 2mm; border-bottom: 0.4mm solid #111; break-after: avoid; }
.survey-sheets h3 { font-size: 11pt; margin: 0; }
.survey-sheets p { margin: 0 0 1.5mm; max-width: none; }
.survey-sheets .small, .survey-sheets .care { font-size: 8.5pt; }
.survey-sheets .care { border-left: 1.2mm solid #111; padding-left: 2mm; margin: 1mm 0 2mm; }
.survey-sheets .care::before { content: "Take care. "; font-weight: 700; }
.survey-sheets section + section { break-before: page; }
.survey-sheets article { border: 0.3mm solid #111; border-radius: 1.5mm; padding: 2.5mm; margin: 0 0 4mm; break-inside: avoid; }
.survey-sheets .top-line { display: flex; justify-content: space-between; gap: 4mm; }
.survey-sheets svg { width: 60mm; height: 36mm; flex: none; fill: none; stroke: #111; stroke-width: 1.1; }
.survey-sheets svg text { font-size: 8px; fill: #111; stroke: none; }
.survey-sheets .line { display: flex; gap: 3mm; }
.survey-sheets .blank { border-bottom: 0.3mm solid #111; min-height: 9mm; flex: 1; }
.survey-sheets .share-2 { flex: 2; }
.survey-sheets .boxes { display: grid; grid-template-columns: repeat(4, minmax(0, 1fr)); gap: 1.5mm; }
.survey-sheets .box { display: grid; grid-template-columns: minmax(0, 1fr) auto; align-content: space-between; border: 0.25mm solid #666; border-radius: 1mm; padding: 0.8mm 1.2mm; min-height: 11.5mm; }
.survey-sheets .box.wide { grid-column: span 2; min-height: 10mm; align-content: start; }
.survey-sheets .box.notes { grid-column: 1 / -1; }
.survey-sheets .name { grid-column: 1 / -1; font-size: 7.5pt; color: #333; }
.survey-sheets .known { overflow-wrap: break-word; font-size: 8pt; font-style: italic; color: #222; }
.survey-sheets .unit { font-weight: 700; align-self: end; }
.survey-sheets .notes { margin-top: 1.5mm; min-height: 16mm; white-space: pre-line; }
.survey-sheets .choices, .survey-sheets .ticks { display: flex; flex-wrap: wrap; gap: 0.5mm 4mm; }
.survey-sheets .choices { grid-column: 1 / -1; font-size: 8.5pt; }
.survey-sheets .square { display: inline-block; width: 3.4mm; height: 3.4mm; border: 0.3mm solid #111; font-size: 8pt; line-height: 2.9mm; text-align: center; vertical-align: -0.4mm; }
.survey-sheets .tick.on { font-weight: 700; }
.survey-sheets .hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.survey-sheets table { width: 100%; table-layout: fixed; border-collapse: collapse; font-size: 8.5pt; }
.survey-sheets th, .survey-sheets td { border: 0.25mm solid #666; padding: 0.8mm 1.2mm; text-align: left; vertical-align: top; color: #111; font-size: inherit; }
.survey-sheets tr { break-inside: avoid; }
.survey-sheets .tags td { height: 8mm; }
.survey-sheets .keeps { font-size: 8pt; line-height: 1.22; }
.survey-sheets .keeps td:nth-child(-n + 2) { text-align: center; }
.survey-sheets .keeps th:nth-child(-n + 2) { width: 11mm; }
.survey-sheets .keeps th:nth-child(3) { width: 42mm; }
.survey-sheets .keeps th:nth-child(5) { width: 30mm; }
`;
