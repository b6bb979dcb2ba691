import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from '../tests/rooms.ts';
import { inFolder, run } from './run.fixture.ts';

const LINES: readonly (readonly [what: string, line: readonly string[], says: string])[] = [
  [
    'a fact',
    ['set', 'FILE', 'site.mains', '9999 V'],
    '9999 V is far outside what is usual for the mains voltage, 90 V to 690 V.',
  ],
  ['a policy', ['set', 'FILE', 'policies.run-down', '30000 s'], 'Did you mean 30 s?'],
  [
    'a fact of a bench test',
    ['evidence', 'FILE', 'travel-per-turn', '--for', 'X', 'turns=1', 'rule=0.3 mm', 'travel=5 m,5.1 m'],
    'is far outside what is usual for the lead',
  ],
  [
    'a setting of an auxiliary',
    ['auxiliary', 'FILE', 'set', 'turret', 'position-time=700 s'],
    'is far from what is usual for',
  ],
  [
    'an answer of the survey',
    ['survey', 'FILE', 'item', 'coolant', 'works', 'supply=400 kV'],
    'Did you mean 400 V?',
  ],
  ['a wire', ['wire', 'FILE', 'wiring.socket-amps=16000 A'], 'Did you mean 16 A?'],
];

test.each(LINES)(
  'derived: %s that looks like a slip is asked back, and recorded with --anyway',
  (_what, line, says) =>
    inFolder(async (folder) => {
      const file = join(folder, 'lathe.json');
      copyFileSync(join(ROOT, 'samples/carriage-works-lathe.json'), file);
      const before = readFileSync(file, 'utf8');
      const words = line.map((word) => (word === 'FILE' ? file : word));
      const asked = await run(...words);
      const said = asked.err.replace(/\s+/g, ' ');
      expect(asked.code, said).toBe(2);
      expect(said).toContain(says);
      expect(said).toContain('Nothing was recorded; if it is right all the same, add --anyway.');
      expect(readFileSync(file, 'utf8')).toBe(before);
      const sure = await run(...words, '--anyway');
      expect(sure.err).toBe('');
      expect(sure.code).not.toBe(2);
      expect(readFileSync(file, 'utf8')).not.toBe(before);
    }),
);
