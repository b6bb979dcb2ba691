/** Settings of devices, terminals, wires and cables: what cannot be read is a problem beside them, and the rest is kept. */
import { own } from '../../quantity/own.ts';
import { readSettings as readAll } from '../../quantity/read-setting.ts';
import type { Setting, SettingSpecs, Settings } from '../../quantity/settings.ts';
import type { WiringProblem } from './types.ts';

export { readSetting } from '../../quantity/read-setting.ts';
export {
  amount,
  choice,
  count,
  level,
  mostly,
  type Setting,
  type SettingSpec,
  type SettingSpecs,
  type Settings,
  text,
} from '../../quantity/settings.ts';

/**
 * All settings of one thing. What cannot be read is reported with its place and is then not known; the rest is kept.
 * `known`: what follows from the part it stands for.
 */
export function readSettings(
  specs: SettingSpecs,
  typed: Readonly<Record<string, string>>,
  where: string,
  problems: WiringProblem[],
  known: Readonly<Record<string, string | undefined>> = {},
): Settings {
  const read = readAll(specs, typed, known);
  if (read.problems.length === 0) return read.values;
  const values: Record<string, Setting> = { ...read.values };
  for (const problem of read.problems) {
    const name = problem.where!;
    problems.push({ ...problem, where: `${where}.${name}` });
    // A count that cannot be read must not take terminals away that wires go to.
    const spec = own(specs, name);
    if (spec?.kind === 'count' && spec.usual !== '') values[name] = Number(spec.usual);
  }
  return values;
}
