/** What is found on the torque of a tap and on its turning back. */
import type { Work } from '../refit/types.ts';
import { cutFor } from './asked.ts';
import { missing, ratio, told, type WorkFinding } from './finding.ts';
import { stoppingAt, torqueOver } from './limits.ts';
import { sayTurns } from './links.ts';
import type { WorkAxis } from './machine.ts';
import { mm, rpm, say } from './say.ts';
import type { Reversal, Wanted } from './tap-reversal.ts';
import type { SpindleModel } from './types.ts';

export function torqueFinding(
  { spindle, cutting }: { readonly spindle: SpindleModel; readonly cutting: number },
  work: Work,
  { thread, habits }: Wanted,
  kind: string,
  speed: number,
): { readonly torque: number | null; readonly findings: readonly WorkFinding[] } {
  const cut = cutFor('tapping', {
    material: work.settings.material?.trim() || 'c45',
    thread: thread.designation,
    tap: kind,
    speed: `${(speed * 30) / Math.PI} r/min`,
  });
  if (!cut.ok)
    return {
      torque: null,
      findings: [
        told(work.id, {
          check: 'setting-material',
          link: 'settings',
          title: 'Material',
          verdict: 'fails',
          sentence: cut.problem.message,
        }),
      ],
    };
  const torque = (cut.value.asked.find(({ id }) => id === 'torque')?.value ?? 0) * cutting;
  const range = stoppingAt(spindle, speed, 0)?.range;
  if (!range) return { torque, findings: [] };
  const there = torqueOver(range, speed);
  return {
    torque,
    findings: [
      ratio(work.id, {
        check: 'spindle-torque',
        link: 'spindle',
        title: 'Torque of the tap',
        asked: torque,
        there,
        unit: 'N·m',
        tight: habits.worn.value,
        says: {
          fits: 'A sharp tap takes {asked}; the spindle gives {there} at that speed.',
          fails: 'A sharp tap takes {asked}, but the spindle gives only {there} at that speed.',
        },
        because: [
          `In the ${range.name} at ${rpm(speed)}; ${cut.value.material}. A worn tap takes more, times ${habits.worn.says}: a smaller margin is tight.`,
          ...cut.value.notes,
        ],
        basis: spindle.basis,
      }),
    ],
  };
}

export function reversalFindings(
  work: string,
  wanted: Wanted,
  reversal: Reversal | null,
  speed: number,
  axis: WorkAxis | undefined,
  spindle: SpindleModel,
): readonly WorkFinding[] {
  if (!reversal) return [];
  const { thread, depth, hole, float, slip, habits } = wanted;
  const brakes = spindle.ranges.some(({ braking }) => braking.some(({ torque }) => torque > 0));
  const because = [
    `In the ${reversal.range} from ${rpm(speed)}: the drive acts after ${habits.delay.says}, ${brakes ? 'then brakes' : 'and nothing brakes: the spindle runs down by its own drag'}.`,
    'The tap’s own torque would stop it a little sooner; it is not counted on.',
  ];
  const basis = spindle.basis;
  const found: WorkFinding[] = [];
  const stop = {
    check: 'spindle-stop',
    link: 'spindle',
    title: 'Stopping to turn back',
    because,
    basis,
  } as const;
  const { room, highest } = reversal;
  const places =
    typeof hole !== 'number'
      ? 'the holder leaves'
      : float === null
        ? 'the hole leaves'
        : 'hole and holder leave';
  const upTo =
    highest === null
      ? ''
      : highest > 1
        ? `; up to ${rpm(highest)} it is enough`
        : '; no speed makes it enough';
  const on = `After the order to turn back the spindle runs on for ${sayTurns(reversal.angle)} (${say(reversal.time, 's')}): the tap`;
  found.push(
    Number.isFinite(reversal.overrun)
      ? ratio(work, {
          ...stop,
          asked: reversal.overrun,
          there: room ?? depth,
          unit: 'mm',
          tight: 1,
          says:
            room === null
              ? {
                  fits: `${on} goes {asked} deeper, in a thread that is {there} deep.`,
                  fails: `${on} would go {asked} deeper, more than the {there} that the thread is deep.`,
                }
              : {
                  fits: `${on} goes {asked} deeper; ${places} {there} for that.`,
                  fails: `${on} would go {asked} deeper, but ${places} only {there} for that${upTo}.`,
                },
        })
      : told(work, {
          ...stop,
          verdict: 'fails',
          sentence:
            'Nothing slows this spindle: it never comes to rest by itself, so no tap can be turned back.',
        }),
  );
  if (Number.isFinite(reversal.hole)) {
    if (typeof hole === 'number')
      found.push(
        ratio(work, {
          check: 'hole',
          link: 'hole',
          title: 'Depth of the hole',
          asked: reversal.hole,
          there: hole,
          unit: 'mm',
          tight: 1,
          says: {
            fits: 'Thread, chamfer, overrun and chips take {asked} of the {there} drilled.',
            fails: `Thread, chamfer, overrun and chips need {asked}, but the hole is only {there}: the tap meets the bottom and breaks. ${highest !== null && highest > 1 ? `Up to ${rpm(highest)} it would fit.` : 'No speed makes it fit.'}`,
          },
          because: [
            `The tap runs on ${mm(reversal.overrun)} (${sayTurns(reversal.angle)}, ${say(reversal.time, 's')}).`,
            ...because,
          ],
          basis,
        }),
      );
    else
      found.push(
        told(work, {
          check: 'hole',
          link: 'hole',
          title: 'Depth of the hole',
          verdict: 'fits',
          sentence:
            hole === 'through'
              ? `Through: leave ${mm(reversal.hole - depth)} free below the work for chamfer, overrun and chips.`
              : `Drill at least ${mm(reversal.hole)} deep, not counting the point: the tap runs on ${mm(reversal.overrun)}.`,
          because,
          basis,
        }),
      );
  }
  if (float !== null && Number.isFinite(reversal.float))
    found.push(
      ratio(work, {
        check: 'float',
        link: 'hole',
        title: 'Float of the holder',
        asked: reversal.float,
        there: float,
        unit: 'mm',
        tight: 1,
        says: {
          fits: 'The holder has to give {asked} and gives {there}.',
          fails:
            'The holder has to give {asked} but gives only {there}: the thread strips or the tap breaks.',
        },
        because: [
          `Overrun ${mm(reversal.overrun)}, axis and spindle out of step ${mm(2 * reversal.step)}${slip > 0 ? `, and ${mm(slip * (depth + reversal.overrun))} because the axis keeps its own pace while the spindle may be off its speed by ${habits.slip.says}` : ''}.`,
          ...because,
        ],
        basis,
      }),
    );
  else if (axis && axis.lag.value === null && float === null)
    found.push(
      missing(work, {
        check: 'in-step',
        link: 'axis',
        title: 'In step through the reversal',
        sentence:
          axis.gainSays ||
          `How closely the ${axis.id} axis follows the spindle as it turns back is not known.`,
        needs: axis.lag.needs,
      }),
    );
  else if (axis && float === null)
    found.push(
      ratio(work, {
        check: 'in-step',
        link: 'axis',
        title: 'In step through the reversal',
        asked: 2 * reversal.step,
        there: habits.rigid.value * thread.pitch,
        unit: 'mm',
        tight: 1,
        says: {
          fits: 'As the spindle turns back the axis changes from behind to ahead by {asked}; a rigid holder and the flanks bear about {there}.',
          fails:
            'As the spindle turns back the axis changes from behind to ahead by {asked}; a rigid holder and the flanks bear only about {there}. Turn slower, or take a holder with a little float.',
        },
        because: [axis.gainSays, `It bears ${habits.rigid.says} of the pitch: a habit, not a standard.`],
        basis: axis.lag.basis,
      }),
    );
  return found;
}
