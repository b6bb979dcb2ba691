/** One look of a sampled cascade: its outer loops once, and the current loop with the plant up to the next look. */
import type { AxisRun } from './axis-run.ts';
import * as ioPlaces from './io.ts';
import { lifted } from './lifted.ts';
import * as memoryPlaces from './memory.ts';
import * as modes from './modes.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { W1 } = modes;
const { REFERENCE, REFERENCE1, REFERENCE2, SEEN, SPAN, T, WANTED } = ioPlaces;
const { INTEGRAL, LAST_COMMAND, LAST_SEEN, WANTED_SPEED } = memoryPlaces;

/**
 * The look that begins at the time in the run's `io`, with command and place as noted there. All samples of the current loop
 * go in one step (see lift.ts) where that is exact, else one by one.
 */
export function cascadeLook(run: AxisRun): void {
  const { io } = run;
  const controller = run.controller!;
  outer(run);
  if (controller.cutCurrent !== 0) {
    run.cuts(io[T]!, io[SPAN]!, controller.cutCurrent, 0);
    controller.cutCurrent = 0;
  }
  controller.cutVoltage = 0;
  const { loop } = controller;
  if (loop !== null && run.calm() && lifted(run.plant, loop, controller.memory, io))
    run.plant.time = io[T]! + io[SPAN]!;
  else run.oneByOne();
}

/** Position and speed loop: the wanted current from where the axis is seen and how fast it turns. */
function outer(run: AxisRun): void {
  const { io } = run;
  const controller = run.controller!;
  const { memory, count, Kvp } = controller;
  const exactly = io[SEEN]!;
  const seen = count > 0 ? Math.floor(exactly / count + 0.5) * count : exactly;
  const Tv = controller.T * controller.speedEvery;
  if (!controller.started) memory[LAST_SEEN] = seen;
  if (controller.untilPosition === 0) {
    const { pulse } = controller;
    const command = pulse > 0 ? controller.commanded(io[REFERENCE]!) : io[REFERENCE]!;
    const rate =
      pulse === 0
        ? io[REFERENCE1]!
        : controller.started
          ? (command - memory[LAST_COMMAND]!) / (controller.T * controller.positionEvery)
          : 0;
    memory[WANTED_SPEED] = controller.Kp * (command - seen) + controller.kff * rate;
    memory[LAST_COMMAND] = command;
    controller.untilPosition = controller.positionEvery;
  }
  controller.untilPosition -= controller.speedEvery;
  controller.started = true;
  const w = controller.fromEncoder ? (seen - memory[LAST_SEEN]!) / Tv : run.plant.x[W1]!;
  memory[LAST_SEEN] = seen;
  const error = memory[WANTED_SPEED]! - w;
  const wanted = Kvp * error + controller.Kvi * memory[INTEGRAL]! + controller.aff * io[REFERENCE2]!;
  const { limit } = controller;
  const had = wanted > limit ? limit : Math.max(wanted, -limit);
  controller.cutCurrent = had === wanted ? 0 : wanted > 0 ? 1 : -1;
  memory[INTEGRAL] = memory[INTEGRAL]! + Tv * (Kvp > 0 ? error - (wanted - had) / Kvp : error);
  io[WANTED] = had;
}
