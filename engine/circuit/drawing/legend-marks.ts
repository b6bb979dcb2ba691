/** What is drawn in a diagram besides symbols: marks of findings, how wires go on, terminals of strips. */
import { type Element, element, type Node } from '../../refit/sheets/node.ts';
import { SIGN } from './marks.ts';
import { circle, path, WIDE } from './symbols/types.ts';

export interface MarkEntry {
  readonly name: string;
  readonly picture: Element;
}

export const shifted = (x: number, children: readonly Node[]): Element =>
  element('g', { class: 'symbol', transform: `translate(${x} 0)` }, ...children);

const middle = WIDE / 2;
const sign = (text: string): Element =>
  element('text', { class: 'sign', x: String(middle), y: '4', 'text-anchor': 'middle' }, text);
const port = element('circle', { class: 'end', cx: String(middle), cy: '0', r: '2' });

export const MARKS: readonly MarkEntry[] = [
  { name: 'beside a name or a wire: something there fails', picture: shifted(0, [sign(SIGN.fails)]) },
  { name: 'beside a name or a wire: something there is tight', picture: shifted(0, [sign(SIGN.tight)]) },
  { name: 'beside a name or a wire: something is not known yet', picture: shifted(0, [sign(SIGN.unknown)]) },
  {
    name: 'terminal of which a finding speaks (fails, tight or not known)',
    picture: shifted(0, [
      path(`M${middle} 0H40`),
      port,
      element('circle', { class: 'ring fails', cx: String(middle), cy: '0', r: '4' }),
    ]),
  },
  {
    name: 'bold frame or bold wire: something there fails',
    picture: shifted(0, [element('g', { class: 'fails' }, path('M4 -10H36V10H4Z', { class: 'line frame' }))]),
  },
  {
    name: 'dashed wire: something of it is not known yet',
    picture: shifted(0, [element('g', { class: 'unknown' }, path('M0 0H40', { class: 'line wire' }))]),
  },
  {
    name: 'terminal with a photo on which it is pinned',
    picture: shifted(0, [path('M0 0H20'), port, path('M17 4h6v5h-6z', { class: 'pin' })]),
  },
  {
    name: 'ends here: what is common to many (+24 V, 0 V, earth), or goes on where the arrow says',
    picture: shifted(0, [path('M4 0H24M24 -9V9')]),
  },
  {
    name: 'terminal of a strip, in line with its wire: strip, number, then the wire',
    picture: shifted(0, [path('M4 0H16M16 -9V9M16 0H24.800'), circle(28, 0, 3.2)]),
  },
  {
    name: 'wires that meet at a terminal',
    picture: shifted(0, [
      path('M0 0H40M20 0V10'),
      element('circle', { class: 'solid', cx: '20', cy: '0', r: '2.4' }),
    ]),
  },
];
