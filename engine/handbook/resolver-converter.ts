import { defineSheet, formula, input } from '../sheet/index.ts';

/** Resolution of a resolver behind a converter, and the runout error of a new code disc or coupling. */
export const resolverConverter = defineSheet({
  id: 'resolver-converter',
  title: 'Resolver and its converter',
  about:
    'A converter turns the two signals of a resolver into counts. If an encoder takes the resolver’s place on a brushless motor, it must also tell the drive where the rotor stands, and sit true on the shaft.',
  symbols: {
    n_bits: input('bits of the converter', '1', { tex: 'n', domain: 'positive' }),
    p: input('speed of the resolver (pole pairs)', '1', { domain: 'positive', note: 'Nearly always 1.' }),
    ecc: input('eccentricity of the new disc or coupling', 'mm', { tex: 'e', domain: 'not negative' }),
    r_code: input('radius of the lines on the disc', 'mm', { tex: 'r', domain: 'positive' }),
    counts: formula('counts a turn', 'counts', 'p * 2^n_bits', 'definition of a binary converter', {
      says: 'Each bit doubles them.',
    }),
    res: formula('angle of one count', 'arcmin', '2*pi / counts', 'definition of a binary converter', {
      says: 'A full turn shared among the counts.',
    }),
    err_ecc: formula('error of angle from eccentricity', 'arcmin', 'ecc / r_code', 'derived: small angle', {
      tex: '\\varepsilon',
      says: 'Comes and goes once in each turn.',
    }),
  },
});
