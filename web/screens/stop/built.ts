/** What the wiring of a refit adds to the test sheet. */
import { stopBuilt } from '../../../engine/advice/stop-built.ts';
import { supplyDrawn } from '../../../engine/advice/supply-drawn.ts';
import { assess } from '../../../engine/assess/index.ts';
import type { Built } from '../../../engine/circuit/stop/index.ts';
import { WiringLook } from '../../../engine/circuit/whole/index.ts';
import type { Refit } from '../../../engine/refit/types.ts';

export const builtOf = (refit: Refit): Built | undefined =>
  stopBuilt(new WiringLook().look(refit, supplyDrawn(assess(refit))));
