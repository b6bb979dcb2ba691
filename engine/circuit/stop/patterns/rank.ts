/** Which way to stop suits a machine best, by what is known of what moves. */
import { formatQuantity } from '../../../quantity/index.ts';
import { own } from '../../../quantity/own.ts';
import { andList, capital } from '../../../quantity/words.ts';
import type { Refit, StopMotion } from '../../../refit/types.ts';
import { DROPS } from '../motion.ts';
import { motionNumbers, type Offers } from '../motion-numbers.ts';
import { runDown } from '../run-down.ts';
import { PATTERNS } from './index.ts';
import type { MotionWanted, Pattern } from './pattern.ts';

/** Seconds that something may turn on: about as long as it takes to open a door and reach in (common practice, no source). */
const LONG = 3;

/** What of a machine decides how it should be stopped. */
export interface Traits {
  /** Axes that drop when nothing holds them, by name. */
  readonly drops: readonly string[];
  /** What turns on for long once its power is gone, with seconds. */
  readonly long: readonly { readonly name: string; readonly seconds: number }[];
  /** Of these it is not known how long they turn on. */
  readonly notKnown: readonly string[];
  /** Whether every drive has an input for safe torque off; undefined where that is not known of all and none is known to lack it. */
  readonly torqueOff?: boolean | undefined;
}

export interface Ranked {
  readonly pattern: Pattern;
  /** One sentence: why it stands where it stands. */
  readonly why: string;
}

/** From what is typed and from what the rest of the refit brings. What cannot be read counts as not known. */
export function traitsOf(motions: readonly MotionWanted[], offers: Offers): Traits {
  const drops: string[] = [];
  const long: { name: string; seconds: number }[] = [];
  const notKnown: string[] = [];
  const channels: (number | undefined)[] = [];
  for (const { id, kind, name, settings = {} } of motions) {
    const motion: StopMotion = { id, kind, name, drive: '', brake: null, settings };
    const found = motionNumbers(motion, '', offers);
    if (!found.ok) {
      notKnown.push(name);
      continue;
    }
    const { vertical, speed, inertia, friction } = found.value.read;
    channels.push(found.value.read['torque-off']);
    if (kind === 'axis') {
      if (vertical === DROPS.yes || vertical === DROPS.friction) drops.push(name);
      continue;
    }
    if (speed === undefined || inertia === undefined || friction === undefined) notKnown.push(name);
    else {
      const { time } = runDown(speed, inertia, [
        { lasts: Number.POSITIVE_INFINITY, torque: friction, drag: 0 },
      ]);
      if (time > LONG) long.push({ name, seconds: time });
    }
  }
  const torqueOff = channels.includes(0)
    ? false
    : channels.length > 0 && channels.length === motions.length && !channels.includes(undefined)
      ? true
      : undefined;
  return { drops, long, notKnown, torqueOff };
}

/**
 * All patterns, the best first, those that only show what not to rely on last. `torqueOff`: whether the chosen drives have an
 * input for safe torque off, where that is known.
 */
export function rankPatterns(traits: Traits, torqueOff?: boolean): readonly Ranked[] {
  const points = pointsFor(traits, torqueOff);
  return PATTERNS.map((pattern, at) => ({ pattern, at, ...(points[pattern.id] ?? NONE) }))
    .sort((a, b) => b.points - a.points || a.at - b.at)
    .map(({ pattern, why }) => ({ pattern, why: capital(why) }));
}

/** The same as wiring or stop circuit alone say it, for drives of which nothing else is known; undefined where neither does. */
export function torqueOffOf({ wiring, stop }: Refit): boolean | undefined {
  const drives = [...Object.values(wiring.devices), ...Object.values(stop?.elements ?? {})]
    .filter(({ kind }) => kind === 'drive' || kind === 'inverter')
    .flatMap(({ settings }) => (own(settings, 'sto') === undefined ? [] : [settings.sto!.trim()]));
  return drives.length === 0 ? undefined : drives.every((channels) => Number(channels) > 0);
}

interface Points {
  readonly points: number;
  readonly why: string;
}

const NONE: Points = { points: 0, why: 'Nothing that is known of this machine speaks for or against it.' };

function pointsFor(
  { drops, long, notKnown }: Traits,
  torqueOff: boolean | undefined,
): Readonly<Record<string, Points>> {
  const falls = drops.length > 0;
  const runs = long.map(
    ({ name, seconds }) =>
      `${name} ${Number.isFinite(seconds) ? `goes on turning for ${formatQuantity(seconds, 's', { digits: 2 })}` : 'never stops turning'}`,
  );
  const [one, many] = drops.length === 1 ? ['drops', 'it'] : ['drop', 'them'];
  const held = `${andList(drops)} ${one} when nothing holds ${many}`;
  const noBrake = falls ? ` It has no brake: ${held}.` : '';
  const safe =
    torqueOff === undefined
      ? ''
      : torqueOff
        ? ' The drives have an input for safe torque off: a second way beside its contactors.'
        : ' Not every drive has an input for safe torque off: for those its contactors are the only way.';
  const unknown =
    long.length === 0 && notKnown.length > 0
      ? ` How long ${andList(notKnown)} goes on turning is not known yet.`
      : '';
  // What drops comes before what turns on: a locked door does not hold a load up.
  const down = falls ? -40 : 0;
  return {
    'vertical-axis': {
      points: falls ? 100 : 20,
      why: falls
        ? `${held}: here its brake closes before the drive lets go.${safe}`
        : 'Nothing is known to drop on this machine, so its brake would be of no use.',
    },
    'limits-with-brake': {
      points: falls ? 95 : 10,
      why: falls
        ? `${held}: here its brake closes before the drive lets go, and running onto a limit switch does the same.${safe}`
        : 'Nothing is known to drop on this machine, so its brake would be of no use behind the limit switches.',
    },
    'locked-door': {
      points: (long.length > 0 ? 90 : 40) + down,
      why:
        (long.length > 0
          ? `${andList(runs)} once its power is gone: here the door stays locked until then.`
          : `Worth it where something goes on turning for longer than ${LONG} s.${unknown}`) + noBrake,
    },
    'braked-stop': {
      points: (long.length > 0 ? 80 : 60) + (torqueOff ? 5 : 0) + down,
      why:
        (long.length > 0
          ? `${andList(runs)} once its power is gone: here the drives brake it first.`
          : `The drives brake before their power goes, so everything stands sooner.${unknown}`) +
        safe +
        noBrake,
    },
    'safety-relay': {
      points: (long.length > 0 ? 60 : 80) + down,
      why: `Two channels, watched by a bought unit; it coasts to a stop.${long.length > 0 ? ` ${capital(andList(runs))}.` : unknown}${noBrake}`,
    },
    'limits-in-channels': {
      points: 55 + down,
      why: `The watched channels, with limit switches in them for axes that must not reach their hard stops.${noBrake}`,
    },
    'limits-with-release': {
      points: 45 + down,
      why: `The watched channels for the emergency stop; the limit switches only ask.${noBrake}`,
    },
    'two-contactors': {
      points: 50 + down,
      why: `Two channels from plain parts; a crushed cable or a stuck start button defeats it.${noBrake}`,
    },
    'one-contactor': {
      points: -60,
      why: `One welded contact, and it does not stop: only for what can do no more than pinch.${noBrake}`,
    },
    'asks-the-control': {
      points: -100,
      why: 'The power stays on, and a control that hangs stops nothing.',
    },
  };
}
