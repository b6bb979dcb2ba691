/** Looks of one axis one after another, while nothing needs to be looked after but the axis itself. */
import type { AxisRun } from './axis-run.ts';
import { cascadeLook } from './cascade.ts';
import * as ioPlaces from './io.ts';
import type { Recorder } from './record.ts';
import type { Sampler } from './sampler.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { BUS, FOLLOWING, SPAN, T } = ioPlaces;

/** Whether an axis can go by strides: a sampled cascade, of which nothing but its own motion has to be heard. */
export const canStride = (axis: AxisRun): boolean => axis.on && (axis.controller?.cascade ?? false);

/**
 * Goes through whole looks from the one numbered `from`, up to `to`, on a bus that stands at `bus` V. Returns the first look
 * that was not gone through: at it something is set to happen or to be noted, or the error (m) is at the `alarm`.
 */
export function stride(
  axis: AxisRun,
  from: number,
  to: number,
  bus: number,
  alarm: number,
  recorder: Recorder | Sampler | undefined,
): number {
  const { io, look, plant, agenda } = axis;
  io[BUS] = bus;
  io[SPAN] = look;
  axis.takeBus();
  let at = from;
  for (; at < to; at++) {
    const t = at * look;
    if (agenda.next < t + look || axis.nextMark <= t || plant.exhausted) break;
    io[T] = t;
    axis.observe();
    const following = io[FOLLOWING]!;
    if (!(following < alarm && following > -alarm)) break;
    if (recorder !== undefined) recorder.takeFrom(io);
    cascadeLook(axis);
  }
  return at;
}
