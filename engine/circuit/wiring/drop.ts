/** Voltage lost in the copper of a device's two supply cores. */
import { lineDriver } from '../../handbook/line-driver.ts';
import { evaluate } from '../../sheet/index.ts';

/** There and back; metres, square metres, amperes, volts. Copper at 20 °C, IEC 60028. */
export function conductorDrop(length: number, section: number, current: number): number {
  const { dV } = evaluate(lineDriver, { L: length, A: section, I: current });
  return dV.state === 'known' ? dV.value : 0;
}
