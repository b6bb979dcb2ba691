/** What a meter should show at each terminal of a wiring, without and with power. */
import { ringItOut, seekRingOut } from './ring.ts';
import type { RingRow, RingSheet, RingStep } from './types.ts';

export type { Band, Batch, Measured, RingRow, RingSheet, RingStep } from './types.ts';
export { ringItOut, seekRingOut };

/** Readings at one terminal, in the order of working; of `wires` those that end there. */
export function readingsAt(
  sheet: RingSheet,
  terminal: string,
): readonly { readonly step: RingStep; readonly row: RingRow }[] {
  return sheet.steps.flatMap((step) =>
    step.rows
      .filter(
        ({ at, against, wire }) => at.includes(terminal) || (wire !== undefined && against === terminal),
      )
      .map((row) => ({ step, row })),
  );
}
