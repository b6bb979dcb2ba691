/** What holds or drives one end of an input, coil or feed: its voltages, and against what they count. */
import type { Component } from './components.ts';
import { type Path, trace } from './trace.ts';
import type { View } from './view.ts';

export interface Drive {
  readonly how:
    | 'fixed'
    | 'push-pull'
    | 'sinking'
    | 'sourcing'
    | 'pair'
    | 'analogue'
    | 'ac'
    | 'sensor'
    | 'motor';
  readonly path: Path;
  /** What its volts count against; undefined where that is not known. */
  readonly against: Component | undefined;
  /** Fixed: as it is, at least, at most. Otherwise: when high or on, when low, and the most it can be. V. */
  readonly high?: number;
  readonly least?: number;
  readonly low?: number;
  readonly top?: number;
  readonly ohms: number;
  readonly leaks?: number;
  readonly withstands?: number;
}

/** All drives of a terminal's rail, and beyond contacts and resistors. */
export function drivesOf(view: View, terminal: string): readonly Drive[] {
  return trace(view, terminal).map((path) => driveOf(view, path));
}

function driveOf(view: View, path: Path): Drive {
  const source = view.terminal(path.source)!;
  const { nature } = source;
  const rail = (id: string | null) => (id === null ? undefined : view.rail(id));
  const ohms = path.resistors.reduce((sum, id) => {
    const each = view.terminal(id)?.nature;
    return sum + (each?.kind === 'resistor' ? (each.ohms ?? 0) : 0);
  }, 0);
  const of = (how: Drive['how'], more: Partial<Drive> = {}): Drive => ({
    how,
    path,
    against: rail(source.common),
    ohms,
    ...more,
  });
  switch (nature.kind) {
    case 'supply': {
      if (nature.pole === 'minus')
        return of('fixed', { against: view.rail(source.id), high: 0, least: 0, top: 0 });
      const against = rail(source.with);
      if (nature.volts === undefined) return of('fixed', { against });
      const stray = nature.tolerance ?? 0;
      return of('fixed', {
        against,
        high: nature.volts,
        least: nature.volts * (1 - stray),
        top: nature.volts * (1 + stray),
      });
    }
    case 'output':
      return of(nature.stage, {
        ...(nature.high === undefined ? {} : { high: nature.high }),
        ...(nature.low === undefined ? {} : { low: nature.low }),
        ...(nature.top === undefined ? {} : { top: nature.top }),
        ...(nature.leaks === undefined ? {} : { leaks: nature.leaks }),
        ...(nature.withstands === undefined ? {} : { withstands: nature.withstands }),
      });
    case 'differential-output':
      return of('pair', { high: nature.high ?? 2, low: nature.low ?? 0, top: nature.top ?? 6 });
    case 'analogue-output':
      return of('analogue', {
        ...(nature.high === undefined ? {} : { high: nature.high, top: nature.high }),
        ...(nature.low === undefined ? {} : { low: nature.low }),
      });
    case 'mains':
    case 'winding':
      return of('ac', nature.volts === undefined ? {} : { high: nature.volts, top: nature.volts });
    case 'motor-phase':
      return of('motor');
    default:
      return of('sensor');
  }
}
