/** What is found on the lead of a thread and on the torque of its heaviest pass, and the ways round what fails. */
import type { Work } from '../refit/types.ts';
import { basicSizes, type Side, type Thread } from '../threads/index.ts';
import { cutFor } from './asked.ts';
import { ratio, told, type WorkFinding } from './finding.ts';
import { rangeAt, torqueOver } from './limits.ts';
import type { WorkMachine } from './machine.ts';
import { mm, rpm } from './say.ts';
import { type WayRound, waysRound } from './ways-round.ts';

export function waysFor(
  machine: WorkMachine,
  thread: Thread,
  side: Side,
  findings: readonly WorkFinding[],
): readonly WayRound[] {
  const seen = new Set<string>();
  return findings
    .filter(({ verdict }) => verdict === 'fails')
    .flatMap(({ check }) => waysRound({ what: check, thread, side, machine: machine.refit.machine }))
    .filter(({ name }) => !seen.has(name) && seen.add(name));
}

/** The pitch where the lead belongs, or a lead that is another thread's. */
export function leadFinding(work: string, thread: Thread, lead: number): readonly WorkFinding[] {
  const of = { check: 'lead', link: 'settings', title: 'Travel of one turn' } as const;
  const close = (a: number, b: number): boolean => Math.abs(a - b) < 1e-3 * b;
  if (close(lead, thread.lead))
    return [
      told(work, { ...of, verdict: 'fits', sentence: `${mm(lead)} a turn is the lead of this thread.` }),
    ];
  if (thread.starts > 1 && close(lead, thread.pitch))
    return [
      told(work, {
        ...of,
        verdict: 'fails',
        sentence: `${mm(lead)} is the pitch; the lead of ${thread.starts} starts is ${mm(thread.lead)}. Programmed like this, each start would be cut into the next.`,
        because: ['Pitch is from groove to groove; lead is the travel of one turn, pitch times starts.'],
      }),
    ];
  return [
    told(work, {
      ...of,
      verdict: 'fails',
      sentence: `${mm(lead)} a turn is not the lead of ${thread.designation}, which is ${mm(thread.lead)}.`,
    }),
  ];
}

export function torqueFindings(
  machine: WorkMachine,
  work: Work,
  thread: Thread,
  side: Side,
  speed: number,
  passes: number,
): { readonly torque: number; readonly findings: readonly WorkFinding[] } {
  // Equal chips: the first pass goes in by the whole depth over the root of their number.
  const infeed = `${(basicSizes(thread).depth[side] / Math.sqrt(passes)) * 1e3} mm`;
  const cut = cutFor('threading', {
    material: work.settings.material?.trim() || 'c45',
    thread: thread.designation,
    side,
    depth: infeed,
    infeed,
    speed: `${(speed * 30) / Math.PI} r/min`,
  });
  if (!cut.ok)
    return {
      torque: 0,
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
  const of = (key: string): number => cut.value.found.find((row) => row.key === key)?.value ?? 0;
  const torque = of('Mc') * machine.cutting;
  const { spindle } = machine;
  if (!spindle) return { torque, findings: [] };
  const range = rangeAt(spindle, speed);
  if (!range) return { torque, findings: [] };
  const there = torqueOver(range, speed);
  return {
    torque,
    findings: [
      ratio(work.id, {
        check: 'spindle-torque',
        link: 'spindle',
        title: 'Torque for the heaviest pass',
        asked: torque,
        there,
        unit: 'N·m',
        tight: machine.tight,
        says: {
          fits: 'The heaviest pass takes {asked}; the spindle gives {there} at that speed.',
          fails:
            'The heaviest pass takes {asked}, but the spindle gives only {there} at that speed: more passes, or a lower range.',
        },
        because: [
          `The first of ${passes} passes. In the ${range.name} at ${rpm(speed)}; ${cut.value.material}; ${side === 'internal' ? 'a nut’s groove is shallower than a bolt’s, and its first pass bites at the bore' : 'the first pass bites at the outside'}.`,
        ],
        basis: spindle.basis,
      }),
    ],
  };
}
