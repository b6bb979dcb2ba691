/** A spindle of our own for the tests: two belt ranges, an inverter that brakes, an encoder one to one. */
import type { SpindleModel, SpindleRange } from './types.ts';

export const RPM = (2 * Math.PI) / 60;

/** Level torque up to the base speed, then level power, at the spindle. */
function curve(torque: number, base: number, top: number): SpindleRange['continuous'] {
  return [0, base, ...Array.from({ length: 8 }, (_, at) => base + ((top - base) * (at + 1)) / 8)].map(
    (speed) => ({ speed, torque: speed <= base ? torque : (torque * base) / speed }),
  );
}

export function range(name: string, ratio: number): SpindleRange {
  const base = (1430 / ratio) * RPM;
  const top = (3000 / ratio) * RPM;
  const torque = 20 * ratio;
  return {
    id: name,
    name,
    ratio,
    lowest: (300 / ratio) * RPM,
    highest: top,
    inertia: 0.12 + 0.012 * ratio ** 2,
    continuous: curve(torque, base, top),
    peak: curve(1.5 * torque, base, top),
    braking: curve(torque, base, top),
    drag: 1.5,
  };
}

export const SPINDLE: SpindleModel = {
  chain: 'S',
  ranges: [range('low range', 4), range('high range', 1.5)],
  limits: [
    { by: 'chuck', speed: 2500 * RPM },
    { by: 'jaws', speed: 2200 * RPM },
    { by: 'bearing', speed: 3000 * RPM },
    { by: 'pulley', speed: 3500 * RPM },
    { by: 'motor', speed: 2400 * RPM },
    { by: 'drive', speed: 2400 * RPM },
  ],
  feedback: {
    lines: 1024,
    turns: { encoder: 1, spindle: 1 },
    index: true,
    highestFrequency: 100e3,
  },
  basis: 'plate',
};
