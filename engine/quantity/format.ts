/** Quantities for reading (`formatQuantity`) and for keeping (`printQuantity`). */
import { printSaid } from './spread.ts';
import type { Quantity } from './types.ts';
import { unitOf } from './unit.ts';

const SUPERSCRIPT = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const NOT_FINITE = 'no finite value';

const decade = (value: number): number => Number(value.toExponential().split('e')[1]);

function withPowerOfTen(value: number, decimals: number): string {
  const [head, exponent] = value.toExponential(Math.min(15, Math.max(0, decimals))).split('e') as [
    string,
    string,
  ];
  const raised = [...String(Math.abs(Number(exponent)))].map((d) => SUPERSCRIPT[Number(d)]).join('');
  return `${trimZeros(head)} × 10${Number(exponent) < 0 ? '⁻' : ''}${raised}`;
}

const trimZeros = (text: string): string =>
  text.includes('.') ? text.replace(/0+$/, '').replace(/\.$/, '') : text;

/** Whole numbers stay whole; a power of ten only below a hundred-thousandth and from a thousand million on. */
export function formatNumber(value: number, digits = 4): string {
  if (!Number.isFinite(value)) return NOT_FINITE;
  if (value === 0) return '0';
  const exact = Math.min(15, Math.max(1, Math.round(digits)));
  const rounded = Number(value.toPrecision(exact));
  const size = Math.abs(rounded);
  if (size < 1e-5 || size >= 1e9) return withPowerOfTen(value, exact - 1);
  // Digits before the point are never cut: 16384 counts are not 16380.
  return trimZeros(value.toFixed(Math.max(0, exact - 1 - decade(rounded)))).replace(/^-0$/, '0');
}

/** The decimal place of the last digit worth showing of a doubt: one digit where that says the same within a twentieth, else two. */
function doubtPlace(half: number): number {
  const short = Number(half.toPrecision(1));
  return Math.abs(short - half) <= half / 20 ? decade(half) : decade(half) - 1;
}

/** Ties go away from zero as on paper, though 0.045 is a little less in binary. */
const roundAt = (exact: number, place: number): number => {
  const value = exact * (1 + 1e-14);
  const rounded =
    place <= 0 ? Number(value.toFixed(Math.min(100, -place))) : Math.round(value / 10 ** place) * 10 ** place;
  return rounded === 0 ? 0 : rounded;
};

function withDoubt(value: number, half: number, most: number): string {
  const fine = doubtPlace(half);
  const place = value === 0 ? fine : Math.max(fine, Math.min(decade(value) - most + 1, 0));
  // Below the twelfth digit a doubt says nothing that a reader could use.
  if (value !== 0 && place < decade(value) - 12) return formatNumber(value, 12);
  const v = roundAt(value, place);
  // A doubt below the last figure shown is not shown as none.
  const h = place > fine ? Math.max(roundAt(half, place), 10 ** place) : roundAt(half, place);
  const size = Math.max(Math.abs(v), h);
  if (size < 1e-5 || size >= 1e9) {
    const top = decade(size);
    const decimals = Math.min(15, Math.max(0, top - place));
    const fixed = (n: number): string => (n / 10 ** top).toFixed(decimals);
    const scaled = withPowerOfTen(10 ** top, 0).replace(/^1 /, '');
    return `(${fixed(v)} ± ${fixed(h)}) ${scaled}`;
  }
  const decimals = Math.min(20, Math.max(0, -place));
  return `${v.toFixed(decimals)} ± ${h.toFixed(decimals)}`;
}

/** The number a value in SI has in a unit. Throws RangeError for an unknown unit. */
export function convert(valueSI: number, unitText: string): number {
  const unit = unitOf(unitText);
  return valueSI / unit.scale - unit.offset;
}

/** The SI value of a number in a unit. Throws RangeError for an unknown unit. */
export function toSI(number: number, unitText: string): number {
  const unit = unitOf(unitText);
  return (number + unit.offset) * unit.scale;
}

/**
 * A value in SI as text in a unit: '2667 r/min', '1.32 ± 0.06 Ω'. With `half` (SI) the value ends where the doubt begins;
 * otherwise `digits` significant digits (4). `most`: no more digits than that though the doubt would leave more; the doubt is
 * then rounded up to the last of them. Throws RangeError for an unknown unit.
 */
export function formatQuantity(
  valueSI: number,
  unitText: string,
  options: {
    readonly half?: number | undefined;
    readonly digits?: number | undefined;
    readonly most?: number | undefined;
  } = {},
): string {
  const unit = unitOf(unitText);
  const value = valueSI / unit.scale - unit.offset;
  const half = (options.half ?? 0) / unit.scale;
  if (!Number.isFinite(value) || !Number.isFinite(half)) return NOT_FINITE;
  const number =
    half > 0
      ? withDoubt(value, half, options.most ?? Number.POSITIVE_INFINITY)
      : formatNumber(value, options.digits);
  return unit.symbol === '1' ? number : `${number} ${unit.symbol}`;
}

/** Fifteen digits: the last bits of a conversion are no digits anybody typed. */
const digits15 = (value: number): string => String(Number(value.toPrecision(15)));

/** Canonical text that reads back as the same value, half width, unit, spread and starts, to twelve digits. */
export function printQuantity(quantity: Quantity): string {
  const { unit } = quantity;
  const suffix = unit.symbol === '1' ? '' : ` ${unit.symbol}`;
  const starts = quantity.starts === undefined ? '' : `${quantity.starts}-start ${quantity.of ?? 'pitch'} `;
  const exact = quantity.value / unit.scale - unit.offset;
  // The offset of a thermometer scale has taken the last digits: ten decimals are what remains.
  const number = digits15(unit.offset === 0 ? exact : Number(exact.toFixed(10)));
  const value = `${starts}${number}${suffix}`;
  const { half, spread } = quantity;
  if (half === 0) return value;
  const typed = spread?.kind === 'resolution' ? 2 * half : half;
  const said = spread ? printSaid(spread, half) : '';
  return `${value} ± ${digits15(typed / unit.scale)}${suffix}${said}`;
}
