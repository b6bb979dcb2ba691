/** On which photo each terminal is pinned. */
import type { Wiring } from '../../refit/types.ts';

export const photosOf = ({ devices }: Wiring): ReadonlyMap<string, string> =>
  new Map(
    Object.values(devices).flatMap(({ id, pins }) =>
      Object.entries(pins).map(([mark, { photo }]) => [`${id}.${mark}`, photo] as const),
    ),
  );
