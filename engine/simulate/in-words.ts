/** What a run showed, in sentences, the gravest first. */
import { formatQuantity } from '../quantity/index.ts';
import { weightTorque } from './constants.ts';
import { type AxisModel, travelPerRadian } from './model.ts';
import type { Run, Summary } from './run.ts';

export interface Saying {
  /** `bad`: it does not do the move; `doubtful`: it does, at a price; `good`; `note`: a number to know. */
  readonly level: 'bad' | 'doubtful' | 'good' | 'note';
  readonly sentence: string;
}

export interface InWordsOptions {
  /** A the motor may carry for hours; without it nothing is said of heat. */
  readonly continuousCurrent?: number | undefined;
  readonly system?: 'mm' | 'in';
  /** What the axes are called, where there are two. */
  readonly names?: readonly [string, string];
}

const ms = (seconds: number): string =>
  formatQuantity(seconds, 's').replace(
    /^(0\.0?\d+) s$/,
    (_, n: string) => `${Number((Number(n) * 1000).toPrecision(3))} ms`,
  );

/** A length small enough for the eye: thousandths below a tenth of a millimetre. */
export function short(metres: number, system: 'mm' | 'in'): string {
  const size = Math.abs(metres);
  if (system === 'in') return formatQuantity(size, 'in', { digits: 3 });
  return formatQuantity(size, size < 1e-4 ? 'µm' : 'mm', { digits: 3 });
}

const PROP = 'Prop the axis before the power goes, and never stand or reach under it.';
/** m below which nothing has moved: far less than an atom is from the next. */
const NOTHING = 1e-11;
/** m/s below which the slide counts as standing. */
const STANDS = 1e-6;

/**
 * What a load that neither a brake nor its own screw holds does once the drive is off; undefined where there is none, or the
 * drive stays on. Friction of the ways is not counted on to hold a load; that of screw and motor only where it is the larger.
 */
export function looseLoad({ summary, speed }: Run, model: AxisModel): string | undefined {
  const load = Math.abs(weightTorque(model));
  if (summary.travelAfterOff === null || model.brake !== null || model.motor.coulomb >= load)
    return undefined;
  return Math.abs(speed.at(-1) ?? 0) * travelPerRadian(model) > STANDS
    ? `Nothing holds the axis once the drive is off: it drops. ${PROP}`
    : `In this model friction just holds the axis once the drive is off; do not rely on it: oil, wear and shaking free it. ${PROP}`;
}

/** Whether it makes the move, in one sentence. */
export function headline(run: Run, model: AxisModel): string {
  const { summary, second, trips, stopped } = run;
  const unstable = summary.unstable ?? second?.summary.unstable;
  if (unstable) return `The loop is ${unstable.says}.`;
  if (summary.stalled || second?.summary.stalled)
    return 'The motor falls out of step: it does not make this move.';
  if (trips[0]) return `It does not make this move. ${trips[0].sentence}`;
  if (stopped) return stopped;
  if (summary.travelAfterOff !== null)
    return looseLoad(run, model) ?? 'The drive is off at the end; how far the axis moves then stands below.';
  const limits = [
    ...(summary.atCurrentLimit > 0 ? ['current'] : []),
    ...(summary.atVoltageLimit > 0 ? ['voltage'] : []),
  ];
  return limits.length > 0
    ? `It makes the move, but reaches the limit of ${limits.join(' and ')} on the way.`
    : 'It makes the move within its limits.';
}

/** Sentences on a run of `model`. */
export function inWords(run: Run, model: AxisModel, options: InWordsOptions = {}): Saying[] {
  const { system = 'mm', continuousCurrent, names = ['first', 'second'] } = options;
  const all: Saying[] = [];
  const say = (level: Saying['level'], sentence: string): void => void all.push({ level, sentence });
  const axes: readonly (readonly [Summary, string])[] = run.second
    ? [
        [run.summary, `The ${names[0]} axis`],
        [run.second.summary, `The ${names[1]} axis`],
      ]
    : [[run.summary, 'The axis']];

  for (const trip of run.trips) say('bad', `${trip.sentence} That is ${ms(trip.at)} after the start.`);
  for (const [summary, who] of axes) {
    if (summary.unstable) say('bad', `${who} is ${summary.unstable.says.replace(/\.?$/, '.')}`);
    if (summary.stalled)
      say(
        'bad',
        `${who} falls out of step after ${ms(summary.stalled.at)} and ends ${summary.stalled.stepsLost.toFixed(0)} full steps off.`,
      );
  }
  if (run.stopped && all.length === 0) say('bad', run.stopped);
  const went = all.length === 0;
  const loose = looseLoad(run, model);
  if (loose) say('bad', loose);

  for (const [summary, who] of axes) {
    const behind = short(summary.peakFollowing, system);
    say(
      went ? 'good' : 'note',
      `${who} is at most ${behind} behind its command, ${ms(summary.peakFollowingAt)} after the start.`,
    );
    if (summary.overshoot > summary.settleBand)
      say('doubtful', `It runs ${short(summary.overshoot, system)} beyond the end before it comes back.`);
    if (summary.settled !== null && went)
      say(
        'note',
        `It is at rest within ${short(summary.settleBand, system)} of the end ${ms(summary.settled)} after the command is over.`,
      );
    else if (went)
      say(
        'doubtful',
        `It still stands ${short(summary.finalFollowing, system)} from its command when the run ends.`,
      );
    if (summary.lostMotion !== null && Number.isFinite(summary.lostMotion))
      say(
        summary.lostMotion > 1e-5 ? 'doubtful' : 'note',
        `Reached from the one side and from the other, the same place lies ${short(summary.lostMotion, system)} apart: that is the lost motion.`,
      );
    if (summary.travelAfterOff !== null)
      say(
        'note',
        Math.abs(summary.travelAfterOff) < NOTHING
          ? 'After the drive is off the slide does not move.'
          : `After the drive is off the slide runs on ${short(summary.travelAfterOff, system)}.`,
      );
    if (summary.slips > 1) say('note', `It comes to rest and breaks free ${summary.slips} times on the way.`);
    if (summary.atVoltageLimit > 0.002)
      say(
        'doubtful',
        `For ${ms(summary.atVoltageLimit)} the drive uses all the voltage there is: the motor cannot turn faster then.`,
      );
    if (summary.atCurrentLimit > 0.002)
      say('note', `For ${ms(summary.atCurrentLimit)} the drive stands at its current limit.`);
    if (model.motor.kind === 'servo' && summary.rmsCurrent !== null) {
      const rms = formatQuantity(summary.rmsCurrent, 'A', { digits: 2 });
      const peak = formatQuantity(summary.peakCurrent, 'A', { digits: 2 });
      if (continuousCurrent === undefined)
        say('note', `The current is ${peak} at its greatest and ${rms} r.m.s. over the move.`);
      else {
        const most = formatQuantity(continuousCurrent, 'A', { digits: 2 });
        say(
          summary.rmsCurrent > continuousCurrent ? 'doubtful' : 'note',
          summary.rmsCurrent > continuousCurrent
            ? `The current is ${rms} r.m.s. over the move, more than the ${most} the motor carries for hours: repeated without a pause it overheats.`
            : `The current is ${peak} at its greatest and ${rms} r.m.s.; the motor carries ${most} for hours.`,
        );
      }
    }
  }
  if (run.circle)
    say(
      run.circle.roundness > 2e-5 ? 'doubtful' : 'good',
      `The circle is out of round by ${short(run.circle.roundness, system)}, and on the whole ${short(run.circle.meanRadius, system)} too ${run.circle.meanRadius < 0 ? 'small' : 'large'} in radius.`,
    );
  if (model.supply.kind !== 'constant') {
    const [low, high] = [run.supply.lowest, run.supply.highest].map((v) =>
      formatQuantity(v, 'V', { digits: 3 }),
    );
    const burnt =
      run.supply.dumped > 0.05
        ? `; the dump resistor burns ${formatQuantity(run.supply.dumped, 'J', { digits: 2 })}`
        : '';
    say('note', `The bus lies between ${low} and ${high}${burnt}.`);
  }
  if (run.passedOver > 0)
    say('doubtful', 'It chatters so fast that some contacts were passed over: take what follows as rough.');
  const order = ['bad', 'doubtful', 'good', 'note'];
  return all.sort((a, b) => order.indexOf(a.level) - order.indexOf(b.level));
}
