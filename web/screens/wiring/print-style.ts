/** What paper needs besides the lists' and diagrams' own looks. */
export const PRINT_STYLE = (diagrams: boolean): string => `
@page { size: ${diagrams ? 'A3 landscape' : 'A4'}; margin: 10mm; }
.wiring-on-paper { background: #fff; color: #111; padding: 4mm; overflow-x: auto; }
.wiring-on-paper .diagram { display: block; width: 100%; height: auto; max-height: 240mm; }
.wiring-sheet + .wiring-sheet { margin-top: 6mm; border-top: 0.2mm solid #999; padding-top: 4mm; }
.wiring-sheet .foot { font-size: 8pt; margin: 2mm 0 0; max-width: none; }
.pinned-photo { margin: 4mm 0; break-inside: avoid; }
.pinned-photo img { max-height: 120mm; }
@media print {
  html, body { background: #fff; }
  main { padding: 0; max-width: none; }
  .not-printed, .top, .caution-screen { display: none; }
  .wiring-on-paper { padding: 0; overflow: visible; }
  .wiring-sheet { break-after: page; }
  .wiring-sheet + .wiring-sheet { margin: 0; border: 0; padding: 0; }
}
`;
