/** Which bench tests would settle a fact. */
import { METHODS } from './index.ts';
import type { Method } from './types.ts';

/** Methods that measure the fact a path leads to ('X.motor.resistance', 'site.mains'), in their usual order. */
export function methodsFor(path: string): readonly Method[] {
  const [place, fact] = path.split('.').slice(-2);
  return METHODS.filter(({ settles }) => settles.some((each) => each.place === place && each.fact === fact));
}
