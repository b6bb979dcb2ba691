/** What is typed about the machine. */
import { parseQuantity, type Result } from '../../../engine/quantity/index.ts';
import { oddWords } from '../../../engine/threads/index.ts';

export const FIELDS = [
  ['rapid', 'Fastest speed of the slide', 'm/min', '3 m/min', true],
  ['accel', 'Its acceleration', 'm/s²', '0.5 m/s²', true],
  ['gain', 'Gain of its loop', '1/s', '', false],
  ['spindle', 'Highest spindle speed', 'r/min', '2000 r/min', false],
  ['length', 'Length of thread', 'mm', '20 mm', true],
  ['room', 'Room before the thread', 'mm', '', false],
] as const;
export type Field = (typeof FIELDS)[number][0];

/** A value above zero, nothing for an empty field that may be empty, or why not. */
export function readField(text: string, unit: string, needed: boolean): Result<number | undefined> {
  if (text.trim() === '' && !needed) return { ok: true, value: undefined };
  const read = parseQuantity(text, unit);
  if (!read.ok) return read;
  return read.value.value > 0 && read.value.value < 1e9
    ? { ok: true, value: read.value.value }
    : {
        ok: false,
        problem: {
          code: 'out-of-domain',
          message: 'It must be above zero, and no more than a machine can have.',
        },
      };
}

/** What is asked back of a number that can be read but is hardly what was meant. */
export const askField = (field: Field, text: string): string | undefined =>
  oddWords({ [field]: text })[0]?.sentence;

export type Fields = Readonly<Record<Field, Result<number | undefined>>>;
