import { defineSheet, formula, input, procedure } from '../sheet/index.ts';
import { diodeDropLoaded } from './electrical-constants.ts';
import { type RectifierGiven, type RectifierState, rectifier, rectifierRefuses } from './rectifier.ts';

const STEADY = 'derived: periodic steady state of the bridge in closed form between the switching instants';

let last: { readonly given: RectifierGiven; readonly state: RectifierState } | undefined;

/** All results of one rectifier come from one solution, so the last one is kept. */
function solved(given: RectifierGiven): RectifierState {
  if (!last || last.given.some((each, at) => each !== given[at]))
    last = { given, state: rectifier(...given) };
  return last.state;
}

const steady = (
  name: string,
  unit: string,
  tex: string,
  says: string,
  pick: (state: RectifierState) => number,
) =>
  procedure(name, unit, {
    tex,
    reads: ['E_sec', 'Rs', 'Vd', 'f', 'C', 'I'],
    run: (...x) => pick(solved(x as unknown as RectifierGiven)),
    refuses: (...x) => rectifierRefuses(...(x as unknown as RectifierGiven)),
    says,
    source: STEADY,
  });

/** Ripple and currents of a single-phase bridge behind a real transformer. */
export const rippleSourceResistance = defineSheet({
  id: 'ripple-source-resistance',
  title: 'Ripple and currents behind a real transformer',
  about:
    'The transformer feeds the capacitor in short gulps, several times the current the drives take. Its winding resistance softens the gulps and lowers the bus. The gulps, not the mean, heat transformer and capacitor.',
  symbols: {
    E_sec: input('EMF of the secondary, r.m.s.', 'V', {
      tex: 'E',
      domain: 'positive',
      note: 'Its voltage without load.',
    }),
    Rs: input('resistance of transformer and leads', 'Ω', { tex: 'R_s', domain: 'positive' }),
    f: input('mains frequency', 'Hz', { domain: 'positive' }),
    C: input('bus capacitance', 'µF', { domain: 'positive' }),
    I: input('bus current', 'A', { domain: 'positive' }),
    Vd: diodeDropLoaded,
    V_mean: steady('mean bus voltage', 'V', 'V_{mean}', 'What a d.c. meter shows.', (s) => s.mean),
    V_valley: steady(
      'lowest bus voltage',
      'V',
      'V_{valley}',
      'Just as the gulp begins to outrun the load.',
      (s) => s.valley,
    ),
    dV: steady(
      'ripple, peak to valley',
      'V',
      '\\Delta V',
      'How far the bus swings.',
      (s) => s.high - s.valley,
    ),
    I_sec: steady(
      'current of the secondary, r.m.s.',
      'A',
      'I_{sec}',
      'What heats the transformer.',
      (s) => s.secondaryRms,
    ),
    I_sec_peak: steady(
      'peak of that current',
      'A',
      'I_{sec,pk}',
      'Top of each gulp.',
      (s) => s.secondaryPeak,
    ),
    I_cap: steady(
      'ripple current of the capacitor, r.m.s.',
      'A',
      'I_{cap}',
      'What heats the capacitor; its rating must exceed it.',
      (s) => s.capacitorRms,
    ),
    P_sec: steady(
      'real power from the secondary',
      'W',
      'P_{sec}',
      'What the drives take and what diodes and winding lose.',
      (s) => s.power,
    ),
    ratio: formula('current of the secondary for each bus ampere', '1', 'I_sec / I', STEADY, {
      tex: 'k_I',
      says: 'The usual rule says 1.8.',
    }),
    VA: formula('volt-amperes drawn', 'VA', 'E_sec * I_sec', 'definition of apparent power', {
      tex: 'S',
      says: 'What the transformer has to be rated for.',
    }),
    P_dc: formula('power into the drives', 'W', 'V_mean * I', 'definition of power at constant current', {
      tex: 'P_{dc}',
      says: 'Mean voltage times current.',
    }),
    utilisation: formula(
      'share of the volt-amperes that reaches the drives',
      '%',
      'P_dc / VA',
      'definition',
      {
        tex: 'P_{dc}/S',
        says: 'Why a 1 kVA transformer does not give 1 kW of d.c.',
      },
    ),
    pf: formula('power factor', '1', 'P_sec / VA', 'definition of power factor', {
      says: 'Real power over volt-amperes at the secondary.',
    }),
  },
});
