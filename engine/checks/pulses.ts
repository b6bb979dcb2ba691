/** Pulses and counts: rates, rounding, resolution, timing. */
import { countsRounding } from '../handbook/counts-rounding.ts';
import { pulseTravel } from '../handbook/pulse-travel.ts';
import { resolution } from '../handbook/resolution.ts';
import { shareOf } from '../handbook/share-of.ts';
import { stepTiming } from '../handbook/step-timing.ts';
import { travelPerCount } from '../handbook/travel-per-count.ts';
import { type Check, ifChoice } from './check.ts';
import { LEAD, RATIO, screwAtRapid } from './motion.ts';
import { exact, fact, policy, type Ref, stated, table, when } from './refs.ts';
import { axisWorking } from './working.ts';

const pulse = axisWorking('pulse', 'Travel of one pulse', pulseTravel, {
  N: fact('drive', 'pulsesPerTurn'),
  i: RATIO,
  Ph: LEAD,
  v: fact('duty', 'rapid'),
});

const count = axisWorking('count', 'Travel of one count', travelPerCount, {
  lines: fact('feedback', 'lines'),
  r: when('feedback', 'on', { motor: RATIO, screw: stated('1', '1', 'the encoder sits on the screw') }),
  Ph: LEAD,
  n_s: screwAtRapid.get('n_set'),
});

/** Pulses where the drive is commanded by pulses, counts where the control closes the loop itself. */
const byCommand = (pulses: Ref, counts: Ref): Ref => when('drive', 'command', { pulses, volts: counts });

const rounding = axisWorking('rounding', 'Pulses per millimetre as the control holds them', countsRounding, {
  cpm: exact(byCommand(pulse.get('cpm'), count.get('cpm'))),
  step: fact('control', 'pulsesPerMmStep'),
  travel: fact('slide', 'travel'),
});

const onPart = table(
  'duty',
  'toleranceOn',
  '1',
  { length: '1', diameter: '2' },
  'derivation: a diameter shows the slide’s step twice',
);

const allowance = axisWorking('rounding-allowance', 'Error the rounding may use up', shareOf, {
  k: policy('rounding'),
  whole: fact('duty', 'tolerance'),
  k_dia: onPart,
});

const commanded = axisWorking('resolution', 'Steps inside the tolerance, as commanded', resolution, {
  res: byCommand(pulse.get('res'), count.get('res')),
  tol: fact('duty', 'tolerance'),
  k_dia: onPart,
});

const seen = axisWorking(
  'resolution-feedback',
  'Steps inside the tolerance, as the encoder sees them',
  resolution,
  {
    res: count.get('res'),
    tol: fact('duty', 'tolerance'),
    k_dia: onPart,
  },
);

const timing = axisWorking('timing', 'Pulse width and set-up time', stepTiming, {
  t_high: fact('control', 'shortestPulse'),
  t_setup: fact('control', 'directionSetup'),
  need_high: fact('drive', 'shortestPulse'),
  need_setup: fact('drive', 'directionSetup'),
  t_skew: stated('0 µs', 'µs', 'the times named are those at the terminals'),
});

const PULSES = ifChoice('drive', 'command', 'pulses');
const VOLTS = ifChoice('drive', 'command', 'volts');
const ENCODER = ifChoice('feedback', 'type', 'encoder');
const MISSED =
  'A pulse or edge that is missed is gone: the axis stands somewhere else than the control believes, and every part after it is wrong.';

const checks: readonly Check[] = [
  {
    form: 'ratio',
    id: 'control-pulses',
    scope: 'axis',
    title: 'Pulse rate of the control',
    place: 'drive',
    onlyIf: [PULSES],
    demand: pulse.get('f'),
    capacity: fact('control', 'highestPulseRate'),
    unit: 'kHz',
    tight: 'margin-exact',
    why: 'Every pulse moves the slide one small step. Fine steps and a fast rapid together need more pulses a second than some controls can make.',
    says: {
      fits: 'Rapid takes {asked} of pulses; the control makes {there}.',
      tight: 'Rapid takes {asked} of pulses; the control makes {there}.',
      fails: 'Rapid takes {asked} of pulses, but the control makes only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'drive-pulses',
    scope: 'axis',
    title: 'Pulse rate of the drive',
    place: 'drive',
    onlyIf: [PULSES],
    demand: pulse.get('f'),
    capacity: fact('drive', 'highestPulseRate'),
    unit: 'kHz',
    tight: 'margin-exact',
    why: MISSED,
    says: {
      fits: 'Rapid takes {asked} of pulses; the drive takes {there}.',
      tight: 'Rapid takes {asked} of pulses; the drive takes {there}.',
      fails: 'Rapid takes {asked} of pulses, but the drive takes only {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'pulse-width',
    scope: 'axis',
    title: 'Width of the pulses',
    place: 'drive',
    onlyIf: [PULSES],
    demand: timing.get('ask_high'),
    capacity: fact('control', 'shortestPulse'),
    unit: 'µs',
    tight: 'exact',
    why: MISSED,
    says: {
      fits: 'The drive needs pulses of {asked}; the control makes them {there} long.',
      tight: 'The drive needs pulses of {asked}; the control makes them {there} long.',
      fails:
        'The drive needs pulses of {asked}, but the control’s are only {there} long: lengthen them in its settings.',
    },
  },
  {
    form: 'ratio',
    id: 'direction-setup',
    scope: 'axis',
    title: 'Direction before the pulse',
    place: 'drive',
    onlyIf: [PULSES],
    demand: timing.get('ask_setup'),
    capacity: fact('control', 'directionSetup'),
    unit: 'µs',
    tight: 'exact',
    why: 'If direction changes too close to the pulse, one step goes the wrong way at each reversal, and the axis creeps.',
    says: {
      fits: 'The drive wants direction {asked} before the pulse; the control gives {there}.',
      tight: 'The drive wants direction {asked} before the pulse; the control gives {there}.',
      fails:
        'The drive wants direction {asked} before the pulse, but the control gives only {there}: lengthen it in its settings.',
    },
  },
  {
    form: 'ratio',
    id: 'rounding',
    scope: 'axis',
    title: 'Rounded pulses per millimetre',
    place: 'screw',
    demand: rounding.get('err_abs'),
    capacity: allowance.get('part'),
    unit: 'mm',
    tight: 'exact',
    why: 'If the control can hold only a rounded number of pulses per millimetre, every distance is wrong in proportion. It builds up along the travel, and no adjustment removes it. Inch screws on millimetre controls are the usual trap.',
    says: {
      fits: 'Over the whole travel the rounded number errs by {asked}; {there} may be used up.',
      tight: 'Over the whole travel the rounded number errs by {asked}; {there} may be used up.',
      fails:
        'The control holds the number rounded: over the whole travel that is an error of {asked}, and only {there} may be used up.',
      nothing: 'The control holds the number exactly: no distance is wrong for it.',
    },
  },
  {
    form: 'ratio',
    id: 'resolution',
    scope: 'axis',
    title: 'Fineness of the steps',
    place: 'drive',
    demand: policy('resolution'),
    capacity: commanded.get('ratio'),
    unit: '1',
    tight: 'exact',
    why: 'An axis cannot stand between two steps. On a lathe’s cross slide every step shows twice in the diameter.',
    says: {
      fits: '{there} steps fall within the tolerance; {asked} are wanted.',
      tight: '{there} steps fall within the tolerance; {asked} are wanted.',
      fails: 'Only {there} steps fall within the tolerance; {asked} are wanted.',
    },
  },
  {
    form: 'ratio',
    id: 'feedback-resolution',
    scope: 'axis',
    title: 'Fineness of the encoder',
    place: 'feedback',
    onlyIf: [ENCODER, PULSES],
    demand: policy('resolution'),
    capacity: seen.get('ratio'),
    unit: '1',
    tight: 'exact',
    why: 'The drive can correct only what the encoder sees.',
    says: {
      fits: '{there} counts fall within the tolerance; {asked} are wanted.',
      tight: '{there} counts fall within the tolerance; {asked} are wanted.',
      fails: 'Only {there} counts fall within the tolerance; {asked} are wanted.',
    },
  },
  {
    form: 'ratio',
    id: 'encoder-rate',
    scope: 'axis',
    title: 'Line rate of the encoder',
    place: 'feedback',
    onlyIf: [ENCODER],
    demand: count.get('f_line'),
    capacity: fact('feedback', 'highestRate'),
    unit: 'kHz',
    tight: 'margin-exact',
    why: MISSED,
    says: {
      fits: 'At rapid the lines pass at {asked}; the encoder keeps up to {there}.',
      tight: 'At rapid the lines pass at {asked}; the encoder keeps up to {there}.',
      fails: 'At rapid the lines pass at {asked}; the encoder keeps up only to {there}.',
    },
  },
  {
    form: 'ratio',
    id: 'drive-edges',
    scope: 'axis',
    title: 'Count rate of the drive’s encoder input',
    place: 'drive',
    onlyIf: [ENCODER, PULSES, ifChoice('motor', 'type', 'brushed', 'brushless')],
    demand: count.get('f_edge'),
    capacity: fact('drive', 'highestEdgeRate'),
    unit: 'kHz',
    tight: 'receiver',
    why: MISSED,
    says: {
      fits: 'At rapid {asked} of counts arrive; the drive follows {there}.',
      tight:
        'At rapid {asked} of counts arrive; the drive follows {there}. Two edges can come close together.',
      fails: 'At rapid {asked} of counts arrive, but the drive follows only {there}: it loses its place.',
    },
  },
  {
    form: 'ratio',
    id: 'control-edges',
    scope: 'axis',
    title: 'Count rate of the control’s encoder input',
    place: 'feedback',
    onlyIf: [ENCODER, VOLTS],
    demand: count.get('f_edge'),
    capacity: fact('control', 'highestEdgeRate'),
    unit: 'kHz',
    tight: 'receiver',
    why: MISSED,
    says: {
      fits: 'At rapid {asked} of counts arrive; the control follows {there}.',
      tight:
        'At rapid {asked} of counts arrive; the control follows {there}. Two edges can come close together.',
      fails: 'At rapid {asked} of counts arrive, but the control follows only {there}: it loses its place.',
    },
  },
];

export const pulses = { workings: [pulse, count, rounding, allowance, commanded, seen, timing], checks };
