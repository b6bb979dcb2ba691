/** Typing a number of a motion into the stop circuit by its path: 'X.travel', '210 mm'. */
import { nearest } from '../../quantity/nearest.ts';
import { own } from '../../quantity/own.ts';
import { askBackOfSetting } from '../../quantity/read-setting.ts';
import type { SettingSpec } from '../../quantity/settings.ts';
import { ok, type Problem, type Result, refuse } from '../../quantity/types.ts';
import type { StopCircuit } from '../../refit/types.ts';
import type { StopAnalysis } from './analyse.ts';
import { MOTION_SETTINGS } from './motion.ts';
import { readSettings } from './settings.ts';

export interface Typed {
  readonly circuit: StopCircuit;
  /** What to ask back before it is recorded, where it is far outside what is usual. */
  readonly askBack: string | undefined;
}

/** What is typed first counts; 'unknown' and nothing take back what was typed. A refusal names the motion or the number. */
export function typeNumber(circuit: StopCircuit, path: string, typed: string): Result<Typed> {
  const dot = path.indexOf('.');
  const [id, setting] = dot < 0 ? [path, ''] : [path.slice(0, dot), path.slice(dot + 1)];
  const motion = own(circuit.motions, id);
  if (motion === undefined)
    return refuse(unknown(path, 'nothing that moves', id, Object.keys(circuit.motions)));
  const specs = MOTION_SETTINGS[motion.kind];
  const spec = own(specs, setting);
  if (spec === undefined) return refuse(unknown(path, `no number of ${id}`, setting, Object.keys(specs)));
  const text = typed.trim();
  const { [setting]: _before, ...rest } = motion.settings;
  const settings = text === '' || text.toLowerCase() === 'unknown' ? rest : { ...rest, [setting]: text };
  const read = readSettings(specs, settings, `stop.motions.${id}.settings`);
  if (!read.ok) return read;
  return ok({
    circuit: { ...circuit, motions: { ...circuit.motions, [id]: { ...motion, settings } } },
    askBack: askBackOfSetting(spec, text),
  });
}

export interface Waited {
  readonly motion: string;
  readonly kind: 'axis' | 'spindle';
  readonly setting: string;
}

/** Numbers that are not known and that an answer waits for, those of stopping before those of places. */
export function waitedFor({
  base,
  stops,
  axes,
}: Pick<StopAnalysis, 'base' | 'stops' | 'axes'>): readonly Waited[] {
  return base.model.motions.flatMap(({ id, kind, numbers: { rows } }) => {
    const own = stops.flatMap((each) => each.stops).filter(({ motion }) => motion === id);
    const asked = new Set([
      'vertical',
      ...own.flatMap(({ needs }) => needs),
      ...axes.filter(({ motion }) => motion === id).flatMap(({ needs }) => needs),
    ]);
    return [...asked]
      .filter((name) => rows.some(({ setting, origin }) => setting === name && origin === 'unknown'))
      .map((setting) => ({ motion: id, kind, setting }));
  });
}

/** What could be typed for it: 'yes', '5 mm'. */
export const exampleOf = (spec: SettingSpec): string =>
  spec.kind === 'choice' ? spec.options[0]! : spec.kind === 'quantity' ? `… ${spec.unit}` : '…';

function unknown(where: string, what: string, word: string, all: readonly string[]): Problem {
  const near = nearest(word, all);
  return {
    code: 'unknown-name',
    where,
    message: `“${word.slice(0, 40)}” is ${what} in the stop circuit; ${near ? `did you mean ${near}?` : `there are: ${all.join(', ') || 'none'}.`}`,
  };
}
