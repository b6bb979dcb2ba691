/** Constants that several sheets share, so that each stands once with its source. */
import { constant } from '../sheet/index.ts';

export const gravity = constant(
  'standard gravity',
  'm/s²',
  '9.80665 m/s²',
  'conventional value, 3rd General Conference on Weights and Measures, 1901 (from memory)',
  { note: 'Catalogue examples often use 9.8.' },
);

export const steelModulus = constant(
  'modulus of elasticity of steel',
  'GPa',
  '206 GPa',
  'THK Ball Screw General Catalog 513-1E, page A15-32',
);

export const steelDensity = constant(
  'density of steel',
  'kg/m³',
  '7850 kg/m³',
  'THK Ball Screw General Catalog 513-1E, page A15-32',
);

export const steelShearModulus = constant('shear modulus of steel', 'GPa', '79.3 GPa', 'from memory');

export const steelExpansion = constant('expansion of steel', '1/K', '11.7e-6 1/K', 'from memory', {
  note: 'Handbooks give 11.5 to 12 millionths per kelvin.',
  tex: '\\alpha',
});

export const ratingTurns = constant(
  'turns at which the load rating is defined',
  'rev',
  '1000000 rev',
  'ISO 3408-5 (definition of the dynamic axial load rating; from memory)',
  { tex: 'L_0' },
);
