/** Refuses, by the name of the field, what cannot be simulated; says what would be right. */

import type { Problem } from '../quantity/index.ts';
import { capital } from '../quantity/words.ts';
import { type AxisModel, travelPerRadian } from './model.ts';
import { MOVES, type Move } from './moves.ts';
import { GROUPS, type NumberParameter } from './parameters.ts';

/** Longer runs are refused rather than kept waiting for. */
export const MOST_SAMPLES = 4_000_000;

const problem = (where: string, message: string): Problem => ({ code: 'out-of-domain', where, message });

/** Every problem of a model; none when it can be simulated. `before` is put in front of each field's name. */
export function checkModel(model: AxisModel, before = ''): Problem[] {
  const problems: Problem[] = [];
  const at = (path: string): string => (before === '' ? path : `${before}.${path}`);
  if (typeof model !== 'object' || model === null)
    return [problem(at('model'), 'A model is an object with the groups motor, transmission and so on.')];
  for (const [group, { kinds, absent }] of Object.entries(GROUPS)) {
    const given = (model as unknown as Readonly<Record<string, unknown>>)[group];
    if (absent && (given === null || given === undefined)) continue;
    if (typeof given !== 'object' || given === null) {
      problems.push(problem(at(group), `The group ${group} is missing.`));
      continue;
    }
    const values = given as Readonly<Record<string, unknown>>;
    const kind = Object.hasOwn(kinds, '') ? '' : String(values.kind);
    if (!Object.hasOwn(kinds, kind)) {
      problems.push(problem(at(`${group}.kind`), `It has to be one of ${Object.keys(kinds).join(', ')}.`));
      continue;
    }
    for (const [name, parameter] of Object.entries(kinds[kind]!)) {
      const value = values[name];
      const path = at(`${group}.${name}`);
      if (parameter.kind === 'choice') {
        if (!parameter.options.includes(value as string))
          problems.push(problem(path, `It has to be one of ${parameter.options.join(', ')}.`));
        continue;
      }
      const fault = numberFault(value, parameter);
      if (fault) problems.push(problem(path, `${capital(parameter.name)} ${fault}`));
    }
  }
  return problems.length > 0 ? problems : crossChecks(model, at);
}

export function numberFault(value: unknown, { domain, none }: NumberParameter): string | undefined {
  if (typeof value !== 'number' || Number.isNaN(value)) return 'has to be a number.';
  if (value === Number.POSITIVE_INFINITY) return none === undefined ? 'has to be finite.' : undefined;
  if (!Number.isFinite(value)) return 'has to be finite.';
  if (domain === 'positive' && !(value > 0)) return `has to be above zero; it is ${value}.`;
  if (domain === 'not negative' && value < 0) return `cannot be negative; it is ${value}.`;
  if (domain === 'fraction' && !(value >= 0 && value <= 1)) return `lies between 0 and 1; it is ${value}.`;
  if (domain === 'whole' && !(Number.isInteger(value) && value >= 0))
    return `has to be a whole number, not below 0; it is ${value}.`;
  return undefined;
}

/** What each value allows by itself but not together. */
function crossChecks(model: AxisModel, at: (path: string) => string): Problem[] {
  const problems: Problem[] = [];
  const say = (path: string, message: string): void => void problems.push(problem(at(path), message));
  const { motor, transmission, slide, control, drive, supply, feedback } = model;
  if (transmission.backlash > 0 && transmission.stiffness === Number.POSITIVE_INFINITY)
    say(
      'transmission.stiffness',
      'With play in the screw, give the stiffness: metal that meets metal is never wholly rigid.',
    );
  if (motor.kind === 'stepper' && motor.rotorTeeth < 1)
    say('motor.rotorTeeth', 'A stepping motor has at least one tooth; usual are 50.');
  if (motor.kind === 'stepper' && control.kind !== 'open')
    say('control.kind', 'A stepping motor has no loop here: the control is “open”.');
  if (motor.kind === 'servo' && control.kind === 'open')
    say('control.kind', 'A servo motor needs a loop: “cascade” or “pid”.');
  if (motor.kind === 'servo' && control.kind === 'pid' && !(control.sample > 0))
    say('control.sample', 'A single loop here is always sampled: give the time between two samples.');
  if (control.kind === 'cascade') {
    if (control.speedEvery < 1) say('control.speedEvery', 'It has to be at least 1.');
    else if (control.positionEvery < 1 || control.positionEvery % control.speedEvery !== 0)
      say(
        'control.positionEvery',
        'It has to be a multiple of speedEvery: the position loop sets the speed loop.',
      );
    if (control.current === 'pi' && !(control.currentGain > 0))
      say(
        'control.currentGain',
        'A “pi” current loop needs a gain above zero; or make the current loop “ideal”.',
      );
    if (control.sample === 0) {
      if (feedback.countsPerTurn > 0 || feedback.countLength > 0)
        say(
          'control.sample',
          'Counts are read by a sampled control: give the time between two samples, or no counts.',
        );
      if (drive.pulse > 0)
        say(
          'control.sample',
          'Pulses are taken by a sampled control: give the time between two samples, or no pulses.',
        );
    }
  }
  if ('delay' in control && control.delay > 16)
    say('control.delay', 'More than 16 samples are not followed.');
  if (slide.smoothing > 0 && motor.coulomb > 0)
    say(
      'motor.coulomb',
      'Smoothed friction is for published benchmarks: all dry friction stands at the slide then.',
    );
  if (slide.staticFriction > 0 && slide.staticFriction < slide.coulomb)
    say(
      'slide.staticFriction',
      'Friction from rest is not below the sliding friction; raise it, or give 0 to make them equal.',
    );
  if (supply.kind !== 'constant') {
    if (supply.dumpOn < Number.POSITIVE_INFINITY && !(supply.dumpOff < supply.dumpOn))
      say('supply.dumpOff', 'The dump resistor has to switch out at a lower voltage than it switches in.');
    if (supply.dumpOn < Number.POSITIVE_INFINITY && supply.dumpResistance === Number.POSITIVE_INFINITY)
      say('supply.dumpResistance', 'A dump resistor that switches in needs its resistance.');
  }
  const r = travelPerRadian(model);
  if (!(r > 1e-9 && r < 10))
    say(
      'transmission.lead',
      `One turn of the motor would move the slide ${r * 2 * Math.PI} m; look at lead and ratio.`,
    );
  return problems;
}

/** Every problem of a move. */
export function checkMove(move: Move): Problem[] {
  const spec = Object.hasOwn(MOVES, String(move?.kind)) ? MOVES[move.kind] : undefined;
  if (!spec) return [problem('move.kind', `It has to be one of ${Object.keys(MOVES).join(', ')}.`)];
  const values = move as unknown as Readonly<Record<string, unknown>>;
  const problems: Problem[] = [];
  for (const [name, field] of Object.entries(spec.fields)) {
    const value = values[name];
    if (field.options) {
      if (value !== undefined && !field.options.includes(value as string))
        problems.push(problem(`move.${name}`, `It has to be one of ${field.options.join(', ')}.`));
      continue;
    }
    if (field.none !== undefined && (value === undefined || value === Number.POSITIVE_INFINITY)) continue;
    const domain = field.domain === 'count' ? 'whole' : field.domain;
    const fault =
      numberFault(value, { kind: 'number', name: field.name, unit: field.unit, domain }) ??
      (field.domain === 'count' && (value as number) < 1 ? 'has to be at least 1.' : undefined) ??
      (Math.abs(value as number) > 1e9 ? 'is beyond anything that can be meant.' : undefined);
    if (fault) problems.push(problem(`move.${name}`, `${capital(field.name)} ${fault}`));
  }
  return problems;
}

/** What makes a move of each kind long: the field that a person would change. */
const LENGTH: Readonly<Partial<Record<Move['kind'], string>>> = {
  rapid: 'distance',
  ramp: 'duration',
  reversal: 'distance',
  'small-steps': 'count',
  circle: 'turns',
  'force-step': 'duration',
  'brake-from-rapid': 'cruise',
  'power-cut': 'cruise',
  drop: 'at',
};

/** s of a move beyond which the move itself is what is too long, not the sample too short. */
const LONG_MOVE = 60;

/** Too many samples, by the field that makes them so many; s of the whole move and of one sample. */
function tooLong(move: Move, until: number, h: number): Problem {
  const field = until > LONG_MOVE ? LENGTH[move.kind] : undefined;
  const time = `takes ${Number(until.toPrecision(3))} s, which is ${Math.round(until / h)} samples; at most ${MOST_SAMPLES} are simulated`;
  return field === undefined
    ? problem('control.sample', `The move ${time}. Make the samples longer.`)
    : problem(
        `move.${field}`,
        `As it is given (${MOVES[move.kind].fields[field]!.name}), the move ${time}. Give less.`,
      );
}

/** What model and move allow each by itself but not together. */
export function checkTogether(
  model: AxisModel,
  second: AxisModel | undefined,
  move: Move,
  until: number,
  h: number,
): Problem[] {
  if (!(until > 0) || !Number.isFinite(until))
    return [problem('until', 'The time to simulate has to be above zero and finite.')];
  const problems: Problem[] = [];
  if (model.control.sample > until)
    problems.push(
      problem(
        'control.sample',
        `The control would look every ${model.control.sample} s, and the whole move with its settling takes ${Number(until.toPrecision(3))} s: it would never act. Give a shorter time between two samples; usual are 0.05 to 2 ms.`,
      ),
    );
  if (until / h > MOST_SAMPLES) problems.push(tooLong(move, until, h));
  if (second) {
    if (move.kind !== 'circle') problems.push(problem('second', 'Only a circle takes a second axis.'));
    const every = ({ control }: AxisModel): number => (control.kind === 'cascade' ? control.speedEvery : 1);
    if (second.control.sample !== model.control.sample || every(second) !== every(model))
      problems.push(
        problem('second.control.sample', 'Axes in step share one sample time, and one speedEvery.'),
      );
  }
  if (model.motor.kind === 'servo' && model.supply.kind === 'constant' && !(model.supply.voltage > 0))
    problems.push(problem('supply.voltage', 'A motor needs a voltage.'));
  return problems;
}
