/** The symbol under which one terminal is drawn. */

import { type Element, element } from '../../refit/sheets/node.ts';
import type { Device, ReadWiring } from '../wiring/types.ts';
import { groupsOf } from './groups.ts';
import { SYMBOLS, type SymbolName, WIDE } from './symbols/index.ts';

export function symbolOf(terminal: string, device: Device, read: ReadWiring): SymbolName | undefined {
  for (const group of groupsOf(device, read)) {
    if ('poles' in group && group.poles.some((pole) => pole.includes(terminal))) return group.symbol;
    if ('points' in group && group.points.includes(terminal)) return group.symbol;
    if ('box' in group && group.box.includes(terminal)) return group.signs?.[terminal] ?? group.symbol;
  }
  return undefined;
}

const SIZE = { width: 64, height: 48 };

/** One symbol as a picture of its own, with its name in words for those who do not see it. */
export function symbolPicture(symbol: SymbolName): Element {
  const { name, form, draw } = SYMBOLS[symbol];
  const { width, height } = SIZE;
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      class: 'diagram one-symbol',
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'aria-label': `Symbol: ${name}`,
    },
    element(
      'g',
      {
        class: 'symbol',
        transform: `translate(${form === 'pole' ? (width - WIDE) / 2 : width / 2} ${height / 2 + 4})`,
      },
      draw(),
    ),
  );
}
