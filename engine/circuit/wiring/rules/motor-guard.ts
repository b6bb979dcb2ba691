/** A motor and the circuit breaker with a dial that stands before it: what it is set to, and whether it sits the start out. */
import { figure, found, PRACTICE } from '../check/rule.ts';
import { amps, volts } from '../check/say.ts';
import type { View } from '../check/view.ts';
import type { Mains, Protection, WiringFinding } from '../types.ts';
import { START } from './motor-start-current.ts';

/** Times what it is set to that a thermal release carries for two hours, and that trips it within two hours. */
export const NEVER = 1.05;
const SURELY = 1.2;
/** Set this much below the plate and it still need not trip at the plate's current. */
const BELOW = 1 / NEVER;

/** Times the end of its dial from which a magnetic release trips at once, and how far it strays: common practice, no source. */
const INSTANT = 13;
const STRAYS = 0.2;

const RELEASE = 'IEC 60947-4-1, limits of operation of overload releases: 1.05 and 1.2 times (from memory)';

const GUARD = { id: 'motor-guard', title: 'Does the motor circuit breaker guard the motor?' } as const;
const STARTS = { id: 'motor-start', title: 'Does the breaker let the motor start?' } as const;

/**
 * @param motor terminal of the motor
 * @param at an end of the breaker that feeds it
 */
export function guardedMotor(view: View, motor: string, at: string): readonly WiringFinding[] {
  const terminal = view.terminal(motor)!;
  const { amps: rated, volts: line } = terminal.nature as Mains;
  const { device, nature } = view.terminal(at)!;
  const guard = nature as Protection;
  const about = [motor, at, device];
  if (rated === undefined || guard.amps === undefined)
    return [
      found(
        GUARD,
        about,
        'unknown',
        rated === undefined
          ? `${device} is set to the current on the plate of ${terminal.device}, and that has not been said.`
          : `${terminal.device} takes ${amps(rated)}; what ${device} is set to has not been said.`,
        { source: RELEASE, needs: [rated === undefined ? `${motor}.current` : `${at}.current`] },
      ),
    ];
  return [
    setting(about, terminal.device, device, rated, guard as Set),
    starting(about, terminal.device, device, rated, guard as Set),
    ...breaking(about, device, line, guard),
  ];
}

type Set = Protection & { readonly amps: number };

function setting(
  about: readonly string[],
  motor: string,
  device: string,
  rated: number,
  { amps: set, least, most }: Set,
): WiringFinding {
  const figures = [figure('current of the motor', rated, 'A'), figure('set to', set, 'A')];
  const remedy = `Set ${device} to ${amps(rated)}, the current on the plate of ${motor}.`;
  const ends = [least, most].filter((end) => end !== undefined);
  const outside = (value: number) =>
    (least !== undefined && value < least * (1 - 1e-9)) || (most !== undefined && value > most * (1 + 1e-9));
  if (outside(set))
    return found(
      GUARD,
      about,
      'fails',
      `${device} cannot be set to ${amps(set)}: its dial ${ends.length === 2 ? `goes from ${amps(least!)} to ${amps(most!)}` : least === undefined ? `ends at ${amps(most!)}` : `begins at ${amps(least)}`}.`,
      {
        source: RELEASE,
        figures,
        remedy: outside(rated)
          ? `A motor circuit breaker whose dial holds ${amps(rated)}, the current on the plate of ${motor}.`
          : remedy,
      },
    );
  // Too low trips while nothing is wrong; too high lets the winding get too hot. The nearer of the two counts.
  const low = (NEVER * set) / rated;
  const high = (SURELY * rated) / set;
  const says = `${motor} takes ${amps(rated)}; ${device} is set to ${amps(set)}`;
  const more = { source: RELEASE, margin: Math.min(low, high), figures };
  // Set to the plate both ways are as they should be, though the numbers lie close together.
  if (set < rated * (1 - 1e-9))
    return found(
      GUARD,
      about,
      set < rated * BELOW * (1 - 1e-9) ? 'fails' : 'tight',
      `${says}, and may trip while the motor does only what is on its plate.`,
      { ...more, remedy },
    );
  return high < 1
    ? found(GUARD, about, 'fails', `${says}: the winding may burn before it trips.`, { ...more, remedy })
    : set > rated * NEVER * (1 + 1e-9)
      ? found(GUARD, about, 'tight', `${says}, which lets the winding get hotter than it should.`, {
          ...more,
          remedy,
        })
      : found(
          GUARD,
          about,
          'fits',
          `${says}: it carries that and trips before the winding gets too hot.`,
          more,
        );
}

function starting(
  about: readonly string[],
  motor: string,
  device: string,
  rated: number,
  { amps: set, most, instant }: Set,
): WiringFinding {
  const trips = instant ?? INSTANT * (most ?? set);
  const [never, surely] = [trips * (1 - STRAYS), trips * (1 + STRAYS)];
  const [least, peak] = START.map((times) => times * rated) as [number, number];
  const margin = never / peak;
  const verdict = surely < least ? 'fails' : margin < 1 ? 'tight' : 'fits';
  const start = `${motor} takes ${amps(least)} to ${amps(peak)} for some tenths of a second when it starts; ${device}`;
  return found(
    STARTS,
    about,
    verdict,
    verdict === 'fits'
      ? `${start} lets ${amps(never)} pass for that long.`
      : verdict === 'tight'
        ? `${start} may trip at once from ${amps(never)} on: it may go now and then at starting.`
        : `${start} trips at once from ${amps(surely)} on at the latest: the motor never starts.`,
    {
      source: `${instant === undefined ? `it trips at once at ${INSTANT} times the end of its dial` : 'as its sheet has it'}, a fifth more or less; ${START[0]} to ${START[1]} times the rated current at the start: ${PRACTICE}`,
      margin,
      figures: [
        figure('at the start, at least', least, 'A'),
        figure('at the start, at most', peak, 'A'),
        figure('never trips at once below', never, 'A'),
        figure('surely trips at once from', surely, 'A'),
      ],
      ...(verdict === 'fits'
        ? {}
        : {
            remedy: `A motor circuit breaker whose dial begins nearer to ${amps(rated)}, or a slower start.`,
          }),
    },
  );
}

/** Between two lines there is more than between one and neutral, and the breaker is marked for the former. */
function breaking(
  about: readonly string[],
  device: string,
  line: number | undefined,
  { acVolts }: Protection,
): readonly WiringFinding[] {
  if (acVolts === undefined || line === undefined) return [];
  const margin = acVolts / line;
  return [
    found(
      GUARD,
      about,
      margin < 1 - 1e-9 ? 'fails' : 'fits',
      `${device} breaks ${volts(acVolts)} a.c.; its motor is on ${volts(line)}.`,
      {
        part: 'volts',
        margin,
        source: `IEC 60947-4-1 (from memory): only the voltage printed on it counts`,
        figures: [figure('voltage it breaks', acVolts, 'V'), figure('voltage of its motor', line, 'V')],
        ...(margin < 1 - 1e-9 ? { remedy: `Take one for ${volts(line)} a.c. or more.` } : {}),
      },
    ),
  ];
}
