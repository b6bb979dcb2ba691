/**
 * What is taken as usual where nobody said otherwise: only what can neither burn a part nor hurt anybody when it is wrong,
 * and decides no wire. Ratings of what stands in the stop circuit, of main contacts and of supplies, mains voltages, levels
 * and what swallows spikes are never among it.
 */
import type { Refit, Wiring } from '../../refit/types.ts';
import type { AnswerPlace } from '../wiring/index.ts';

export interface Usual {
  /** As it would be typed. */
  readonly value: string;
  /** Why that, in a sentence. */
  readonly because: string;
}

/** All of it common practice, no source; on the side that asks more of whatever feeds or switches it. */
const BY_KIND: Readonly<Record<string, Readonly<Record<string, Usual>>>> = {
  relay: {
    'coil-current': {
      value: '40 mA',
      because: 'A plug-in relay for 24 V takes this; slimmer ones take less.',
    },
    'dc-volts': { value: '24 V', because: 'Small relays are rated for 24 to 30 V d.c.' },
    'dc-amps': {
      value: '5 A',
      because: 'A plug-in relay for control carries this into a resistor; many carry more.',
    },
    'dc-coil-amps': {
      value: '1 A',
      because: 'Into a coil a relay contact carries about a fifth of what it carries into a resistor.',
    },
  },
  sensor: {
    current: { value: '15 mA', because: 'A sensor with three wires takes 5 to 15 mA itself.' },
    'output-current': {
      value: '100 mA',
      because: 'Sensors with three wires switch 100 to 200 mA; an input takes a tenth of it.',
    },
  },
  probe: {
    current: { value: '15 mA', because: 'A probe with electronics takes 5 to 15 mA itself.' },
    'output-current': {
      value: '50 mA',
      because: 'Probes with electronics switch 50 to 200 mA; an input takes a fifth of it.',
    },
  },
  handwheel: {
    current: { value: '100 mA', because: 'A handwheel for 5 V takes 50 to 100 mA.' },
  },
  'opto-board': {
    'output-current': {
      value: '30 mA',
      because: 'The transistor of an opto-coupler carries 30 to 50 mA; an input takes a quarter of it.',
    },
  },
  control: {
    'input-current': { value: '10 mA', because: 'Inputs for 24 V take 3 to 10 mA.' },
    termination: {
      value: '120 Ω',
      because: 'Inputs for pairs have 120 Ω inside; without it a long cable rings.',
    },
  },
  drive: {
    termination: {
      value: '120 Ω',
      because: 'Inputs for pairs have 120 Ω inside; without it a long cable rings.',
    },
    'enable-current': { value: '10 mA', because: 'Inputs for 24 V take 3 to 10 mA.' },
  },
  inverter: {
    'enable-current': { value: '10 mA', because: 'Inputs for 24 V take 3 to 10 mA.' },
  },
  encoder: {
    current: { value: '150 mA', because: 'An encoder for 5 V with line drivers takes up to this.' },
  },
};

const CABLE: Readonly<Record<string, Usual>> = {
  length: {
    value: '5 m',
    because: 'From the cabinet to anything on a machine of this size; measured once it is laid.',
  },
};

/** What is taken for an answer at this place; undefined where it has to be told. */
export function usualAt(place: AnswerPlace, { devices, cables }: Wiring, refit: Refit): Usual | undefined {
  if (place.of === 'cable') {
    // A longer cable to a motor wants thicker cores: that is not for guessing.
    const isSignal = cables[place.id]?.settings.route === 'signals';
    return isSignal && Object.hasOwn(CABLE, place.setting) ? CABLE[place.setting] : undefined;
  }
  if (place.of !== 'device') return undefined;
  const kind = devices[place.id]?.kind ?? '';
  const inStop = Object.hasOwn(refit.stop?.elements ?? {}, place.id);
  // Inputs and terminations of drives and controls switch nothing in the stop circuit; whatever else stands there is asked.
  if (inStop && !/^(control|drive|inverter)$/.test(kind)) return undefined;
  const of = Object.hasOwn(BY_KIND, kind) ? BY_KIND[kind]! : {};
  return Object.hasOwn(of, place.setting) ? of[place.setting] : undefined;
}
