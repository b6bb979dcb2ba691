/** Numbers of findings and sizes for scripts: `value` in SI, `unit` the SI unit of that value, `readIn` what a person reads it in. */
import type { WiringFinding } from '../../engine/circuit/wiring/index.ts';
import { unitOf } from '../../engine/quantity/index.ts';

const SI = ['A', 'V', 'Ω', 'F', 'W', 'J', 'Hz', 's', 'm', 'm²', 'C', 'H', 'K', '1'] as const;

/** 'F' for 'µF', 'm²' for 'mm²'; a unit that is SI already stays as it is. */
export function siUnit(unit: string): string {
  const { scale, offset, dimension } = unitOf(unit);
  if (scale === 1 && offset === 0) return unit;
  const key = JSON.stringify(dimension);
  const found = SI.find((each) => JSON.stringify(unitOf(each).dimension) === key);
  if (found === undefined) throw new Error(`no SI unit for ${unit}`);
  return found;
}

export const inSi = <T extends { readonly unit: string }>(each: T) => ({
  ...each,
  unit: siUnit(each.unit),
  readIn: each.unit,
});

export const wiringFindingJson = (finding: WiringFinding) => ({
  ...finding,
  figures: finding.figures.map(inSi),
});
