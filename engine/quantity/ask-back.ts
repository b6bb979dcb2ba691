/**
 * Numbers so far outside what is usual that a slip of the hand is likelier than the thing. They are not refused: the person is
 * asked back, in the same words on the command line and on the screen.
 */
import { convert, formatNumber, formatQuantity } from './format.ts';
import type { Span } from './plausible.ts';
import { parseQuantity } from './quantity.ts';
import { ladderOf } from './readable.ts';
import type { Quantity } from './types.ts';
import { parseUnit } from './unit.ts';

/** What a number is asked to be. Without a span and without a usual value nothing is ever asked back. */
export interface Usual {
  /** 'root diameter'. */
  readonly name: string;
  readonly unit: string;
  readonly plausible?: Span | undefined;
  /** One usual value, where no span is known; '' is none. */
  readonly usual?: string | undefined;
  /** It may be nought, so that nothing is too small for it. */
  readonly mayBeNought?: boolean | undefined;
}

/** Times outside a span, or away from a single usual value, from which on somebody is asked back. Habits, no source. */
const FAR = 10;
const FAR_FROM_ONE = 100;

/** A number with its unit, before it is a value. */
type Typed = readonly [number: number, unit: string];

interface Ends {
  /** In the unit of what is asked. */
  readonly low: number;
  readonly high: number;
  readonly says: string;
  readonly times: number;
}

/** A number in a unit that is counted from its own nought: 80 °C is not a quarter of 320 K more than 0 °C. */
function read(text: string, unit: string): number {
  const parsed = parseQuantity(text, unit);
  return parsed.ok ? convert(parsed.value.value, unit) : Number.NaN;
}

function endsOf({ plausible, usual, unit }: Usual): Ends | undefined {
  if (plausible) {
    const [low, high] = [read(plausible[0], unit), read(plausible[1], unit)];
    return { low, high, says: `${plausible[0]} to ${plausible[1]}`, times: FAR };
  }
  const one = usual ? read(usual, unit) : Number.NaN;
  return Number.isFinite(one) && one !== 0
    ? { low: one, high: one, says: usual!, times: FAR_FROM_ONE }
    : undefined;
}

const isAbove = (number: number, { low, high, times }: Ends): boolean =>
  Math.abs(number) > times * Math.max(Math.abs(low), Math.abs(high)) * (1 + 1e-9);

function isFar(number: number, ends: Ends, mayBeNought = false): boolean {
  if (isAbove(number, ends)) return true;
  return (
    !mayBeNought && ends.low > 0 && number !== 0 && Math.abs(number) < (ends.low / ends.times) * (1 - 1e-9)
  );
}

/**
 * What to ask a person who typed something far outside what is usual: what was understood, what is usual, and what may have
 * been meant; undefined where it is not far. `value` is SI; `typed` is how it was read, for its unit.
 */
export function askBack(of: Usual, value: number, typed?: Quantity): string | undefined {
  const ends = endsOf(of);
  if (!ends || !isFar(convert(value, of.unit), ends, of.mayBeNought)) return undefined;
  const unit = typed && parseUnit(typed.unit.symbol).ok ? typed.unit.symbol : of.unit;
  const meant = meantOf([convert(value, unit), unit], of.unit, ends);
  const where = ends.times === FAR ? 'outside' : 'from';
  return `${formatQuantity(value, unit, { digits: 6 })} is far ${where} what is usual for ${nameIt(of.name)}, ${ends.says}. ${
    meant ? `Did you mean ${meant}?` : 'Is a digit or the unit wrong?'
  }`;
}

/** 'the root diameter'; what a name adds in brackets or behind a colon or comma is no part of a sentence. */
function nameIt(name: string): string {
  const short = name.split(/[:(,]/)[0]!.trim();
  return /^(?:how|from|what|where)\b/i.test(short) ? `“${short}”` : `the ${short}`;
}

/** The same digits with another unit or another place of the point, where that is usual. */
function meantOf([number, unit]: Typed, asked: string, ends: Ends): string | undefined {
  const room = ends.times === FAR ? 1 : FAR;
  const fits = ([n, u]: Typed): boolean => {
    const there = read(`${formatNumber(n, 12)} ${u === '1' ? '' : u}`, asked);
    return there >= ends.low / room && there <= ends.high * room;
  };
  const shifted = [10, 100, 1e4, 1e5, 1e6].map((times) => number / times).filter(Number.isInteger);
  const candidates: readonly Typed[] = [
    [number, asked],
    [number / 1000, unit],
    [number * 1000, unit],
    ...[...ladderOf(asked), ...ladderOf(unit)].map((u): Typed => [number, u]),
    ...shifted.map((n): Typed => [n, unit]),
  ];
  const found = candidates.find(fits);
  return found && `${formatNumber(found[0], 12)}${found[1] === '1' ? '' : ` ${found[1]}`}`;
}
