/** Motors, generators, and what feeds them. */
import type { SymbolSpec } from './types.ts';
import { circle, letters, path } from './types.ts';

const SQUARE = 'M-14 -14H14V14H-14Z';
const WAVE = (x: number, y: number) => `M${x - 5} ${y}q2.500 -4 5 0t5 0`;
const MEAN = (x: number, y: number) => `M${x - 5} ${y - 1.5}h10M${x - 5} ${y + 1.5}h3M${x + 2} ${y + 1.5}h3`;

const converter = (name: string, from: string, to: string): SymbolSpec => ({
  name,
  form: 'box',
  draw: () => [path(`${SQUARE}M-14 14L14 -14`), path(from), path(to)],
});

export const machines = {
  motor: { name: 'motor', form: 'box', draw: () => [circle(0, 0, 14), letters(0, 4, 'M')] },
  'motor-three': {
    name: 'motor for three phases',
    form: 'box',
    draw: () => [circle(0, 0, 14), letters(0, 1, 'M'), letters(0, 10, '3~')],
  },
  'motor-direct': {
    name: 'motor for direct current',
    form: 'box',
    draw: () => [circle(0, 0, 14), letters(0, 2, 'M'), path(MEAN(0, 7))],
  },
  'motor-step': {
    name: 'stepping motor',
    form: 'box',
    draw: () => [circle(0, 0, 14), letters(0, 2, 'M'), path('M-6 9H-2V6H2V9H6')],
  },
  tacho: { name: 'tacho generator', form: 'box', draw: () => [circle(0, 0, 14), letters(0, 4, 'TG')] },
  transformer: { name: 'transformer', form: 'box', draw: () => [circle(-5, 0, 9), circle(5, 0, 9)] },
  'power-supply': converter('supply: from alternating to direct voltage', WAVE(-6, -7), MEAN(7, 8)),
  drive: converter('drive: feeds and steers a motor', MEAN(-6, -7), WAVE(7, 8)),
  inverter: converter('frequency inverter', WAVE(-6, -7), WAVE(7, 8)),
  'direct-converter': converter('converter for direct voltage', MEAN(-6, -7), MEAN(7, 8)),
  filter: {
    name: 'mains filter',
    form: 'box',
    draw: () => [path(`${SQUARE}${WAVE(0, -6)}${WAVE(0, 0)}${WAVE(0, 6)}M-3 3L3 -3M-3 -3L3 -9`)],
  },
  mains: {
    name: 'where the supply comes in',
    form: 'box',
    draw: () => [circle(0, 0, 12), path(`${WAVE(0, 0)}`)],
  },
  battery: { name: 'battery', form: 'box', draw: () => [path('M-14 0H-3M-3 -11V11M3 -5V5M3 0H14')] },
} as const satisfies Record<string, SymbolSpec>;
