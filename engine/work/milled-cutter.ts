/** A thread mill itself: whether it goes into the bore, and what it takes of the spindle. */
import type { Basic, Side } from '../threads/index.ts';
import { ratio, told, type WorkFinding } from './finding.ts';
import { rangeAt, torqueOver } from './limits.ts';
import type { WorkMachine } from './machine.ts';
import { mm, rpm, say } from './say.ts';

/** A cutter larger than this share of the bore cuts away the flanks it leaves behind: common practice, no source. */
const MOST_CUTTER = 0.75;

export function cutterFinding(work: string, cutter: number, basic: Basic, side: Side): WorkFinding {
  const of = { check: 'cutter', link: 'hole', title: 'Cutter' } as const;
  if (side === 'external')
    return told(work, {
      ...of,
      verdict: 'fits',
      sentence: `A cutter of ${mm(cutter)} goes round outside; it needs that much room all round the bolt.`,
    });
  return ratio(work, {
    ...of,
    asked: cutter,
    there: basic.bore,
    unit: 'mm',
    tight: 1 / MOST_CUTTER,
    says: {
      fits: 'The cutter of {asked} goes into the bore of {there}.',
      fails: 'The cutter of {asked} does not go into the bore of {there}.',
    },
    because: [
      `Up to about ${say(MOST_CUTTER, '%')} of the bore it leaves the flanks as they should be; a larger one cuts some of them away: common practice, no source.`,
    ],
  });
}

export function torqueFinding(
  work: string,
  machine: WorkMachine,
  sharp: number,
  speed: number,
  rows: number,
  material: string,
): readonly WorkFinding[] {
  const { spindle, habits, cutting } = machine;
  const range = spindle && rangeAt(spindle, speed);
  if (!range) return [];
  return [
    ratio(work, {
      check: 'spindle-torque',
      link: 'spindle',
      title: 'Torque of the cutter',
      asked: sharp * cutting,
      there: torqueOver(range, speed),
      unit: 'N·m',
      tight: machine.tight,
      says: {
        fits: 'The cutter takes {asked} while it is fully in; the spindle gives {there} at that speed.',
        fails:
          'The cutter takes {asked} while it is fully in, but the spindle gives only {there} at that speed: fewer rows of teeth, or less feed.',
      },
      because: [
        `${rows === 1 ? 'One groove' : `${rows} grooves`} at once in the ${range.name} at ${rpm(speed)}; ${material}, a sharp cutter. Blunt it takes up to twice as much; usual margin ${habits.margin.says}.`,
      ],
      basis: spindle.basis,
    }),
  ];
}
