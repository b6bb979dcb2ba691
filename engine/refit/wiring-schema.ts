/** The shape of work, auxiliaries and wiring within a refit. What their kinds and settings mean is read by later rooms. */
import { z } from 'zod';
import { LIMITS } from './limits.ts';
import { atMost, id, line, photoName, terminal, terminalMark } from './text-schema.ts';
import type {
  Auxiliary,
  Wiring,
  WiringCable,
  WiringDevice,
  WiringPin,
  WiringTerminal,
  WiringWire,
  Work,
} from './types.ts';

const settings = atMost(id, line(LIMITS.text), LIMITS.settings, 'settings');
const usual = z.array(id).max(LIMITS.settings).exactOptional();

export const workSchema: z.ZodType<Work> = z
  .strictObject({ id, kind: z.enum(['cut', 'thread', 'tap']), name: line(LIMITS.name), settings })
  .meta({ id: 'work' });

export const auxiliarySchema: z.ZodType<Auxiliary> = z
  .strictObject({ id, kind: id, name: line(LIMITS.name), settings })
  .meta({ id: 'auxiliary' });

const terminalSchema: z.ZodType<WiringTerminal> = z
  .strictObject({ kind: id, name: line(LIMITS.name), settings })
  .meta({ id: 'wiring-terminal' });

const fraction = z.number().min(0).max(1);
const pinSchema: z.ZodType<WiringPin> = z
  .strictObject({ photo: photoName, x: fraction, y: fraction })
  .meta({ id: 'wiring-pin' });

export const deviceSchema: z.ZodType<WiringDevice> = z
  .strictObject({
    id,
    kind: id,
    name: line(LIMITS.name),
    part: id.nullable(),
    where: line(LIMITS.name),
    settings,
    usual,
    terminals: atMost(terminalMark, terminalSchema, LIMITS.terminals, 'terminals'),
    pins: atMost(terminalMark, pinSchema, LIMITS.terminals, 'pins'),
  })
  .meta({ id: 'wiring-device' });

export const wireSchema: z.ZodType<WiringWire> = z
  .strictObject({ id, from: terminal, to: terminal, cable: id.nullable(), settings })
  .meta({ id: 'wiring-wire' });

export const cableSchema: z.ZodType<WiringCable> = z
  .strictObject({ id, name: line(LIMITS.name), settings, usual })
  .meta({ id: 'wiring-cable' });

export const wiringSchema: z.ZodType<Wiring> = z
  .strictObject({
    devices: atMost(id, deviceSchema, LIMITS.devices, 'devices'),
    wires: atMost(id, wireSchema, LIMITS.wires, 'wires'),
    cables: atMost(id, cableSchema, LIMITS.cables, 'cables'),
    settings,
  })
  .meta({ id: 'wiring' });
