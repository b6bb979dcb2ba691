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
  // Once nothing drives it after its command, there is nothing it could be behind.
  const { runOut } = now.run.summary;
  const letGo = Math.min(runOut?.mainsOff?.at ?? Infinity, runOut?.driveOff?.at ?? Infinity);
  const limit = (name: string, at: number): { name: string; at: number }[] =>
    Number.isFinite(at) ? [{ name, at }] : [];
  return [
    {
      name: 'Position',
      unit: length,
      lines: [
        { name: 'the slide', values: now.run.actual, time: now.run.time, look: 'main' },
        { name: 'commanded', values: now.run.commanded, time: now.run.time, look: 'aside' },
        ...(now.beside
          ? [
              {
                name: now.beside.name.replace(/,.*/, ''),
                values: now.beside.run.actual,
                time: now.beside.run.time,
                look: 'beside',
              } as const,
            ]
          : []),
        ...(kept
          ? [{ name: 'kept', values: kept.run.actual, time: kept.run.time, look: 'other' } as const]
          : []),
      ],
      ...endStop(now),
    },
    {
      ...upTo(letGo, one('Behind the command', system === 'in' ? 'in' : 'µm', 'following')),
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

/** The end stop of a power cut, where it was told and lies in the picture. */
function endStop({ run }: Shown): Pick<Panel, 'limits'> {
  const { move } = run;
  const from = run.summary.runOut?.mainsOff;
  if (move.kind !== 'power-cut' || move.room === undefined || !Number.isFinite(move.room) || !from) return {};
  return { limits: [{ name: 'end stop', at: from.place + move.room }] };
}

/** The panel's own line only up to `time` s. */
function upTo(time: number, panel: Panel): Panel {
  if (time === Number.POSITIVE_INFINITY) return panel;
  const cut = (line: Line): Line => {
    const after = line.time.findIndex((each) => each > time);
    return after < 0
      ? line
      : { ...line, time: line.time.subarray(0, after), values: line.values.subarray(0, after) };
  };
  return { ...panel, lines: panel.lines.map((line) => (line.look === 'other' ? line : cut(line))) };
}
