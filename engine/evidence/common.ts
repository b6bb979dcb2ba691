/** Entries and cautions that several methods share. */
import type { AccuracyAsked, QuantityAsked } from './types.ts';

export const SPIN =
  'What turns can catch: clamp the motor, take the key out of the shaft or tape it down, no gloves, no loose sleeves or hair.';
export const MAKES_VOLTS =
  'A spun motor makes voltage, at high speed more than 60 V: insulate the leads and hold them only by insulated probes.';
export const UNPLUG =
  'Unplug the motor from its drive first. The drive’s capacitors stay charged: wait, and measure that they are down, before you touch the leads.';
export const HOT =
  'The winding heats within seconds: switch off after ten, and let it cool before the next reading.';
export const MAINS =
  'Mains can kill. Measure only with a meter, probes and fuses rated for it, one hand in your pocket, and never alone. If you are not sure, have a licensed electrician read it for you.';
export const PROP =
  'A slide on a slope runs away when nothing holds it: prop it with timber before you uncouple anything, and never reach under it.';

export const accuracy = <const K extends string>(
  key: K,
  name: string,
  unit: string,
  of: readonly string[],
): AccuracyAsked & { readonly key: K; readonly optional: true } => ({
  key,
  kind: 'accuracy',
  name,
  unit,
  of,
  optional: true,
  help: 'From the instrument’s manual, such as “0.5 % + 2 digits”. Without it the ± holds only what the readings themselves can tell.',
});

export const temperature = <const K extends string>(
  key: K,
  name: string,
): QuantityAsked & { readonly key: K; readonly usual: string } => ({
  key,
  kind: 'quantity',
  name,
  unit: '°C',
  usual: '20 ± 3 °C',
  help: 'Of the thing itself, not of the air: leave it for some hours in the same room. Write how sure you are, such as 21 ± 2 °C.',
});
