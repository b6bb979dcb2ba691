import { defineSheet, formula, input } from '../sheet/index.ts';

const SURFACE = 'VDE 0660-500 / IEC 60890, as quoted in an enclosure data sheet';

/** Heat of a closed cabinet, and the fan it needs. */
export const cabinetHeat = defineSheet({
  id: 'cabinet-heat',
  title: 'Heat in the cabinet',
  about:
    'Drives and supplies turn a part of their power into heat. A closed box gives it off through its walls only: the air in it gets warmer until as much goes out as comes in. Electronics age twice as fast for every ten degrees.',
  symbols: {
    H: input('height of the cabinet', 'm', { domain: 'positive' }),
    W: input('width of the cabinet', 'm', { domain: 'positive' }),
    D: input('depth of the cabinet', 'm', { domain: 'positive' }),
    P: input('heat given off inside', 'W', { domain: 'positive' }),
    k: input('heat through its walls per area and kelvin', 'W/(m²·K)', {
      domain: 'positive',
      note: '5.5 for painted steel, about 3.5 for plastic.',
    }),
    dT_want: input('rise of the air inside that is allowed', 'K', {
      tex: '\\Delta T_{max}',
      domain: 'positive',
    }),
    k_air: input('air for each watt and kelvin', 'm³·K/(h·W)', {
      tex: 'k_{air}',
      domain: 'positive',
      note: '3.1 near sea level, 3.4 at 1000 m.',
    }),
    A_free: formula('surface that counts, free on all sides', 'm²', '1.8*H*(W + D) + 1.4*W*D', SURFACE, {
      tex: 'A_{free}',
      says: 'The floor does not count, the roof more than its share.',
    }),
    A_wall: formula('surface that counts, back against a wall', 'm²', '1.4*W*(H + D) + 1.8*H*D', SURFACE, {
      tex: 'A_{wall}',
      says: 'The back does not count.',
    }),
    dT_free: formula(
      'rise of the air inside, free on all sides',
      'K',
      'P/(k*A_free)',
      'VDE 0660-500 / IEC 60890',
      {
        tex: '\\Delta T_{free}',
        says: 'Above the air outside.',
      },
    ),
    dT_wall: formula(
      'rise of the air inside, back against a wall',
      'K',
      'P/(k*A_wall)',
      'VDE 0660-500 / IEC 60890',
      {
        tex: '\\Delta T_{wall}',
        says: 'Above the air outside.',
      },
    ),
    Q_free: formula(
      'heat a fan has to carry off, free on all sides',
      'W',
      'max(0, P - k*A_free*dT_want)',
      'what the walls leave over',
      {
        tex: 'Q_{free}',
        says: 'Nothing: the walls do.',
      },
    ),
    Q_wall: formula(
      'heat a fan has to carry off, back against a wall',
      'W',
      'max(0, P - k*A_wall*dT_want)',
      'what the walls leave over',
      {
        tex: 'Q_{wall}',
        says: 'Nothing: the walls do.',
      },
    ),
    V_free: formula(
      'air it has to move, free on all sides',
      'm³/h',
      'k_air*Q_free/dT_want',
      'heat that air takes up',
      {
        tex: '\\dot V_{free}',
        says: 'Through a filter; a fan’s free-air figure should be twice this.',
      },
    ),
    V_wall: formula(
      'air it has to move, back against a wall',
      'm³/h',
      'k_air*Q_wall/dT_want',
      'heat that air takes up',
      {
        tex: '\\dot V_{wall}',
        says: 'Through a filter; a fan’s free-air figure should be twice this.',
      },
    ),
  },
});
