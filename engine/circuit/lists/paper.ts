/** Lists on paper: black on white, A4, the head again on every page, and one HTML file that needs nothing else. */
import { type Element, element, toHtml } from '../../refit/sheets/node.ts';
import { type List, type ListGroup, sharedLines } from './types.ts';

export const PAPER_STYLE = `
@page { size: A4; margin: 12mm 12mm 14mm; }
.wiring-paper { background: #fff; color: #111; max-width: 186mm; margin: 0 auto; font: 9pt/1.3 system-ui, sans-serif; overflow-wrap: anywhere; }
.wiring-paper * { box-sizing: border-box; color: #111; }
.wiring-paper h1 { font-size: 15pt; margin: 0 0 2mm; }
.wiring-paper h2 { font-size: 11pt; margin: 5mm 0 1mm; break-after: avoid; }
.wiring-paper p { margin: 0 0 1.5mm; max-width: none; }
.wiring-paper .note { font-size: 8.5pt; break-after: avoid; }
.wiring-paper .care { border-left: 1.2mm solid #111; padding-left: 2mm; }
.wiring-paper table { width: 100%; border-collapse: collapse; font-size: 8.5pt; }
.wiring-paper th, .wiring-paper td { border: 0.25mm solid #666; padding: 0.8mm 1.2mm; text-align: left; vertical-align: top; font-size: inherit; background: none; }
.wiring-paper th { overflow-wrap: normal; }
.wiring-paper thead { display: table-header-group; }
.wiring-paper tr { break-inside: avoid; }
.wiring-paper .beside-2 { columns: 2; column-gap: 5mm; }
.wiring-paper .beside-3 { columns: 3; column-gap: 4mm; }
.wiring-paper .tick { width: 8mm; }
.wiring-paper .done { display: inline-block; width: 3.4mm; height: 3.4mm; border: 0.3mm solid #111; }
.wiring-paper .cut-strips { display: flex; flex-wrap: wrap; }
.wiring-paper .cut-strip { border: 0.2mm dashed #666; min-width: 14mm; padding: 0.8mm 1.5mm; text-align: center; font-weight: 700; break-inside: avoid; }
.wiring-paper .cut-strip small { display: block; font-weight: 400; font-size: 6.5pt; }
.wiring-paper .foot { margin-top: 4mm; font-size: 8pt; }
`;

/** The list as a page; each line with a square to tick when it is done. */
export function listPaper(name: string, list: List, today: string): Element {
  return element(
    'div',
    { class: 'wiring-paper' },
    element('h1', {}, `${list.title}: ${name}`),
    element('p', { class: 'care' }, `${CARE}${list.caution ? ` ${list.caution}` : ''}`),
    element('p', { class: 'note' }, list.about),
    list.groups.map((group) =>
      element(
        'section',
        {},
        element('h2', {}, group.title),
        (group.cautions ?? []).map((each) => element('p', { class: 'care' }, each)),
        group.note ? element('p', { class: 'note' }, group.note) : undefined,
        sharedLines(group, list.columns).map((each) => element('p', { class: 'note' }, each)),
        list.id === 'labels' ? strips(group) : table(list, group),
      ),
    ),
    element('p', { class: 'foot' }, `As of ${today}. After a change of the wiring, print it again.`),
  );
}

const CARE =
  'Take care. Before you touch a wire: main switch off and locked, wait until capacitors have discharged, and try with a meter that it is dead. The fixed mains installation belongs to a licensed electrician.';

/** Columns in which nothing stands are left out; the last of a list to measure by is there to be written in. */
function table({ id, columns }: List, { rows, shared = [] }: ListGroup): Element {
  const isUsed = columns.map(
    (_, at) =>
      (rows.some(({ cells }) => cells[at] !== '') && !shared.includes(at)) ||
      (id === 'ring-out' && at === columns.length - 1),
  );
  const widest = Math.max(
    ...rows.map(({ cells }) => cells.reduce((sum, cell, at) => sum + (isUsed[at] ? cell.length : 0), 0)),
  );
  const table = tableOf(columns, rows, isUsed);
  // Short lines stand side by side, as a sheet is carried along the machine.
  const isOne = isUsed.filter(Boolean).length <= 2;
  const beside =
    id !== 'ring-out' || rows.length < MANY
      ? 1
      : isOne && widest <= NARROW[3]
        ? 3
        : widest <= NARROW[2]
          ? 2
          : 1;
  return beside === 1 ? table : element('div', { class: `beside-${beside}` }, table);
}

/** Lines from which on short ones stand side by side, and letters in a line that fit so. */
const MANY = 8;
const NARROW = { 2: 44, 3: 22 } as const;

function tableOf(columns: readonly string[], rows: ListGroup['rows'], isUsed: readonly boolean[]): Element {
  return element(
    'table',
    {},
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        element('th', { scope: 'col', class: 'tick' }, 'Done'),
        columns.flatMap((column, at) => (isUsed[at] ? element('th', { scope: 'col' }, column) : [])),
      ),
    ),
    element(
      'tbody',
      {},
      rows.map(({ cells }) =>
        element(
          'tr',
          {},
          element('td', { class: 'tick' }, element('span', { class: 'done' })),
          cells.flatMap((cell, at) => (isUsed[at] ? element('td', {}, cell) : [])),
        ),
      ),
    ),
  );
}

const strips = ({ rows }: ListGroup): Element =>
  element(
    'div',
    { class: 'cut-strips' },
    rows.map(({ cells: [label = '', on = ''] }) =>
      element('span', { class: 'cut-strip' }, label, element('small', {}, on)),
    ),
  );

/** No script, nothing from elsewhere: the policy says so to the browser that opens it. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

export function listDocument(name: string, list: List, today: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="content-security-policy" content="${POLICY}">
${toHtml(element('title', {}, `${list.title}: ${name}`))}
<style>body { margin: 0; }${PAPER_STYLE}</style>
</head>
<body>
${toHtml(element('main', {}, listPaper(name, list, today)))}
</body>
</html>
`;
}
