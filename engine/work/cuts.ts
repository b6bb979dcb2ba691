/** A wanted cut, judged on this machine: which link gives way first, and at which depth or feed. */
import type { Work } from '../refit/types.ts';
import { type Cut, OPERATIONS } from '../threads/index.ts';
import { cutFor } from './asked.ts';
import { axisFindings, feedFindings, PUSHES } from './cut-axes.ts';
import { bender, type CutLink } from './cut-bends.ts';
import { gripFindings } from './cut-grip.ts';
import { ratio, told, type WorkFinding } from './finding.ts';
import { baseSpeed, rangeAt, spindleLimits, torqueOver } from './limits.ts';
import { noSpindle, speedFinding } from './links.ts';
import type { WorkMachine } from './machine.ts';
import { mm, rpm, say } from './say.ts';
import { Settings } from './settings.ts';

export interface CutDetail {
  readonly kind: 'cut';
  readonly cut: Cut;
  /** rad/s. */
  readonly speed: number;
  readonly range: string | null;
  /** The first that gives way at the head. */
  readonly links: readonly CutLink[];
}

export interface JudgedCut {
  readonly findings: readonly WorkFinding[];
  readonly detail: CutDetail | null;
}

/** Settings that are ours and not the cut's. */
const OWN = new Set(['operation', 'grip']);

export function judgeCut(machine: WorkMachine, work: Work): JudgedCut {
  const s = new Settings(work);
  const grip = s.number('grip');
  const operation = s.text('operation')?.toLowerCase();
  if (operation === undefined) s.refuse('operation', `The operation is missing: ${OPERATIONS.join(', ')}.`);
  const typed = Object.fromEntries(
    Object.entries(work.settings)
      .filter(([key, value]) => !OWN.has(key) && value.trim() !== '')
      .map(([key, value]) => [key, value.trim()]),
  );
  if (s.findings.length > 0 || operation === undefined) return { findings: s.findings, detail: null };
  if (/^0+([.,]0*)?\s*([a-z/]+.*)?$/i.test(typed.speed ?? '')) {
    s.refuse(
      'speed',
      'The speed is 0: nothing is cut while it stands. Give a cutting speed such as 120 m/min or a spindle speed.',
    );
    return { findings: s.findings, detail: null };
  }
  const made = cutFor(operation, typed);
  if (!made.ok) {
    s.refuse(/^(\w+):/.exec(made.problem.message)?.[1] ?? 'cut', made.problem.message);
    return { findings: s.findings, detail: null };
  }
  const cut = made.value;
  const row = (of: Cut, key: string): number =>
    [...of.found, ...of.given].find((each) => each.key === key)?.value ?? 0;
  const speed = row(cut, 'n');
  const torqueKey = cut.found.some(({ key }) => key === 'Mc') ? 'Mc' : 'T';
  const found: WorkFinding[] = [];
  const links: CutLink[] = [];
  const bend = machine.isDraw ? () => ({}) : bender(cut.operation, typed, row);
  const link = (id: string, name: string, key: string, there: number, unit: string): CutLink => {
    const asked = row(cut, key) * machine.cutting;
    const made: CutLink = {
      id,
      name,
      asked,
      there,
      unit,
      margin: asked > 0 ? there / asked : Number.POSITIVE_INFINITY,
      ...bend(key, there),
    };
    links.push(made);
    return made;
  };
  const where = ({ depth, feed }: CutLink): readonly string[] => [
    ...(depth === undefined
      ? []
      : [
          `It gives way at ${mm(depth)} ${cut.operation === 'parting' ? 'width' : 'depth'}, the feed as it is.`,
        ]),
    ...(feed === undefined ? [] : [`It gives way at ${mm(feed)} feed, the depth as it is.`]),
  ];

  const { spindle } = machine;
  let rangeName: string | null = null;
  found.push(...speedFinding(work.id, machine, spindleLimits(machine), speed));
  if (!spindle) found.push(noSpindle(work.id, machine));
  else {
    const range = rangeAt(spindle, speed);
    rangeName = range?.name ?? null;
    if (range) {
      const isPower = speed > baseSpeed(range) * 1.02;
      const there = torqueOver(range, speed);
      const made = link(
        'spindle',
        isPower ? 'power of the spindle' : 'torque of the spindle',
        torqueKey,
        there,
        'N·m',
      );
      found.push(
        ratio(work.id, {
          check: 'spindle-torque',
          link: 'spindle',
          title: isPower ? 'Power of the spindle' : 'Torque of the spindle',
          asked: made.asked,
          there,
          unit: 'N·m',
          tight: machine.tight,
          says: {
            fits: `The cut takes {asked} at ${rpm(speed)} (${say(made.asked * speed, 'kW')}); the spindle holds {there} (${say(there * speed, 'kW')}).`,
            fails: `The cut takes {asked} at ${rpm(speed)} (${say(made.asked * speed, 'kW')}), but the spindle holds only {there} (${say(there * speed, 'kW')}).`,
          },
          because: [
            `In the ${range.name}; for some seconds it gives ${say(torqueOver(range, speed, 'peak'), 'N·m')}.`,
            ...where(made),
          ],
          basis: spindle.basis,
        }),
      );
      if (machine.refit.machine === 'lathe')
        found.push(
          ...gripFindings(
            machine,
            work,
            cut,
            row(cut, torqueKey) * machine.cutting,
            grip,
            speed,
            links,
            (key, there) => bend(key, there),
          ),
        );
    }
  }
  for (const [id, key, what] of PUSHES[cut.operation]) {
    const axis = machine.axes.get(id);
    if (!axis) continue;
    if (row(cut, key) <= 0) continue;
    found.push(
      ...axisFindings(
        machine,
        work,
        axis,
        what,
        (name, there) => link(`axis-${id}`, name, key, there, 'N'),
        where,
      ),
    );
  }
  found.push(...feedFindings(machine, work, cut, row(cut, 'vf')));
  for (const note of cut.notes)
    if (/diameters|thinner/.test(note))
      found.push(
        told(work.id, { check: 'note', link: 'hole', title: 'Tool', verdict: 'tight', sentence: note }),
      );
  if (cut.operation === 'boring' && row(cut, 'slender') > 4)
    found.push(
      told(work.id, {
        check: 'bar',
        link: 'hole',
        title: 'Boring bar',
        verdict: 'tight',
        sentence: `The bar stands out ${say(row(cut, 'slender'), '1')} times its diameter: a steel bar chatters beyond about four. It gives way by ${say(row(cut, 'push'), 'µm')} from the wall.`,
      }),
    );
  return {
    findings: found,
    detail: {
      kind: 'cut',
      cut,
      speed,
      range: rangeName,
      links: [...links].sort((a, b) => a.margin - b.margin),
    },
  };
}
