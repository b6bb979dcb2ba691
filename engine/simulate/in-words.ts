/** What a run showed, in sentences, the gravest first. */
import { formatQuantity } from '../quantity/index.ts';
import { sayCircle } from './circle-in-words.ts';
import type { AxisModel } from './model.ts';
import type { Run, Summary } from './run.ts';
import { runsOn } from './run-out.ts';
import { looseLoad, sayEndStop, sayRunOut } from './run-out-in-words.ts';
import { ms, NOTHING, type Say, type Saying, short, slideSpeed } from './say.ts';

export interface InWordsOptions {
  /** A the motor may carry for hours; without it nothing is said of heat. */
  readonly continuousCurrent?: number | undefined;
  readonly system?: 'mm' | 'in';
  /** What the axes are called, where there are two. */
  readonly names?: readonly [string, string];
  /** m from one end stop to the other, where it is known, and the fact that would tell it: 'X.slide.travel'. */
  readonly travel?: number | undefined;
  readonly travelFact?: string | undefined;
}

/** Whether it makes the move, in one sentence. */
export function headline(run: Run, model: AxisModel, system: 'mm' | 'in' = 'mm'): string {
  const { summary, second, trips, stopped } = run;
  const unstable = summary.unstable ?? second?.summary.unstable;
  if (unstable) return `The loop is ${unstable.says}.`;
  if (summary.stalled || second?.summary.stalled)
    return 'The motor falls out of step: it does not make this move.';
  const mainsOff = summary.runOut?.mainsOff;
  const [trip] = trips;
  if (trip && (mainsOff == null || trip.at < mainsOff.at))
    return `It does not make this move. ${trip.sentence}`;
  if (stopped) return stopped;
  if (mainsOff) {
    const rest = summary.runOut!.restAt;
    const end = rest === null ? 'still moves when the run ends' : `stands ${ms(rest - mainsOff.at)} later`;
    return `The mains fail at ${slideSpeed(mainsOff.speed, system)}: the axis runs on ${short(runsOn(run)!, system)} and ${end}.`;
  }
  const fell = summary.travelAfterOff ?? 0;
  if (run.move.kind === 'drop' && summary.runOut?.restAt != null && Math.abs(fell) > NOTHING)
    return `Once its drive is off the axis ${fell < 0 ? 'falls' : 'moves'} ${short(fell, system)} before it is held.`;
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

const ORDER = ['bad', 'doubtful', 'good', 'note'];

/** Sentences on a run of `model`. */
export function inWords(run: Run, model: AxisModel, options: InWordsOptions = {}): Saying[] {
  const { system = 'mm', names = ['first', 'second'] } = options;
  const all: Saying[] = [];
  const say: Say = (level, sentence) => void all.push({ level, sentence });
  const axes: readonly (readonly [Summary, string, Float64Array])[] = run.second
    ? [
        [run.summary, `The ${names[0]} axis`, run.commanded],
        [run.second.summary, `The ${names[1]} axis`, run.second.commanded],
      ]
    : [[run.summary, 'The axis', run.commanded]];

  const mainsOff = run.summary.runOut?.mainsOff;
  for (const trip of run.trips)
    if (mainsOff != null && trip.at >= mainsOff.at)
      say('note', `${trip.sentence} That is ${ms(trip.at - mainsOff.at)} after the mains failed.`);
    else say('bad', `${trip.sentence} That is ${ms(trip.at)} after the start.`);
  for (const [summary, who] of axes) {
    if (summary.unstable) say('bad', `${who} is ${summary.unstable.says.replace(/\.?$/, '.')}`);
    if (summary.stalled)
      say(
        'bad',
        `${who} falls out of step after ${ms(summary.stalled.at)} and ends ${summary.stalled.stepsLost.toFixed(0)} full steps off.`,
      );
  }
  const went = !all.some(({ level }) => level === 'bad');
  if (run.stopped && went) say('bad', run.stopped);
  const loose = looseLoad(run, model);
  if (loose) say('bad', loose);
  sayEndStop(say, run, model, options, system);
  for (const [summary, who, commanded] of axes) {
    sayFollowing(say, summary, who, run.move.kind === 'drop', went && !run.stopped, system);
    sayRunOut(say, run, summary, commanded, who, system);
    // What the motor of the second axis carries is not told here.
    sayEffort(say, summary, who, model, summary === run.summary ? options.continuousCurrent : undefined);
  }
  if (run.circle) sayCircle(say, run.circle, model.feedback.on === 'motor', system);
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
  return all.sort((a, b) => ORDER.indexOf(a.level) - ORDER.indexOf(b.level));
}

const SIDES = { behind: 'behind its command', ahead: 'ahead of its command', off: 'off its place' } as const;

/** How well `who` follows its command, as long as it has one; `stood` where it only stands and is let go. */
function sayFollowing(
  say: Say,
  summary: Summary,
  who: string,
  stood: boolean,
  went: boolean,
  system: 'mm' | 'in',
): void {
  const { runOut, peakFollowing, settled } = summary;
  const until =
    runOut === null ? '' : runOut.mainsOff ? ', up to when the mains fail' : ', up to when the drive lets go';
  if (!(stood && runOut !== null) && (runOut === null || peakFollowing > NOTHING))
    say(
      went && runOut === null ? 'good' : 'note',
      `${who} is at most ${short(peakFollowing, system)} ${SIDES[summary.peakFollowingSide]}, ${ms(summary.peakFollowingAt)} after the start${until}.`,
    );
  if (summary.overshoot > summary.settleBand)
    say(
      'doubtful',
      `${who} runs ${short(summary.overshoot, system)} beyond the end${runOut === null && settled !== null ? ' before it comes back' : ''}.`,
    );
  if (runOut === null && settled !== null && went)
    say(
      'note',
      `${who} is at rest within ${short(summary.settleBand, system)} of the end ${settled < 5e-5 ? 'as soon as the command is over' : `${ms(settled)} after the command is over`}.`,
    );
  else if (runOut === null && went)
    say(
      'doubtful',
      `${who} still stands ${short(summary.finalFollowing, system)} from its command when the run ends.`,
    );
  if (summary.lostMotion !== null && Number.isFinite(summary.lostMotion))
    say(
      summary.lostMotion > 1e-5 ? 'doubtful' : 'note',
      `Reached from the one side and from the other, the same place lies ${short(summary.lostMotion, system)} apart: that is the lost motion.`,
    );
}

/** What it takes of drive and motor. */
function sayEffort(
  say: Say,
  summary: Summary,
  who: string,
  model: AxisModel,
  continuousCurrent: number | undefined,
): void {
  const its = who.replace(/^The /, 'the ');
  if (summary.slips > 1)
    say('note', `${who} comes to rest and breaks free ${summary.slips} times on the way.`);
  if (summary.atVoltageLimit > 0.002)
    say(
      'doubtful',
      `For ${ms(summary.atVoltageLimit)} the drive of ${its} uses all the voltage there is: the motor cannot turn faster then.`,
    );
  if (summary.atCurrentLimit > 0.002)
    say('note', `For ${ms(summary.atCurrentLimit)} the drive of ${its} stands at its current limit.`);
  if (model.motor.kind !== 'servo' || summary.rmsCurrent === null) return;
  const rms = formatQuantity(summary.rmsCurrent, 'A', { digits: 2 });
  const peak = formatQuantity(summary.peakCurrent, 'A', { digits: 2 });
  const start = `The current of ${its} is`;
  if (continuousCurrent === undefined) {
    say('note', `${start} ${peak} at its greatest and ${rms} r.m.s. over the move.`);
    return;
  }
  const most = formatQuantity(continuousCurrent, 'A', { digits: 2 });
  const hot = summary.rmsCurrent > continuousCurrent;
  say(
    hot ? 'doubtful' : 'note',
    hot
      ? `${start} ${rms} r.m.s. over the move, more than the ${most} the motor carries for hours: repeated without a pause it overheats.`
      : `${start} ${peak} at its greatest and ${rms} r.m.s.; the motor carries ${most} for hours.`,
  );
}
