/** Questions that many auxiliaries share. */
import type { SurveyQuestion } from './types.ts';

export const driven: SurveyQuestion = {
  kind: 'choice',
  name: 'how it is driven',
  options: {
    motor: 'an electric motor',
    hydraulic: 'oil under pressure, through a valve',
    air: 'compressed air, through a valve',
    solenoid: 'a magnet alone',
    hand: 'by hand',
    none: 'nothing drives it',
  },
};
export const supply: SurveyQuestion = {
  kind: 'quantity',
  name: 'supply voltage',
  unit: 'V',
  plausible: ['5 V', '690 V'],
};
export const kindOfVoltage: SurveyQuestion = {
  kind: 'choice',
  name: 'kind of voltage',
  options: { ac: 'a.c., one phase', three: 'a.c., three phases', dc: 'd.c.' },
};
export const current: SurveyQuestion = {
  kind: 'quantity',
  name: 'current on the plate',
  unit: 'A',
  plausible: ['0.1 A', '100 A'],
};
export const power: SurveyQuestion = {
  kind: 'quantity',
  name: 'power on the plate',
  unit: 'kW',
  plausible: ['0.02 kW', '50 kW'],
};
export const coil: SurveyQuestion = {
  kind: 'quantity',
  name: 'voltage of the valve’s coil',
  unit: 'V',
  plausible: ['6 V', '400 V'],
};
export const pressure: SurveyQuestion = {
  kind: 'quantity',
  name: 'pressure on the gauge',
  unit: 'bar',
  plausible: ['0.2 bar', '350 bar'],
};
export const commands: SurveyQuestion = {
  kind: 'text',
  name: 'signals it takes (wire, terminal, what they do)',
  like: '24 V on wire 31 lets it turn',
};
export const reports: SurveyQuestion = {
  kind: 'text',
  name: 'signals it gives back (wire, terminal, what they mean)',
  like: 'wire 47: clamped, 24 V through a proximity switch',
};
