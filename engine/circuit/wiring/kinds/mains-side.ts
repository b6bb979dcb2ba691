/** What devices on the mains are asked about besides their volts and amperes: leakage, charging, heat. */
import { amount, level, type SettingSpecs } from '../setting.ts';

/** A filter towards the mains has capacitors to earth, which let some milliamperes pass all the time. */
export const LEAKS: SettingSpecs = {
  leakage: level('leakage to earth through its filter, from its manual', 'mA'),
};

/** Empty capacitors are a short circuit for a moment. */
export const CHARGES: SettingSpecs = {
  inrush: amount('peak of its current at switching on, from its manual', 'A'),
  'inrush-resistor': amount('resistor, or cold NTC, in series while its capacitors charge', 'Ω'),
  'input-capacitance': amount(
    'capacitors across its d.c. inside: behind its mains rectifier, or at the terminals of its bus',
    'µF',
  ),
};

/** How its current adds to that of others on the same mains: asked for both, or it is added by its size. */
export const SHAPES: SettingSpecs = {
  displacement: amount(
    'power factor of its mains current without harmonics (cos φ; 100 % is in phase)',
    '%',
    '',
    1,
  ),
  distortion: level('harmonics of its mains current, as a share of the rest (THD)', '%'),
};

export const HEATS: SettingSpecs = {
  heat: level('heat it gives off for good, from its manual', 'W'),
};
