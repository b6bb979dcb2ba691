import { defineSheet, formula, input } from '../sheet/index.ts';

const GEOMETRY = 'derived: a circle turning off its centre';

/** Run-out of a screw or spindle. */
export const benchRunOut = defineSheet({
  id: 'bench-run-out',
  title: 'Run-out of a screw or a spindle',
  about:
    'An indicator on a turning surface swings by twice what the surface is off centre. Near and far together tell a shifted axis from a tilted one.',
  symbols: {
    high: input('highest reading of a turn', 'mm'),
    low: input('lowest reading of the turn', 'mm'),
    s_near: input('swing near the bearing', 'mm', { tex: 's_{near}', domain: 'not negative' }),
    s_far: input('swing far from it', 'mm', { tex: 's_{far}', domain: 'not negative' }),
    L: input('distance between the two', 'mm', { domain: 'positive' }),
    swing: formula('run-out', 'µm', 'high - low', 'definition: full swing of the indicator', {
      domain: 'not negative',
      says: 'The whole swing of one turn.',
    }),
    off: formula('off centre', 'µm', '(high - low)/2', GEOMETRY, {
      domain: 'not negative',
      says: 'Half the swing.',
    }),
    tilt: formula('tilt of the axis, at most', 'arcsec', '(s_near + s_far)/(2*L)', GEOMETRY, {
      domain: 'any',
      says: 'Were near and far thrown to opposite sides.',
    }),
    tilt_least: formula('tilt of the axis, at least', 'arcsec', 'abs(s_far - s_near)/(2*L)', GEOMETRY, {
      tex: 'tilt_{least}',
      says: 'Were near and far thrown to the same side.',
    }),
  },
});
