import { constant, defineSheet, formula, input } from '../sheet/index.ts';

const standard =
  'ISO 13855:2010, clauses 6.2 and 9 (quoted in light curtain manuals; the 2024 edition adds cases)';

export const guardDistance = defineSheet({
  id: 'guard-distance',
  title: 'How far a guard must stand from what moves',
  about:
    'Somebody opens the guard or reaches through the light curtain and walks or reaches on while the machine is still stopping. The time is all of it: the control, the contactor, and the run-down at the greatest inertia and speed, measured on the machine. Where the distance cannot be kept, lock the guard until the machine stands. The standard itself and local rules decide.',
  symbols: {
    T: input('time from the opening until all stands', 's', {
      domain: 'positive',
      note: 'Measured, with the heaviest chuck and a worn brake.',
    }),
    d: input('what the light curtain can see', 'mm', {
      domain: 'positive',
      note: 'Its resolution; 14 mm sees a finger, 30 mm a hand. Up to 40 mm.',
    }),
    D_reach: input('how far one reaches in before the guard acts', 'mm', {
      domain: 'not negative',
      tex: 'D_\\mathrm{reach}',
      note: '0 where the guard covers all of it.',
    }),
    K: constant('walking speed', 'm/s', '1.6 m/s', standard),
    K_hand: constant('speed of a hand', 'm/s', '2 m/s', standard, { tex: 'K_\\mathrm{hand}' }),
    d_0: constant('what sees a finger tip', 'mm', '14 mm', standard, { tex: 'd_0' }),
    S_far: constant('distance beyond which walking counts', 'mm', '500 mm', standard, {
      tex: 'S_\\mathrm{far}',
    }),
    S_least: constant('least distance of a curtain', 'mm', '100 mm', standard, { tex: 'S_\\mathrm{least}' }),
    S_door: formula('least distance of a guard that is not locked', 'mm', 'K * T + D_reach', standard, {
      tex: 'S_\\mathrm{door}',
    }),
    S_hand: formula('distance by the speed of a hand', 'mm', 'K_hand * T + 8 * (d - d_0)', standard, {
      tex: 'S_\\mathrm{hand}',
    }),
    S_curtain: formula(
      'least distance of a light curtain',
      'mm',
      'S_hand > S_far ? max(K * T + 8 * (d - d_0), S_far) : max(S_hand, S_least)',
      standard,
      {
        tex: 'S_\\mathrm{curtain}',
        says: 'Close by a hand is fast; further away it comes at walking speed.',
      },
    ),
  },
});
