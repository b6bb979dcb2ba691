/** The cuts people ask about: their sheet, the words for its symbols, and what is usual. */
import { cutBoring } from '../handbook/cut-boring.ts';
import { cutDrilling } from '../handbook/cut-drilling.ts';
import { cutMilling } from '../handbook/cut-milling.ts';
import { cutParting } from '../handbook/cut-parting.ts';
import { cutThreading } from '../handbook/cut-threading.ts';
import { cutTurning } from '../handbook/cut-turning.ts';
import { tapTorque } from '../handbook/tap-torque.ts';
import type { Sheet } from '../sheet/index.ts';

export const OPERATIONS = [
  'turning',
  'boring',
  'parting',
  'drilling',
  'milling',
  'threading',
  'tapping',
] as const;
export type Operation = (typeof OPERATIONS)[number];

export interface Shape {
  readonly sheet: Sheet;
  /** The word people type, and the symbol it is. */
  readonly words: Readonly<Record<string, string>>;
  /** What is usual where nothing was said, with why. */
  readonly usual: Readonly<Record<string, readonly [text: string, why: string]>>;
  /** Symbol of the feed that may be lowered to stay within a limit. */
  readonly feed?: string;
  /** Symbol of the diameter from which a cutting speed follows. */
  readonly diameter: string;
  readonly needsThread?: boolean;
}

const EFFICIENCY = ['80 %', 'belts and gears'] as const;
const WORN = ['1.3', 'a tool near the end of its life'] as const;
const PUSH = {
  k_f: ['0.5', 'feed force of a sharp tool, upper end'],
  k_p: ['0.4', 'push of a sharp tool, upper end'],
} as const;
const TOOL = { eta: EFFICIENCY, k_w: WORN } as const;
const general = { efficiency: 'eta', wear: 'k_w' } as const;

export const SHAPES: Readonly<Record<Operation, Shape>> = {
  turning: {
    sheet: cutTurning as Sheet,
    words: {
      diameter: 'D',
      depth: 'ap',
      feed: 'f',
      speed: 'vc',
      edge: 'kappa',
      feedshare: 'k_f',
      pushshare: 'k_p',
      ...general,
    },
    usual: { kappa: ['95 deg', 'a usual turning tool'], ...PUSH, ...TOOL },
    feed: 'f',
    diameter: 'D',
  },
  boring: {
    sheet: cutBoring as Sheet,
    words: {
      diameter: 'D',
      depth: 'ap',
      feed: 'f',
      speed: 'vc',
      edge: 'kappa',
      bar: 'd_b',
      overhang: 'L',
      feedshare: 'k_f',
      pushshare: 'k_p',
      ...general,
    },
    usual: { kappa: ['91 deg', 'a usual boring bar'], ...PUSH, ...TOOL },
    feed: 'f',
    diameter: 'D',
  },
  parting: {
    sheet: cutParting as Sheet,
    words: { diameter: 'D', width: 'w', feed: 'f', speed: 'vc', feedshare: 'k_f', ...general },
    usual: { k_f: ['0.6', 'push of a parting blade, upper end'], ...TOOL },
    feed: 'f',
    diameter: 'D',
  },
  drilling: {
    sheet: cutDrilling as Sheet,
    words: { diameter: 'D', feed: 'f', speed: 'vc', point: 'sigma', ...general },
    usual: { sigma: ['118 deg', 'a usual twist drill'], ...TOOL },
    feed: 'f',
    diameter: 'D',
  },
  milling: {
    sheet: cutMilling as Sheet,
    words: { diameter: 'D', teeth: 'z', feed: 'fz', width: 'ae', depth: 'ap', speed: 'vc', ...general },
    usual: TOOL,
    feed: 'fz',
    diameter: 'D',
  },
  threading: {
    sheet: cutThreading as Sheet,
    words: {
      depth: 'a',
      infeed: 'da',
      flanks: 'q',
      speed: 'vc',
      feedshare: 'k_f',
      pushshare: 'k_p',
      ...general,
    },
    usual: { q: ['2', 'straight in'], ...PUSH, ...TOOL },
    diameter: 'd',
    needsThread: true,
  },
  tapping: {
    sheet: tapTorque as Sheet,
    words: { hole: 'D0', speed: 'n' },
    usual: {},
    diameter: 'd',
    needsThread: true,
  },
};
