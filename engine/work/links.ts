/** Findings that threads and taps share: what the control can, what reports the spindle, how fast each link allows. */
import { capital } from '../quantity/words.ts';
import { markAngles } from '../simulate/instep/index.ts';
import { missing, ratio, told, type WorkFinding } from './finding.ts';
import { type LinkLimit, slowestOf, sorted } from './limits.ts';
import { abilityPath, type WorkMachine } from './machine.ts';
import { mm, rpm, say } from './say.ts';

/** What each ability is called, and what goes wrong without it. */
const ABILITIES = {
  'threading-straight': [
    'Threads with the axis in step',
    'The control can lead the axis by the spindle’s angle.',
    'The control cannot lead the axis by the spindle’s angle: no thread with a single point.',
  ],
  'threading-taper': [
    'Taper threads',
    'The control can lead two axes at once by the spindle’s angle.',
    'The control can lead one axis by the spindle’s angle but not two at once: no taper thread with a single point.',
  ],
  'threading-multi-start': [
    'Several starts',
    'The control can begin a thread at an angle of the spindle that is asked for.',
    'The control always begins at the mark itself: it cannot begin the second start at another angle.',
  ],
  'rigid-tapping': [
    'Tapping with the holder rigid',
    'The control keeps the axis in step while the spindle turns back.',
    'The control cannot keep the axis in step while the spindle turns back: a rigid holder would break the tap.',
  ],
  'powered-tools': [
    'Tools with a motor of their own',
    'The control can run a driven tool and hold the spindle at an angle.',
    'The control has no driven tools: it can neither turn one nor keep an axis in step with it.',
  ],
} as const;
export type AbilityName = keyof typeof ABILITIES;

export function abilityFinding(work: string, machine: WorkMachine, name: AbilityName): WorkFinding {
  const [title, yes, no] = ABILITIES[name];
  const of = { check: name, link: 'control', title } as const;
  const can = machine.can(name);
  if (can === 'yes') return told(work, { ...of, verdict: 'fits', sentence: yes });
  if (can === 'no')
    return told(work, {
      ...of,
      verdict: 'fails',
      sentence:
        name === 'threading-taper' && machine.can('threading-straight') === 'no'
          ? 'The control cannot lead even one axis by the spindle’s angle, let alone two at once: no taper thread with a single point.'
          : no,
      because: ['The ways round stand below, each with its limits.'],
    });
  return missing(work, {
    ...of,
    sentence: `${title}: whether the control can is not known. Ask its manual or its maker before you buy it.`,
    needs: [abilityPath(name)],
  });
}

/** Lines below which the axis has too little to go by within a turn. */
const FEW_LINES = 50;

/** What reports the spindle: is there any, enough lines, a mark, and one that tells one angle from another. */
export function feedbackFindings(
  work: string,
  machine: WorkMachine,
  lead: number,
  needsMark: boolean,
): readonly WorkFinding[] {
  const { spindle, spindleChain } = machine;
  const feedback = spindle?.feedback ?? null;
  const title = 'Feedback of the spindle';
  const at = { check: 'feedback', link: 'feedback', title } as const;
  const chain = spindleChain ?? 'S';
  const failing = (sentence: string): WorkFinding => told(work, { ...at, verdict: 'fails', sentence });
  if (machine.feedbackFitted === 'yes' && machine.feedbackDriven === 'v-belt')
    return [
      failing(
        'The encoder is driven by a V-belt or round belt, which slips: after some turns its angle is no longer that of the spindle. Drive it by a toothed belt or straight from the spindle.',
      ),
    ];
  if (machine.feedbackFitted === 'yes' && machine.feedbackType === 'tacho')
    return [
      failing(
        'A tachogenerator tells how fast the spindle turns but not at which angle it stands: the axis has nothing to follow.',
      ),
    ];
  if (!feedback)
    return [
      machine.feedbackFitted === 'no'
        ? failing(
            'Nothing tells the control at which angle the spindle stands: the axis has nothing to follow.',
          )
        : missing(work, {
            ...at,
            sentence: 'What tells the control the angle of the spindle is not known.',
            needs: [`${chain}.spindle-feedback`],
          }),
    ];
  const { lines, turns, index } = feedback;
  const ratioOf = turns.encoder / turns.spindle;
  const grain = lead / (4 * lines * ratioOf);
  if (lines < FEW_LINES)
    return [
      told(work, {
        ...at,
        check: 'one-pulse',
        verdict: 'fails',
        sentence: `The spindle gives ${lines === 1 ? 'one pulse' : `${lines} pulses`} a turn: the axis learns ${lines === 1 ? 'only once in a turn' : 'too seldom'} where the spindle is, and between pulses it has to guess.`,
        because: [
          `Between two pulses the axis travels ${mm(lead / lines)}. If the cut slows the spindle by 2 % it is off by ${mm((0.02 * lead) / lines)} before the next pulse tells.`,
          'An encoder of some hundred lines with an index would do.',
        ],
      }),
    ];
  const found: WorkFinding[] = [
    ratio(work, {
      ...at,
      asked: grain,
      there: machine.habits.count.value,
      unit: 'µm',
      tight: 1,
      says: {
        fits: 'One count of the spindle moves the axis by {asked}; up to {there} does not show.',
        fails: 'One count of the spindle moves the axis by {asked}, more than {there}: the flanks get steps.',
      },
      because: [
        `${lines} lines, four counts each, ${mm(lead)} a turn. Up to ${machine.habits.count.says} will do.`,
      ],
      basis: spindle?.basis,
    }),
  ];
  if (!needsMark) return found;
  if (!index) {
    found.push(
      told(work, {
        ...at,
        check: 'index',
        title: 'Mark of the spindle',
        verdict: 'fails',
        sentence:
          'The encoder has no index: the second pass would begin at any angle and cut the first one away.',
      }),
    );
    return found;
  }
  const places = markAngles(turns.encoder, turns.spindle).length;
  found.push(
    places === 1
      ? told(work, {
          ...at,
          check: 'index',
          title: 'Mark of the spindle',
          verdict: 'fits',
          sentence:
            turns.spindle === turns.encoder
              ? 'The mark comes once a turn, always at the same angle: every pass finds its groove.'
              : `The encoder turns slower than the spindle: the mark comes every ${turns.spindle / turns.encoder} turns at the same angle. Every pass finds its groove, after a longer wait.`,
        })
      : told(work, {
          ...at,
          check: 'geared-index',
          title: 'Mark of a geared encoder',
          verdict: 'fails',
          sentence:
            places === 0
              ? `The encoder does not turn a whole ratio to the spindle (${say(ratioOf, '1')} to 1): its mark never comes back to the same angle, so no second pass finds its groove.`
              : `The encoder turns ${turns.encoder} times for ${turns.spindle} of the spindle: its mark comes at ${places} different angles of the spindle, so a pass begins in the right groove only once in ${places} times.`,
          because: [
            places > 0 && Number.isInteger((4 * lines * turns.encoder) / turns.spindle)
              ? `A control that takes the mark only once and then counts (${(4 * lines * turns.encoder) / turns.spindle} counts a turn of the spindle) gets round this; most take it at every pass.`
              : `Counts a turn of the spindle are not whole either (4 × ${lines} × ${turns.encoder} ∕ ${turns.spindle}): a control that counts on loses its angle turn by turn.`,
            'Drive the encoder one to one with the spindle, or put a second mark on the spindle itself.',
          ],
        }),
  );
  return found;
}

/** rad/s below which a limit lets nothing turn. */
const STANDS = 0.01;

/** Whether a speed lies within what every link allows; names the first that gives way. */
export function speedFinding(
  work: string,
  machine: WorkMachine,
  limits: readonly LinkLimit[],
  speed: number,
): readonly WorkFinding[] {
  const known = sorted(limits).filter((each) => each.speed !== null);
  const unknown = limits.filter((each) => each.speed === null);
  const lowest = known[0];
  const found: WorkFinding[] = [];
  if (lowest)
    found.push(
      ratio(work, {
        check: 'speed',
        link: 'speed',
        title: 'Spindle speed',
        asked: speed,
        there: lowest.speed!,
        unit: 'r/min',
        tight: 1,
        says: {
          fits: `At {asked} every known link keeps up; the ${lowest.name} gives way first, at {there}.`,
          fails:
            lowest.speed! < STANDS
              ? `{asked} is too fast: the ${lowest.name} allows no speed at all.`
              : `{asked} is too fast: the ${lowest.name} allows only {there}.`,
        },
        because: known.map(({ name, speed: each }) => `${name}: ${rpm(each!)}`),
        basis: machine.spindle?.basis,
      }),
    );
  for (const each of unknown)
    found.push(
      missing(work, {
        check: `limit-${each.id}`,
        link: each.id === 'chuck' || each.id === 'jaws' ? 'chuck' : each.isHard ? 'speed' : 'axis',
        title: capital(each.name),
        sentence: each.says,
        needs: each.needs,
      }),
    );
  const slowest = machine.spindle ? slowestOf(machine.spindle) : 0;
  if (slowest > 0 && speed < slowest * (1 - 1e-9))
    found.push(
      ratio(work, {
        check: 'too-slow',
        link: 'spindle',
        title: 'Slowest speed of the spindle',
        asked: slowest,
        there: speed,
        unit: 'r/min',
        tight: 1,
        says: {
          fits: '',
          fails:
            'The spindle gives useful torque from {asked} on; this asks for {there}: the motor is too slow to cool itself and too weak.',
        },
        basis: machine.spindle?.basis,
      }),
    );
  return found;
}

/** A speed of nought was typed. `why` goes on after 'The spindle speed is 0: '. */
export const standing = (work: string, why: string): WorkFinding =>
  told(work, {
    check: 'standing',
    link: 'settings',
    title: 'Spindle speed',
    verdict: 'fails',
    sentence: `The spindle speed is 0: ${why}`,
  });

/** No spindle to judge by. */
export const noSpindle = (work: string, machine: WorkMachine): WorkFinding =>
  missing(work, {
    check: 'spindle',
    link: 'spindle',
    title: 'Spindle',
    sentence:
      'The spindle is not known well enough: its drive, motor, belts and chuck decide what can be cut.',
    needs: machine.spindleNeeds,
  });

export const sayTurns = (angle: number): string => `${say(angle / (2 * Math.PI), '1')} turns`;
