/** The shape of a stop circuit within a refit. What its kinds and settings mean is read by engine/circuit. */
import { z } from 'zod';
import { LIMITS } from './limits.ts';
import { atMost, id, line, prose } from './text-schema.ts';
import type { StopCircuit, StopElement, StopMotion, StopWire } from './types.ts';

const TERMINAL = /^[A-Za-z0-9][A-Za-z0-9-]{0,60}\.[A-Za-z0-9][A-Za-z0-9-]{0,30}$/;
const terminal = z
  .string()
  .regex(TERMINAL, "must be a terminal: an element, a dot and the terminal's mark, like 'K1.A1'");
const settings = atMost(id, line(LIMITS.name), LIMITS.stopSettings, 'settings');

export const stopElementSchema: z.ZodType<StopElement> = z
  .strictObject({ id, kind: id, name: line(LIMITS.name), settings })
  .meta({ id: 'stop-element' });

export const stopWireSchema: z.ZodType<StopWire> = z
  .strictObject({ id, from: terminal, to: terminal, cable: line(LIMITS.name) })
  .meta({ id: 'stop-wire' });

export const stopMotionSchema: z.ZodType<StopMotion> = z
  .strictObject({
    id,
    kind: z.enum(['axis', 'spindle']),
    name: line(LIMITS.name, 1),
    drive: id,
    brake: id.nullable(),
    settings,
  })
  .meta({ id: 'stop-motion' });

export const stopSchema: z.ZodType<StopCircuit> = z
  .strictObject({
    pattern: id.nullable(),
    note: prose(),
    elements: atMost(id, stopElementSchema, LIMITS.stopElements, 'elements'),
    wires: atMost(id, stopWireSchema, LIMITS.stopWires, 'wires'),
    motions: atMost(id, stopMotionSchema, LIMITS.stopMotions, 'motions'),
    settings,
  })
  .meta({ id: 'stop' });
