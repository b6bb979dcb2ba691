/** Tables as CSV (RFC 4180), for a spreadsheet or a label printer. */

/** With a mark at the front by which spreadsheets see that it is UTF-8. */
export const csvOf = (rows: readonly (readonly string[])[]): string =>
  `\ufeff${rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('')}`;

function csvCell(text: string): string {
  // A spreadsheet would take these for formulas and run them; marks like -K1 and +24 V are not meant so.
  const tame = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(tame) ? `"${tame.replaceAll('"', '""')}"` : tame;
}
