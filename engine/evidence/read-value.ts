/** One typed text as a number with its doubt. */
import {
  ok,
  parseQuantity,
  type Quantity,
  type Result,
  refuse,
  standardUncertainty,
} from '../quantity/index.ts';
import { type Accuracy, limitsOf } from './accuracy.ts';
import { doubtOf } from './estimate.ts';
import type { Estimate, Part, QuantityAsked } from './types.ts';

/** A number alone: the unit stands at the head of the column. */
const LONE = /^[-+−]?\s*[\d.,]+(?:e[-+]?\d+)?$/i;
const NUMBER = /\d[\d.,]*(?:e([-+]?\d+))?/i;

/** Numbers beyond these are slips of the power of ten, whatever they count. */
const LARGEST = 1e30;
const SMALLEST = 1e-30;

/** Worth of the last digit typed, SI; 0 where the text has none to speak of: a fraction, or a plain 0 as on a zeroed dial. */
function digitOf(text: string, { unit }: Quantity): number {
  if (/\d\s*\/\s*\d/.test(text) || /^[-+−]?0(?![\d.,])/.test(text)) return 0;
  const found = NUMBER.exec(text);
  if (!found) return 0;
  const decimals = (/[.,](\d+)/.exec(found[0].replace(/e.*$/i, '')) ?? ['', ''])[1]!.length;
  return 10 ** (Number(found[1] ?? 0) - decimals) * unit.scale;
}

const WORDS = { any: '', positive: 'must be above zero', 'not negative': 'must not be below zero' } as const;

export interface ReadValue extends Estimate {
  readonly digit: number;
}

/**
 * `id` names the value in its sources of doubt. With `accuracy` (and its name) the instrument's limits are its doubt; without,
 * a ± that was typed; without that, for readings, the last digit.
 */
export function readValue(
  asked: QuantityAsked,
  text: string,
  id: string,
  accuracy: { readonly of: Accuracy; readonly id: string; readonly name: string } | undefined,
  isReading: boolean,
): Result<ReadValue> {
  const typed = text.trim();
  const withUnit = asked.unit !== '1' && LONE.test(typed) ? `${typed} ${asked.unit}` : typed;
  const read = parseQuantity(withUnit, asked.unit);
  if (!read.ok) return read;
  const quantity = read.value;
  const { value } = quantity;
  const lawful = asked.domain === 'positive' ? value > 0 : asked.domain !== 'not negative' || value >= 0;
  if (!lawful)
    return refuse({
      code: 'out-of-domain',
      message: `“${typed.slice(0, 40)}” cannot be: the ${asked.name} ${WORDS[asked.domain ?? 'any']}.`,
    });
  const size = Math.max(Math.abs(value), quantity.half);
  if (size > LARGEST || (value !== 0 && Math.abs(value) < SMALLEST))
    return refuse({
      code: 'not-finite',
      message: `“${typed.slice(0, 40)}” is too ${size > LARGEST ? 'large' : 'small'} to have been measured; is the power of ten right?`,
    });
  const digit = digitOf(typed, quantity);
  if (asked.whole) {
    const count = value / quantity.unit.scale;
    if (Math.abs(count - Math.round(count)) > 1e-9 * Math.max(1, Math.abs(count)))
      return refuse({
        code: 'out-of-domain',
        message: `“${typed.slice(0, 40)}” is not a whole number, and the ${asked.name} is counted.`,
      });
  }
  return ok({ value, digit, parts: partsOf(asked, quantity, digit, id, accuracy, isReading) });
}

function partsOf(
  asked: QuantityAsked,
  quantity: Quantity,
  digit: number,
  id: string,
  accuracy: { readonly of: Accuracy; readonly id: string; readonly name: string } | undefined,
  isReading: boolean,
): readonly Part[] {
  const typed = typedDoubt(asked, quantity);
  if (typed > 0) return [doubtOf({ id, name: asked.name, kind: kindOf(quantity) }, typed)];
  if (accuracy) {
    const amount = limitsOf(accuracy.of, quantity.value, digit) / Math.sqrt(3);
    return amount > 0 ? [doubtOf({ id: accuracy.id, name: accuracy.name, kind: 'instrument' }, amount)] : [];
  }
  if (!isReading || asked.whole || digit === 0) return [];
  return [
    doubtOf(
      { id: `digit:${id}`, name: `last digit of the ${asked.name}`, kind: 'resolution' },
      digit / Math.sqrt(12),
    ),
  ];
}

/** What a typed ± was said to be; a limit where nothing was said. */
function kindOf({ spread }: Quantity): Part['kind'] {
  return spread === undefined || spread.kind === 'expanded' || spread.kind === 'readings'
    ? 'tolerance'
    : spread.kind;
}

/** Standard uncertainty of a ± as typed, SI. */
const typedDoubt = ({ doubt }: QuantityAsked, quantity: Quantity): number =>
  standardUncertainty(quantity, doubt === 'measured' ? 'measured' : 'datasheet');
