/** A handwheel on an encoder input of the control and its switches on inputs, where the job wants one. */
import { chosenPart } from '../../../refit/place.ts';
import { HANDWHEEL_LINES, selectorsOf } from '../kinds/handwheel.ts';
import { partFacts } from '../part-facts.ts';
import type { Terminal } from '../types.ts';
import type { Build } from './build.ts';
import { isWished, NOT_WISHED, type Wished } from './wanted.ts';
import type { Control } from './ways-in.ts';

/** As it stands among the encoders that a control reads. */
const INPUT = 'HW';

export function proposeHandwheel(build: Build, control: Control, axes: readonly string[]): Wished {
  const known = [...build.devices.values()].find(({ kind }) => kind === 'handwheel');
  if (!known && !isWished(build.refit, 'handwheel')) return NOT_WISHED;
  const encoders = (build.devices.get(control.id)!.settings.encoders ?? '').split(/[\s,;]+/).filter(Boolean);
  const part = chosenPart(build.refit, null, 'control');
  const room = part ? partFacts(part).value('encoder-inputs') : undefined;
  const isRead = encoders.includes(INPUT);
  if (!isRead && (room === undefined || room < encoders.length + 1))
    return {
      questions: [],
      left: [
        room === undefined
          ? `The handwheel is left out: how many encoder inputs ${control.id} has has not been said.`
          : `The handwheel is left out: it wants an encoder input, and ${control.id} has ${room === 0 ? 'none' : `${room}, all of them taken`}.`,
      ],
    };
  const own =
    known?.id ??
    build.named('S', 'handwheel', 'Handwheel', { where: 'machine', settings: { axes: axes.join(' ') } });
  const lines = build.devices.get(own)!.settings.lines;
  if (!HANDWHEEL_LINES.some((each) => each === lines))
    return {
      questions: [
        {
          id: `${own}.lines`,
          asks: `${own} (handwheel): what are its output lines? Four terminals A+, A-, B+, B- are differential; A and B alone are single-ended, or open collector where its sheet says so.`,
          place: { of: 'device', id: own, setting: 'lines' },
          options: HANDWHEEL_LINES,
        },
      ],
      left: [],
    };
  build.addName(control.id, 'encoders', INPUT);
  // The one encoder it reads decides what its inputs are; otherwise they are what they are.
  if (encoders.length === 0) build.settle(control.id, { 'encoder-lines': lines });
  layWheel(build, control.id, own, lines!);
  return { questions: [], left: laySwitches(build, control, own) };
}

/** The wheel to the encoder input, through whatever makes its lines those that are read. */
function layWheel(build: Build, control: string, own: string, lines: string): void {
  const at = (mark: string) => `${control}.${INPUT}-${mark}`;
  const pairs = lines === 'differential';
  const cable = build.cable('WH', 'Handwheel', {
    cores: pairs ? '6' : '4',
    section: '0.25 mm²',
    shield: 'braid',
    twisted: pairs ? 'yes' : 'no',
    route: 'signals',
    laid: 'moved',
  });
  for (const mark of ['5V', '0V', 'SH']) build.wire(at(mark), `${own}.${mark}`, cable);
  const readsPairs = build.has(at('A+'));
  const unit =
    pairs === readsPairs
      ? undefined
      : build.named('A', 'line-unit', 'Lines of the handwheel', {
          settings: { way: readsPairs ? 'drives pairs' : 'receives pairs', channels: '2' },
        });
  if (unit !== undefined) for (const mark of ['5V', '0V']) build.wire(at(mark), `${unit}.${mark}`);
  const halves = (marked: boolean) => (marked ? ['+', '-'] : ['']);
  for (const [n, channel] of ['A', 'B'].entries()) {
    for (const half of halves(pairs)) {
      const to = unit === undefined ? at(`${channel}${half}`) : `${unit}.${n + 1}${half}`;
      build.wire(`${own}.${channel}${half}`, to, cable);
      if (lines === 'open collector' && !pullsUp(build, to)) pullUp(build, channel, at('5V'), to);
    }
    if (unit !== undefined)
      for (const half of halves(readsPairs)) build.wire(`${unit}.${n + 1}${half}`, at(`${channel}${half}`));
  }
}

function pullsUp(build: Build, input: string): boolean {
  const nature = build.terminal(input)?.nature;
  return nature?.kind === 'input' && nature.pull !== undefined;
}

/** 5 mA through an open collector: common practice, no source. */
function pullUp(build: Build, channel: string, plus: string, line: string): void {
  const resistor = build.named('R', 'resistor', `Pull-up of the handwheel, channel ${channel}`, {
    settings: { ohms: '1 kohm', watts: '0.25 W' },
  });
  build.wire(plus, `${resistor}.1`);
  build.wire(`${resistor}.2`, line);
}

/** Its contacts share one end, so that all of them go to inputs of one sort. */
function laySwitches(build: Build, control: Control, own: string): readonly string[] {
  const { settings } = build.devices.get(own)!;
  const names = selectorsOf({ axes: settings.axes ?? '', steps: Number(settings.steps ?? 3) }).map(
    ([name]) => name,
  );
  const [first] = names;
  if (first === undefined) return [];
  const open = names.filter((name) => !build.taken(`${own}.${name}-2`));
  if (open.length === 0) return [];
  const sorts = [/^in\d+$/, /^p\d+$/].map((sort) =>
    control.freeInputs().filter(({ mark }) => sort.test(mark)),
  );
  // Where some are laid already the others follow them.
  const begun = names.length > open.length;
  const inputs = (begun ? sorts.slice(0, 1) : sorts).find((each) => each.length >= open.length);
  if (!inputs)
    return [
      `The switches of the handwheel are left out: they ask ${control.id} for ${open.length} inputs of one sort, and ${Math.max(...sorts.map((each) => each.length))} are free. Axis and step are then chosen at the control.`,
    ];
  const cable = build.cable('WHS', 'Switches of the handwheel', {
    cores: String(names.length + 1),
    section: '0.25 mm²',
    shield: 'none',
    route: 'signals',
    laid: 'moved',
  });
  if (!build.taken(`${own}.${first}-1`)) build.wire(control.other(inputs[0]!), `${own}.${first}-1`, cable);
  for (const [n, name] of open.entries()) build.wire(`${own}.${name}-2`, (inputs[n] as Terminal).id, cable);
  return [];
}
