/** Which quantities are drawn of a run, with the kept one beside it. */
import { preferred } from '../../../engine/quantity/index.ts';
import type { Line, Panel } from './time-chart.tsx';
import type { Kept, Shown } from './use-run.ts';

export function panelsOf(now: Shown, kept: Kept | undefined, system: 'mm' | 'in'): Panel[] {
  const length = preferred('mm', system);
  const one = (name: string, unit: string, key: 'following' | 'speed' | 'current' | 'bus'): Panel => {
    const lines: Line[] = [{ name: 'now', values: now.run[key], time: now.run.time, look: 'main' }];
    if (kept) lines.push({ name: 'kept', values: kept.run[key], time: kept.run.time, look: 'other' });
    if (now.run.second && key !== 'bus')
      lines.push({ name: 'second axis', values: now.run.second[key], time: now.run.time, look: 'aside' });
    return { name, unit, lines };
  };
  const { drive } = now.model;
  const limit = (name: string, at: number): { name: string; at: number }[] =>
    Number.isFinite(at) ? [{ name, at }] : [];
  return [
    {
      name: 'Position',
      unit: length,
      lines: [
        { name: 'the slide', values: now.run.actual, time: now.run.time, look: 'main' },
        { name: 'commanded', values: now.run.commanded, time: now.run.time, look: 'aside' },
        ...(kept
          ? [{ name: 'kept', values: kept.run.actual, time: kept.run.time, look: 'other' } as const]
          : []),
      ],
    },
    {
      ...one('Behind the command', system === 'in' ? 'in' : 'µm', 'following'),
      limits: limit('trips', drive.followingLimit),
    },
    one('Motor speed', 'r/min', 'speed'),
    ...(now.model.motor.kind === 'stepper'
      ? []
      : [{ ...one('Current', 'A', 'current'), limits: limit('limit', drive.currentLimit) }]),
    ...(now.model.supply.kind === 'constant'
      ? []
      : [{ ...one('Bus', 'V', 'bus'), limits: limit('trips', drive.overvoltage) }]),
  ];
}
