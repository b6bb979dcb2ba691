/** A wiring proposed from the parts that are chosen: what is missing is added, what a person made stays. */

import { chosenPart } from '../../../refit/place.ts';
import type { Change, Refit, Wiring } from '../../../refit/types.ts';
import type { Drawn } from '../../power/given.ts';
import { checkWiring } from '../check/checker.ts';
import { LOAD_SIDE } from '../kinds/mains-filter.ts';
import { partFacts } from '../part-facts.ts';
import { readWiring } from '../read.ts';
import type { WiringFinding } from '../types.ts';
import type { AskedAuxiliary, AskedInput, AskedOutput } from './asked.ts';
import { proposeAuxiliaries } from './auxiliaries.ts';
import { proposeMotor } from './axes.ts';
import { Build } from './build.ts';
import { proposePulses } from './commands.ts';
import { proposeSenses } from './feedback.ts';
import { proposeHandwheel } from './handwheel.ts';
import { proposeHomes, proposeLimits, wholeQuestions } from './homes.ts';
import { lay } from './lay.ts';
import { mainsMarks, proposeEarth, proposeMains, type Taker } from './mains.ts';
import { proposeProbe } from './probe.ts';
import { type AnswerPlace, type Question, questionsFrom } from './questions.ts';
import { proposeDirections, proposeFeedback, proposeVolts } from './signals.ts';
import { proposeContacts } from './spindle.ts';
import { isMains, takeOver } from './stop.ts';
import { Control } from './ways-in.ts';

export { PROPOSAL_SETTINGS } from './signals.ts';

export type { AnswerPlace, AskedAuxiliary, AskedInput, AskedOutput, Question };

export interface Proposal {
  /** The wiring with everything that was added. */
  readonly wiring: Wiring;
  /** What has to be recorded for it: one edit. Empty where nothing is missing. */
  readonly changes: readonly Change[];
  readonly questions: readonly Question[];
  readonly findings: readonly WiringFinding[];
  /** What the refit has and the proposal leaves out, and why: sentences. */
  readonly left: readonly string[];
  /** By wire that is added: why it has its section, 'usual', or what its section waits for. */
  readonly reasons: Readonly<Record<string, string>>;
}

/**
 * @param asked what the auxiliaries of the refit want wired; none where the caller does not know them
 * @param drawn what has been worked out of the drives: wires are as thick as the rules will want them
 */
export function proposeWiring(
  refit: Refit,
  asked: readonly AskedAuxiliary[] = [],
  drawn: Drawn = {},
): Proposal {
  const build = new Build(refit, drawn);
  const left: string[] = [];
  const open: Question[] = [];
  const stop = refit.stop;
  const axes = refit.chains.filter(({ kind }) => kind === 'axis');
  const spindles = refit.chains.filter(({ kind }) => kind === 'spindle');
  const elementOf = (chain: string, kind: 'axis' | 'spindle', field: 'drive' | 'brake') => {
    const motions = Object.values(stop?.motions ?? {});
    const found =
      motions.find(({ id }) => id === chain) ??
      (kind === 'spindle' && spindles.length === 1
        ? motions.find((each) => each.kind === 'spindle')
        : undefined);
    return found?.[field] ?? undefined;
  };

  // Devices that are both a part and an element of the stop circuit.
  const parts = new Map<
    string,
    { part: string | null; kind?: string; settings?: Record<string, string | undefined> }
  >();
  const controlPart = chosenPart(refit, null, 'control');
  const controlElement =
    Object.values(stop?.elements ?? {}).find(({ kind }) => kind === 'control')?.id ?? 'A1';
  parts.set(controlElement, {
    part: controlPart?.id ?? null,
    settings: { homes: stop?.elements[controlElement]?.settings.homes },
  });
  const supplyPart = chosenPart(refit, null, 'supply');
  const supplyFacts = supplyPart ? partFacts(supplyPart) : undefined;
  const transformer = supplyFacts?.choice('type') === 'transformer';
  const supplies = Object.values(stop?.elements ?? {})
    .filter((element) => element.kind === 'supply' && !isMains(element))
    .map(({ id }) => id);
  const [small = 'G1', power = 'G2'] = supplies;
  parts.set(power, { part: supplyPart?.id ?? null, ...(transformer ? { kind: 'bus' } : {}) });
  for (const [n, { id, kind }] of refit.chains.entries()) {
    const place = kind === 'spindle' ? 'spindle-drive' : 'drive';
    const part = chosenPart(refit, id, place);
    const element = elementOf(id, kind, 'drive') ?? `T${n + 1}`;
    parts.set(element, { part: part?.id ?? null });
    const brake = elementOf(id, kind, 'brake');
    if (brake) parts.set(brake, { part: chosenPart(refit, id, 'brake')?.id ?? null });
  }

  const taken = stop ? takeOver(build, stop, parts) : undefined;
  const device = (element: string) => taken?.device(element);
  const control =
    device(controlElement) ??
    (controlPart
      ? build.device('A1', 'control', 'Control', {
          part: controlPart.id,
          settings: { 'stop-input': 'no', 'enable-output': 'yes' },
        })
      : undefined);
  const g1 = device(small) ?? build.device('G1', 'supply', '24 V');
  build.settle(g1, { volts: '24 V' });
  const g2 = supplyPart
    ? (device(power) ??
      build.device('G2', transformer ? 'bus' : 'supply', 'Power for the drives', { part: supplyPart.id }))
    : undefined;
  // Behind the fuse of the control where there is one.
  const fuse = [...build.wants]
    .find(({ from, to }) => from === `${g1}.plus` && /^F\w*\.1$/.test(to))
    ?.to.replace(/\.1$/, '.2');
  const plus24 = fuse ?? `${g1}.plus`;
  const zero = `${g1}.minus`;
  if (control && !stop) {
    build.wire(plus24, `${control}.plus`);
    build.wire(`${control}.minus`, zero);
  }

  const driveOf = new Map<string, string>();
  for (const [n, { id, kind }] of refit.chains.entries()) {
    const spindle = kind === 'spindle';
    const part = chosenPart(refit, id, spindle ? 'spindle-drive' : 'drive');
    const element = elementOf(id, kind, 'drive');
    const drive =
      (element && device(element)) ??
      (part
        ? build.device(`T${n + 1}`, spindle ? 'inverter' : 'drive', `Drive of ${id}`, { part: part.id })
        : undefined);
    if (drive === undefined || !part) continue;
    driveOf.set(id, drive);
    if (!stop && !spindle && g2) {
      build.wire(`${g2}.plus`, `${drive}.DC+`);
      build.wire(`${g2}.minus`, `${drive}.DC-`);
      if (control) build.wire(`${control}.enable`, `${drive}.EN`);
      build.wire(`${drive}.COM`, zero);
    }
    const motor = chosenPart(refit, id, spindle ? 'spindle-motor' : 'motor');
    const motorType = motor && partFacts(motor).choice('type');
    if (motor && motorType)
      proposeMotor(
        build,
        id,
        n + 1,
        drive,
        motor.id,
        spindle ? 'spindle-motor' : motorType === 'stepper' ? 'stepper' : 'servo-motor',
      );
    const feedback = chosenPart(refit, id, spindle ? 'spindle-feedback' : 'feedback');
    if (feedback && partFacts(feedback).choice('type') === 'encoder')
      proposeFeedback(build, id, n + 1, drive, feedback.id, control, spindle);
    const felt = proposeSenses(build, id, n + 1, drive, spindle);
    left.push(...felt.left);
    open.push(...felt.questions);
  }

  let pulsed = 0;
  for (const { id } of axes) {
    const drive = driveOf.get(id);
    const part = chosenPart(refit, id, 'drive');
    if (!drive || !part || !control) continue;
    const command = partFacts(part).choice('command');
    if (command === 'pulses') {
      build.addName(control, 'pulse-axes', id);
      proposePulses(build, id, drive, { control, plus24, zero }, ++pulsed);
      if (build.has(`${control}.GND`)) build.wire(`${control}.GND`, zero);
    } else if (command === 'volts') {
      build.addName(control, 'volts-axes', id);
      proposeVolts(build, id, drive, control);
    }
  }
  for (const { id } of spindles) {
    const drive = driveOf.get(id);
    const command = drive && build.terminals(drive).has('CMD+');
    if (!drive || !control || !command) continue;
    build.settle(control, {
      'spindle-analogue':
        build.terminal(`${drive}.CMD+`)!.nature.kind === 'analogue-input' && lowOf(build, drive) < 0
          ? '±10 V'
          : '0 to 10 V',
    });
    proposeVolts(build, 'S', drive, control);
    proposeDirections(build, drive, control, zero, plus24);
  }
  const later: Taker[] = [];
  if (control) {
    const ways = new Control(build, control, { plus24, zero });
    const names = axes.map(({ id }) => id);
    if (build.has(`${control}.in-com`)) build.wire(`${control}.in-com`, ways.common);
    proposeHomes(build, ways, names);
    left.push(...proposeLimits(build, ways, names));
    for (const { id } of spindles) {
      const drive = driveOf.get(id);
      if (drive === undefined) continue;
      const told = proposeContacts(build, drive, ways);
      left.push(...told.left);
      open.push(...told.questions);
    }
    const placed = proposeAuxiliaries(build, ways, asked);
    later.push(...placed.takers);
    left.push(...placed.left);
    for (const wished of [proposeProbe(build, ways), proposeHandwheel(build, ways, names)]) {
      left.push(...wished.left);
      open.push(...wished.questions);
    }
  }

  const takers: Taker[] = [{ device: g1, marks: ['L', 'N'], contactors: [], name: 'the 24 V supply' }];
  if (g2 && transformer) {
    const rated = chosenPart(refit, null, 'site');
    const tap = rated && partFacts(rated).value('transformerRated');
    const wound = build.device('T10', 'transformer', 'Transformer of the drives', {
      part: supplyPart!.id,
      settings: { primary: tap === undefined ? undefined : `${tap} V` },
    });
    takers.push({ device: wound, marks: ['1', '2'], contactors: [], name: 'the transformer' });
    build.wire(`${wound}.3`, `${g2}.AC1`);
    build.wire(`${wound}.4`, `${g2}.AC2`);
  } else if (g2)
    takers.push({ device: g2, marks: ['L', 'N'], contactors: [], name: 'the supply of the drives' });
  for (const id of build.devices.keys()) {
    if (id === 'G3') takers.push({ device: id, marks: ['L', 'N'], contactors: [], name: 'the 5 V supply' });
  }
  for (const { id } of spindles) {
    const drive = driveOf.get(id);
    const marks = drive === undefined ? [] : mainsMarks(build, drive);
    if (!drive || marks.length === 0) continue;
    const contactors = taken?.mainsFed.find((each) => each.drive === drive)?.contactors ?? [];
    takers.push({
      device: drive,
      marks,
      contactors,
      name: 'the spindle',
      ...filterOf(build, drive, left),
    });
  }
  for (const { id } of axes) {
    const drive = driveOf.get(id);
    const marks = drive === undefined ? [] : mainsMarks(build, drive);
    if (!drive || marks.length === 0) continue;
    if (stop)
      left.push(
        `The mains of ${drive} are left out: the drive of ${id} takes the mains itself, and which contactors of the stop circuit they go through is not drawn. Wire them by hand.`,
      );
    else takers.push({ device: drive, marks, contactors: [], name: `the drive of ${id}` });
  }
  proposeMains(build, takers, later);
  const earthed = Object.values(stop?.elements ?? {}).filter(
    (element) => element.kind === 'supply' && !isMains(element) && element.settings.earthed !== 'no',
  );
  proposeEarth(
    build,
    earthed.length > 0 ? earthed.flatMap(({ id }) => (device(id) ? [`${device(id)}.minus`] : [])) : [zero],
  );
  lay(build);

  const { wiring } = build;
  const findings = checkWiring(wiring, refit);
  const questions = [
    ...wholeQuestions(refit),
    ...open,
    ...questionsFrom(findings, wiring, readWiring(wiring, refit)),
  ];
  return {
    wiring,
    changes: changesBetween(refit.wiring, wiring),
    questions,
    findings,
    left,
    reasons: Object.fromEntries(build.reasons),
  };
}

/** A mains filter right before a spindle drive, where the person has one. */
function filterOf(build: Build, drive: string, left: string[]): { readonly filter?: string } {
  const known = [...build.devices.values()].find(({ kind }) => kind === 'mains-filter')?.id;
  if (known === undefined && build.refit.wiring.settings['spindle-filter'] !== 'yes') return {};
  const settings = { phases: build.has(`${drive}.L3`) ? 'three' : 'one' };
  const filter =
    known ?? build.device('Z1', 'mains-filter', 'Mains filter of the spindle drive', { settings });
  // A drive that is wired to something else already would have its filter bridged.
  if (build.taken(`${drive}.${mainsMarks(build, drive)[0]}`) && !build.taken(`${filter}.L1${LOAD_SIDE}`)) {
    left.push(
      `The mains filter ${filter} is not wired: ${drive} gets its mains by wires that are there already. Take those off at ${drive}, and propose again.`,
    );
    return {};
  }
  return { filter };
}

function lowOf(build: Build, drive: string): number {
  const nature = build.terminal(`${drive}.CMD+`)!.nature;
  return nature.kind === 'analogue-input' ? (nature.low ?? 0) : 0;
}

function changesBetween(before: Wiring, after: Wiring): readonly Change[] {
  const changes: Change[] = [];
  for (const [id, now] of Object.entries(after.devices))
    if (before.devices[id] !== now)
      changes.push({ do: 'device', id, old: before.devices[id] ?? null, new: now });
  for (const [id, now] of Object.entries(after.cables))
    if (before.cables[id] !== now)
      changes.push({ do: 'cable', id, old: before.cables[id] ?? null, new: now });
  for (const [id, now] of Object.entries(after.wires))
    if (before.wires[id] !== now) changes.push({ do: 'wire', id, old: before.wires[id] ?? null, new: now });
  return changes;
}
