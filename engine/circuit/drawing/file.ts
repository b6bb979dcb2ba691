/** Diagrams and their legend as files that need nothing else. */
import { type Element, element, toHtml } from '../../refit/sheets/node.ts';
import { type MarkEntry as Entry, MARKS, shifted } from './legend-marks.ts';
import { wrapped } from './measure.ts';
import { type PictureOptions, pictureOfSheet, sheetSize } from './picture.ts';
import { FILE_STYLE } from './style.ts';
import { SYMBOLS, type SymbolName, WIDE } from './symbols/index.ts';
import type { Plan, Sheet } from './types.ts';

/** Units of the drawing to a millimetre. */
const UNITS = 4;

/** A mark by which a later run knows its own file from a stranger's. */
export const MADE_BY = '<!-- drawn by Fettle from a refit; drawn again, it is written over -->';

const asFile = (picture: Element, width: number, height: number): string => {
  const withStyle = {
    ...picture,
    attributes: { ...picture.attributes, width: `${width / UNITS}mm`, height: `${height / UNITS}mm` },
    children: [element('style', {}, ''), ...picture.children],
  };
  // Style sheets hold '>' that must not be escaped; they are our own text.
  return `${MADE_BY}\n${toHtml(withStyle).replace('<style></style>', () => `<style>${FILE_STYLE}</style>`)}\n`;
};

export function svgFile(sheet: Sheet, options: PictureOptions = {}): string {
  const { width, height } = sheetSize(sheet);
  return asFile(pictureOfSheet(sheet, options), width, height);
}

/** Symbols that a plan uses, in the order of the table of symbols. */
export function symbolsOf({ devices }: Plan): readonly SymbolName[] {
  const used = new Set<SymbolName>(
    devices.flatMap(({ groups }) =>
      groups.flatMap((group) => [group.symbol, ...('box' in group ? Object.values(group.signs ?? {}) : [])]),
    ),
  );
  return (Object.keys(SYMBOLS) as SymbolName[]).filter((name) => used.has(name));
}

const COLUMN = 300;
const LINE = 44;
/** Letters of a name that fit beside its symbol. */
const LETTERS = 42;

/** Every symbol with its name in words, and the marks that findings leave. */
export function legend(names: readonly SymbolName[], columns = 3): Element {
  const all: readonly Entry[] = [
    ...names.map((each): Entry => {
      const { name, form, draw } = SYMBOLS[each];
      return { name, picture: shifted(form === 'pole' ? 0 : WIDE / 2, draw()) };
    }),
    ...MARKS,
  ];
  const rows = Math.ceil(all.length / columns);
  const [width, height] = [columns * COLUMN, rows * LINE + 40];
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'diagram legend',
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'aria-label': `Symbols: ${all.map(({ name }) => name).join('; ')}`,
    },
    element('text', { class: 'sheet-title', x: '12', y: '24' }, 'Symbols and marks'),
    all.map(({ name, picture }, at) => {
      const x = Math.floor(at / rows) * COLUMN + 12;
      const y = (at % rows) * LINE + 60;
      const lines = wrapped(name, LETTERS);
      return element(
        'g',
        { transform: `translate(${x} ${y})` },
        picture,
        lines.map((line, n) =>
          element(
            'text',
            { class: 'small', x: '54', y: String(3 + 11 * (n - (lines.length - 1) / 2)) },
            line,
          ),
        ),
      );
    }),
  );
}

export function legendFile(plan: Plan): string {
  const picture = legend(symbolsOf(plan));
  const [, , width, height] = picture.attributes.viewBox!.split(' ').map(Number);
  return asFile(picture, width!, height!);
}
