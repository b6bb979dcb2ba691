/** Home and limit switches, and what has to be asked before they can be laid. */
import { own } from '../../../quantity/own.ts';
import { chosenPart } from '../../../refit/place.ts';
import type { Refit } from '../../../refit/types.ts';
import { CABINET_WIRE } from '../inside-length.ts';
import { partFacts } from '../part-facts.ts';
import type { Build } from './build.ts';
import type { Question } from './questions.ts';
import { HOMES, LIMITS, YES_NO } from './signals.ts';
import type { Control } from './ways-in.ts';

export function proposeHomes(build: Build, control: Control, axes: readonly string[]): void {
  const answer = HOMES.find((each) => each === build.refit.wiring.settings.homes);
  if (answer === undefined || answer === 'none') return;
  const { plus24, zero } = control.rails;
  for (const [n, axis] of axes.entries()) {
    const mark = build.has(`${control.id}.in${n + 1}`) ? `in${n + 1}` : `p${n + 1}`;
    const input = build.terminal(`${control.id}.${mark}`);
    if (!input) return;
    const cable = build.cable(`WH-${axis}`, `Home of ${axis}`, {
      cores: '3',
      section: '0.5 mm²',
      shield: 'none',
      route: 'signals',
      laid: 'moved',
    });
    if (answer === 'switches') {
      const own = build.device(`S${21 + n}`, 'home', `Home of ${axis}`, { where: 'machine' });
      build.wire(control.other(input), `${own}.13`, cable);
      build.wire(`${own}.14`, input.id, cable);
      continue;
    }
    if (mark.startsWith('p')) return;
    const own = build.device(`B${21 + n}`, 'sensor', `Home of ${axis}`, {
      where: 'machine',
      settings: { output: answer.slice(0, 3) },
    });
    build.wire(plus24, `${own}.BN`, cable);
    build.wire(zero, `${own}.BU`, cable);
    // A sensor of the wrong kind is shown, and left for a person to exchange.
    if (control.takes(build.terminal(`${own}.BK`)!, input)) build.wire(`${own}.BK`, input.id, cable);
  }
}

/** Two switches an axis that open at its ends, in series on one input. */
export function proposeLimits(build: Build, control: Control, axes: readonly string[]): readonly string[] {
  if (build.refit.wiring.settings.limits !== LIMITS[0]) return [];
  const left: string[] = [];
  for (const axis of axes) {
    const [one, other] = ['first', 'other'].map((end) => limitName(axis, end));
    const known = [...build.devices.values()].find(({ kind, name }) => kind === 'limit' && name === other);
    const done = known !== undefined && build.taken(`${known.id}.12`);
    const input = control.freeInputs()[0];
    if (!done && !input) {
      left.push(`The limit switches of ${axis} are left out: no input of ${control.id} is free.`);
      continue;
    }
    const [near, far] = [one!, other!].map((name) =>
      build.named('S31', 'limit', name, { where: 'machine', settings: { nc: '1', no: '0' } }),
    );
    const cable = build.cable(`WL-${axis}`, `Limits of ${axis}`, {
      cores: '3',
      section: '0.5 mm²',
      shield: 'none',
      route: 'signals',
      laid: 'moved',
    });
    build.wire(`${near}.12`, `${far}.11`, cable);
    if (done) continue;
    build.wire(control.other(input!), `${near}.11`, cable);
    build.wire(`${far}.12`, input!.id, cable);
  }
  return left;
}

const limitName = (axis: string, end: string): string => `Limit of ${axis}, ${end} end`;

/** What has to be told before switches and the filter can be laid. */
export function wholeQuestions(refit: Refit): readonly Question[] {
  const { settings } = refit.wiring;
  const asked = (setting: string, options: readonly string[]) =>
    !options.some((each) => each === settings[setting]);
  const axes = refit.chains.some(({ kind }) => kind === 'axis');
  const limits = Object.values(refit.stop?.elements ?? {}).some(({ kind }) => kind === 'limit');
  const fed = refit.chains.some(({ id, kind }) => {
    const drive = kind === 'spindle' ? chosenPart(refit, id, 'spindle-drive') : undefined;
    return drive !== null && drive !== undefined && partFacts(drive).choice('type') !== 'line';
  });
  return [
    ...(asked('homes', HOMES) ? [HOMES_QUESTION] : []),
    ...(axes && !limits && asked('limits', LIMITS)
      ? [
          {
            id: 'wiring.limits',
            asks: 'How is the end of each way watched: by limit switches to the control, in the stop circuit, or not at all?',
            place: { of: 'wiring' as const, setting: 'limits' },
            options: LIMITS,
          },
        ]
      : []),
    ...(fed && asked('spindle-filter', YES_NO)
      ? [
          {
            id: 'wiring.spindle-filter',
            asks: 'Is there a mains filter to put before the spindle drive?',
            place: { of: 'wiring' as const, setting: 'spindle-filter' },
            options: YES_NO,
          },
        ]
      : []),
    ...(own(settings, CABINET_WIRE) === undefined
      ? [
          {
            id: `wiring.${CABINET_WIRE}`,
            asks: 'How long is any wire between two parts in the cabinet, at most?',
            place: { of: 'wiring' as const, setting: CABINET_WIRE },
            unit: 'm',
          },
        ]
      : []),
  ];
}

const HOMES_QUESTION: Question = {
  id: 'wiring.homes',
  asks: 'What tells the control where zero of each axis is?',
  place: { of: 'wiring', setting: 'homes' },
  options: HOMES,
};
