/**
 * One current for good on the drives' bus. Each drive takes what has been said of it, or, where all axes together come to
 * more, its share of that; fuses, wires, bridge, transformer and socket all go by it. Only ripple goes by the peak.
 */
import type { Terminal } from '../wiring/types.ts';

export const FOR_GOOD =
  'current for good, since heat goes by it: of the drives what has been said, or six tenths of the peaks of all axes together where that is more (common practice, no source)';

/** What has been said of one drive, or not. */
export interface Said {
  /** Its plus terminal. */
  readonly id: string;
  /** A. */
  readonly amps: number | undefined;
}

/** Of the feeds of a bus those of servo and stepper drives: an inverter's motor is none of the axes. */
export const saidOf = (
  terminals: Iterable<Terminal>,
  kindOf: (device: string) => string | undefined,
): readonly Said[] =>
  [...terminals].flatMap(({ id, device, nature }) =>
    nature.kind === 'feed' &&
    nature.role === 'power' &&
    nature.pole === 'plus' &&
    kindOf(device) !== 'inverter'
      ? [{ id, amps: nature.amps }]
      : [],
  );

export const sumOf = (said: readonly Said[]): number =>
  said.reduce((sum, { amps }) => sum + Math.max(0, amps ?? 0), 0);

/**
 * Amperes by the plus terminal, where they are other than said.
 *
 * @param steady all axes together for good, A; undefined where it has not been worked out
 */
export function sharesOf(said: readonly Said[], steady: number | undefined): ReadonlyMap<string, number> {
  const sum = sumOf(said);
  if (steady === undefined || steady <= sum) return new Map();
  const unsaid = said.filter(({ amps }) => amps === undefined);
  // Those of which nothing has been said take what the others leave.
  if (unsaid.length > 0 || sum === 0) {
    const takers = unsaid.length > 0 ? unsaid : said;
    return new Map(takers.map(({ id }) => [id, (steady - sum) / takers.length]));
  }
  return new Map(said.map(({ id, amps }) => [id, (Math.max(0, amps!) * steady) / sum]));
}
