/** Refuses a circuit whose numbers cannot be meant, naming the element. */
import type { Circuit, Element, Trouble, Waveform } from './types.ts';

/** The most elements solved at once. */
export const MOST_ELEMENTS = 100_000;

const positive = (x: number): boolean => Number.isFinite(x) && x > 0;
const notNegative = (x: number): boolean => Number.isFinite(x) && x >= 0;

function finite(wave: Waveform): boolean {
  if (typeof wave === 'number') return Number.isFinite(wave);
  if (wave.shape === 'sine')
    return [wave.amplitude, wave.hertz, wave.phase, wave.offset].every(Number.isFinite) && wave.hertz >= 0;
  return wave.steps.length > 0 && wave.steps.every((step) => step.every(Number.isFinite));
}

/** What is wrong with an element's values, or undefined. */
function wrongValue(e: Element): string | undefined {
  switch (e.kind) {
    case 'resistor':
      return positive(e.ohms) ? undefined : 'its resistance must be above zero; write a milliohm for a wire';
    case 'switch':
      return positive(e.onOhms) && (e.offOhms === undefined || positive(e.offOhms))
        ? undefined
        : 'its resistance must be above zero';
    case 'voltage':
      if (!finite(e.volts)) return 'its voltage is no finite number';
      return notNegative(e.ohms) ? undefined : 'its inner resistance must be zero or more';
    case 'current':
      return finite(e.amps) ? undefined : 'its current is no finite number';
    case 'mirror':
      return Number.isFinite(e.gain) ? undefined : 'its gain is no finite number';
    case 'capacitor':
      if (e.startVolts !== undefined && !Number.isFinite(e.startVolts))
        return 'the voltage it starts with is no finite number';
      return positive(e.farads) ? undefined : 'its capacitance must be above zero';
    case 'inductor':
      if (e.startAmps !== undefined && !Number.isFinite(e.startAmps))
        return 'the current it starts with is no finite number';
      if (!notNegative(e.ohms)) return 'its resistance must be zero or more';
      return positive(e.henries) ? undefined : 'its inductance must be above zero';
    case 'diode':
      if (e.breakdown !== undefined && !positive(e.breakdown))
        return 'its breakdown voltage must be above zero';
      return positive(e.saturation) && positive(e.emission) && notNegative(e.ohms)
        ? undefined
        : 'its saturation current and emission factor must be above zero, its resistance zero or more';
    case 'transistor':
      return positive(e.saturation) && positive(e.gain) && positive(e.reverseGain)
        ? undefined
        : 'its gains and saturation current must be above zero';
  }
}

export const nodesOf = (e: Element): readonly string[] => {
  switch (e.kind) {
    case 'voltage':
      return [e.plus, e.minus];
    case 'current':
    case 'mirror':
      return [e.from, e.to];
    case 'diode':
      return [e.anode, e.cathode];
    case 'transistor':
      return [e.collector, e.base, e.emitter];
    default:
      return [e.a, e.b];
  }
};

const refuse = (e: Element, why: string): Trouble => ({
  kind: 'value',
  nodes: nodesOf(e),
  elements: [e.id],
  sentence: `${e.id}: ${why}.`,
});

export function checkCircuit({ elements }: Circuit): Trouble | undefined {
  if (elements.length > MOST_ELEMENTS)
    return {
      kind: 'too-long',
      nodes: [],
      elements: [],
      sentence: `The circuit has ${elements.length} elements; at most ${MOST_ELEMENTS} are solved at once.`,
    };
  const seen = new Map<string, Element>();
  for (const e of elements) {
    if (seen.has(e.id)) return refuse(e, 'there are two elements of this name');
    seen.set(e.id, e);
    const wrong = wrongValue(e);
    if (wrong) return refuse(e, wrong);
  }
  for (const e of elements)
    if (e.kind === 'mirror' && seen.get(e.of)?.kind !== 'voltage')
      return refuse(e, `there is no voltage source ${e.of} whose current it could follow`);
  return undefined;
}
