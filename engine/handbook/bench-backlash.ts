import { defineSheet, formula, input } from '../sheet/index.ts';

const DIFFERENCE = 'derived: difference of two indicator readings';
const CHAIN = 'derived: lost motions of parts in a row add';

/** Lost motion on reversal, and which part loses it. */
export const benchBacklash = defineSheet({
  id: 'bench-backlash',
  title: 'Lost motion and where it is lost',
  about:
    'When the direction turns round, nut, thrust bearing, coupling and bracket each give way a little before the slide moves. Readings at several places tell them apart.',
  symbols: {
    a: input('reading after coming from the minus side', 'mm'),
    b: input('reading after coming from the plus side', 'mm'),
    s: input('lost motion at the end of an arm on the motor shaft, screw held', 'mm', {
      domain: 'not negative',
    }),
    r: input('length of that arm', 'mm', { domain: 'positive' }),
    Ph: input('lead', 'mm', { domain: 'positive', tex: 'P_h' }),
    B_total: input('lost motion of the slide', 'mm', { tex: 'B_{total}' }),
    B_thrust: input('lost motion of the screw along itself', 'mm', { tex: 'B_{thrust}' }),
    B_turn: input('lost motion of coupling or belt, as travel', 'mm', { tex: 'B_{turn}' }),
    B_bracket: input('lost motion between nut and slide', 'mm', { tex: 'B_{bracket}' }),
    B_edge: input('lost motion at the far edge of the slide', 'mm', { tex: 'B_{edge}' }),
    B: formula('lost motion', 'mm', 'a - b', DIFFERENCE, {
      says: 'What the indicator misses when the same place is reached from either side.',
    }),
    B_arm: formula('lost motion of coupling or belt', 'mm', 'Ph * s / (2*pi*r)', 'derived: arm and lead', {
      tex: 'B_{arm}',
      says: 'The angle that is lost, turned into travel by the lead.',
    }),
    B_nut: formula('lost motion of the nut', 'mm', 'B_total - B_thrust - B_turn - B_bracket', CHAIN, {
      tex: 'B_{nut}',
      says: 'What is left when the other parts are taken off.',
    }),
    B_way: formula('lost motion by the slide turning on its ways', 'mm', 'B_edge - B_total', DIFFERENCE, {
      tex: 'B_{way}',
      says: 'A loose gib lets the far edge of the slide lag behind.',
    }),
  },
});
