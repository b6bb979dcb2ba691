import { defineSheet, formula, input } from '../sheet/index.ts';
import { gravity } from './constants.ts';

const statics = 'derivation: statics of a slide on a slope';

export const slideForces = defineSheet({
  id: 'slide-forces',
  title: 'Forces to move a slide',
  about:
    'What the screw must push, up the slope and down it, while gaining speed, running and slowing down, and while cutting; and what must be held at rest. Above zero the screw pushes the slide along its motion; below zero it holds it back. A level axis has slope 0° and “up” is either way. A counterweight on a rope cannot slow down faster than it falls.',
  symbols: {
    m: input('moving mass', 'kg', {
      domain: 'positive',
      note: 'With work, fixture and tool; without the counterweight.',
    }),
    theta: input('slope of the axis to the horizontal', '°', { domain: 'not negative', tex: '\\theta' }),
    a: input('acceleration', 'm/s²', { domain: 'not negative' }),
    mu: input('running friction of the ways', '1', { domain: 'not negative', tex: '\\mu' }),
    phi: input('half-angle of the ways', '°', {
      domain: 'positive',
      tex: '\\varphi',
      note: 'Between the inclined face and the middle plane. 90° for flat ways and rails.',
    }),
    F_n: input('extra force pressing on the ways', 'N', {
      domain: 'not negative',
      note: 'From the gib and from the cut; 0 where there is none.',
    }),
    F_seal: input('drag of seals and wipers', 'N', { domain: 'not negative', tex: 'F_\\mathrm{seal}' }),
    F_cut: input('cutting force along the axis, against the feed', 'N', { tex: 'F_\\mathrm{cut}' }),
    m_cb: input('mass of the counterweight', 'kg', {
      domain: 'not negative',
      tex: 'm_\\mathrm{cb}',
      note: '0 for none.',
    }),
    F_b: input('force of a gas or hydraulic balance', 'N', { domain: 'not negative', note: '0 for none.' }),
    g: gravity,
    mu_e: formula(
      'friction as inclined ways feel it',
      '1',
      'mu / sin(phi)',
      'derivation: two inclined faces carry the load between them',
      {
        tex: '\\mu_e',
        says: 'Inclined faces wedge, so the load presses on them more than it weighs.',
      },
    ),
    F_f: formula('friction and seals', 'N', 'mu_e * (m * g * cos(theta) + F_n) + F_seal', statics, {
      says: 'Against the motion, whichever way it goes.',
    }),
    F_w: formula('weight along the slope, bare', 'N', 'm * g * sin(theta)', statics, {
      says: 'What pulls the slide down if the counterweight or the balance fails.',
    }),
    F_g: formula('weight along the slope, balanced', 'N', 'F_w - m_cb * g - F_b', statics, {
      says: 'Below zero the balance is stronger than the weight and pulls the slide up.',
    }),
    F_a: formula('force to gain speed', 'N', '(m + m_cb) * a', 'derivation: Newton’s second law', {
      says: 'A counterweight has to be sped up too; a gas balance not.',
    }),
    F_up: formula('gaining speed upwards', 'N', 'F_a + F_g + F_f', statics, { tex: 'F_\\mathrm{up}' }),
    F_up_run: formula('running upwards', 'N', 'F_g + F_f', statics, { tex: 'F_\\mathrm{up,run}' }),
    F_up_stop: formula('slowing down upwards', 'N', '-F_a + F_g + F_f', statics, {
      tex: 'F_\\mathrm{up,stop}',
    }),
    F_dn: formula('gaining speed downwards', 'N', 'F_a - F_g + F_f', statics, { tex: 'F_\\mathrm{dn}' }),
    F_dn_run: formula('running downwards', 'N', '-F_g + F_f', statics, { tex: 'F_\\mathrm{dn,run}' }),
    F_dn_stop: formula('slowing down downwards', 'N', '-F_a - F_g + F_f', statics, {
      tex: 'F_\\mathrm{dn,stop}',
    }),
    F_up_cut: formula('cutting upwards', 'N', 'F_g + F_f + F_cut', statics, { tex: 'F_\\mathrm{up,cut}' }),
    F_dn_cut: formula('cutting downwards', 'N', '-F_g + F_f + F_cut', statics, { tex: 'F_\\mathrm{dn,cut}' }),
    F_hold: formula('force to hold at rest', 'N', 'abs(F_g)', statics, {
      tex: 'F_\\mathrm{hold}',
      says: 'Friction is taken as zero: it must not be counted on to hold a load.',
    }),
    F_max: formula(
      'largest force of all',
      'N',
      'max(abs(F_up), abs(F_up_stop), abs(F_dn), abs(F_dn_stop), abs(F_up_run), abs(F_dn_run), abs(F_up_cut), abs(F_dn_cut))',
      'derivation: the largest of the cases above',
      { tex: 'F_\\max' },
    ),
  },
});
