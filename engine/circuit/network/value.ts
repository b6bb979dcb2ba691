/** Values that change in time. */
import type { Switch, Waveform } from './types.ts';

export function valueAt(wave: Waveform, time: number): number {
  if (typeof wave === 'number') return wave;
  if (wave.shape === 'sine')
    return wave.offset + wave.amplitude * Math.sin(2 * Math.PI * wave.hertz * time + wave.phase);
  let value = wave.steps[0]?.[1] ?? 0;
  for (const [at, next] of wave.steps) if (at <= time) value = next;
  return value;
}

export function closedAt(closed: Switch['closed'], time: number): boolean {
  if (typeof closed === 'boolean') return closed;
  let state = closed[0]?.[1] ?? false;
  for (const [at, next] of closed) if (at <= time) state = next;
  return state;
}

/** Moments at which something jumps. */
export function jumpsOf(element: { volts?: Waveform; amps?: Waveform; closed?: Switch['closed'] }): number[] {
  const wave = element.volts ?? element.amps;
  if (typeof wave === 'object' && wave.shape === 'steps') return wave.steps.map(([at]) => at);
  return Array.isArray(element.closed) ? element.closed.map(([at]: readonly [number, boolean]) => at) : [];
}
