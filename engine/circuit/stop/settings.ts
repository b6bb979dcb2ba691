/** The settings of an element, motion or circuit as the working-out wants them: numbers only. */
import { readSettings as readAll } from '../../quantity/read-setting.ts';
import type { Setting, SettingSpec, SettingSpecs } from '../../quantity/settings.ts';
import { ok, type Result, refuse } from '../../quantity/types.ts';

/** Numbers in SI, choices as the position in their list; undefined where nothing was typed and nothing is usual. */
export type Read = Readonly<Record<string, number | undefined>>;

/** All settings of one thing; a name that it has not, or a text that cannot be read, is refused with its place. */
export function readSettings(
  specs: SettingSpecs,
  typed: Readonly<Record<string, string>>,
  where: string,
): Result<Read> {
  const { values, problems } = readAll(specs, typed);
  const [first] = problems;
  if (first) return refuse({ ...first, where: `${where}.${first.where}` });
  return ok(
    Object.fromEntries(Object.entries(specs).map(([name, spec]) => [name, asNumber(spec, values[name])])),
  );
}

function asNumber(spec: SettingSpec, value: Setting): number | undefined {
  if (typeof value === 'number') return value;
  return spec.kind === 'choice' && value !== undefined ? spec.options.indexOf(value) : undefined;
}
